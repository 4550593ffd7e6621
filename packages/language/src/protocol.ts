/**
 * What the editor and the language server say to each other beyond the standard protocol. Plain data
 * only, texts already in the reader's units: neither side needs the other's types. The preview imports
 * this file too, so it imports nothing.
 */

/** Language id, file ending and the section of the settings. */
export const languageId = 'shelter';
export const settingsSection = 'tautline';
/** Scheme under which the built-in catalogue is opened, read-only. */
export const catalogueScheme = 'tautline-catalogue';
/** Scheme of the explanations of checks, read-only Markdown: `tautline-check:/frame-ponding.md`. */
export const explanationScheme = 'tautline-check';

/** Zero-based, as the editor counts. */
export interface PlainPosition {
  readonly line: number;
  readonly character: number;
}
export interface PlainRange {
  readonly start: PlainPosition;
  readonly end: PlainPosition;
}
export interface PlainPlace {
  readonly uri: string;
  readonly range: PlainRange;
}

// --- Client asks, server answers ---------------------------------------------------------------

/** `PreviewQuestion` -> `PreviewAnswer`: everything the drawing sheet of one file shows. */
export const previewRequest = 'tautline/preview';
/** `CatalogueQuestion` -> `CatalogueAnswer | null`: text of a built-in catalogue file. */
export const catalogueRequest = 'tautline/catalogue';
/** `ExplanationQuestion` -> `ExplanationAnswer | null`: text of a page under `explanationScheme`. */
export const explanationRequest = 'tautline/explanation';
/** `CalculationQuestion` -> `CalculationAnswer | null`: calculation sheet as Markdown. */
export const calculationRequest = 'tautline/calculation';
/** `AssumedQuestion` -> `AssumedAnswer`: text edits that write assumed values into the text. */
export const assumedRequest = 'tautline/assumed';
/** No parameters -> `TemplatesAnswer`: the starting points of the new-shelter wizard. */
export const templatesRequest = 'tautline/templates';

// --- Server tells ------------------------------------------------------------------------------

/**
 * `EvaluatedNotice`: there is news about a file after a change of it or of what it imports, also when its
 * text could not be read. The client asks again if the file's sheet is on show.
 */
export const evaluatedNotification = 'tautline/evaluated';

export interface PreviewQuestion {
  readonly uri: string;
}

export interface PreviewAnswer {
  readonly uri: string;
  /** Version of the text the answer was made from. */
  readonly version: number;
  /**
   * Set when the text could not be read well enough to draw: one sentence saying why. `shelters` is
   * then empty or holds only what could be read; the preview keeps its last good sheets and marks them.
   */
  readonly broken?: string;
  readonly shelters: readonly PreviewShelter[];
}

export interface PreviewShelter {
  readonly name: string;
  /** First line of the shelter's doc comment, or ''. */
  readonly title: string;
  /** The whole block of the shelter. */
  readonly range: PlainRange;
  /** Drawings by view, in the order of the tabs. Absent views are not offered. */
  readonly drawings: readonly PreviewDrawing[];
  /** Part id -> where it is written. Part ids are those of `data-part` in the drawings. */
  readonly parts: readonly PreviewPart[];
  readonly findings: readonly PreviewFinding[];
  readonly materials: readonly PreviewMaterial[];
  /** e.g. [{label: 'First to fail', value: 'roof film, gust 31 m/s'}]: cells of the title block. */
  readonly facts: readonly PreviewFact[];
  readonly assumed: readonly PreviewAssumed[];
  readonly notChecked: readonly PreviewNotChecked[];
  /** Set when the results are older than the text, or could not be worked out: why. */
  readonly stale?: string;
  /** Set while the first-failure gusts are still those of an earlier text: new ones follow by themselves. */
  readonly gustsOld?: true;
}

export type PreviewView = 'section' | 'plan' | 'side' | 'setting-out';

export interface PreviewDrawing {
  readonly view: PreviewView;
  /** One sentence that says what is drawn, for a screen reader. */
  readonly description: string;
  readonly svg: string;
}

export interface PreviewPart {
  readonly id: string;
  /** In words, e.g. 'Bows of 1 in PVC pipe, 1.2 m apart'. */
  readonly title: string;
  readonly place: PlainPlace;
}

export interface PreviewFinding {
  readonly id: string;
  readonly verdict: 'passes' | 'near its limit' | 'fails' | 'not checked';
  readonly severity: 'error' | 'warning' | 'information';
  readonly message: string;
  readonly part: string;
  readonly place: PlainPlace;
  readonly utilisation?: number;
  readonly loadCase?: string;
  readonly source?: string;
  readonly accepted?: string;
}

export interface PreviewMaterial {
  readonly title: string;
  /** e.g. '14 lengths of 20 ft', '62 m2'. */
  readonly quantity: string;
  /** e.g. 'cut 13 x 5.61 m', or ''. */
  readonly note: string;
  /** With currency, or '' where no price is known. */
  readonly cost: string;
}

export interface PreviewFact {
  readonly label: string;
  readonly value: string;
}

export interface PreviewAssumed {
  readonly what: string;
  readonly value: string;
  readonly place: PlainPlace;
}

export interface PreviewNotChecked {
  readonly what: string;
  readonly why: string;
}

export interface CatalogueQuestion {
  readonly uri: string;
}
export interface CatalogueAnswer {
  readonly text: string;
}

export interface ExplanationQuestion {
  readonly uri: string;
}
export interface ExplanationAnswer {
  readonly markdown: string;
}

export interface CalculationQuestion {
  readonly uri: string;
  /** Where the cursor is: the calculation of the finding or shelter there. */
  readonly position: PlainPosition;
  /** Only the findings of this check. */
  readonly check?: string;
}
export interface CalculationAnswer {
  readonly title: string;
  readonly markdown: string;
}

export interface AssumedQuestion {
  readonly uri: string;
  /** Only the shelter written around this place; all shelters of the file without it. */
  readonly position?: PlainPosition;
}
export interface AssumedAnswer {
  readonly version: number;
  readonly edits: readonly { readonly range: PlainRange; readonly newText: string }[];
}

export interface TemplatesAnswer {
  readonly templates: readonly ShelterTemplate[];
}
export interface ShelterTemplate {
  readonly id: string;
  readonly title: string;
  readonly description: string;
  /** A whole file in the language, in snippet syntax (`${1:plug_house}`), ready to be tabbed through. */
  readonly snippet: string;
}

export interface EvaluatedNotice {
  readonly uri: string;
  readonly version: number;
  /** 'live': typical and end bow in plane. 'full': the whole house in space. */
  readonly tier: 'live' | 'full';
  /** For the status bar: e.g. 'First to fail: roof film at 31 m/s', or ''. */
  readonly summary: string;
}
