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
/** The check whose explanation has that address; undefined when it is no such address. */
export function explainedCheck(address: string): string | undefined {
  return new RegExp(`^${explanationScheme}:/+([a-z0-9-]+)\\.md$`).exec(address)?.[1];
}

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
/** `CalculationQuestion` -> `CalculationAnswer | null`: calculation sheet as Markdown. */
export const calculationRequest = 'tautline/calculation';
/** `AssumedQuestion` -> `AssumedAnswer`: text edits that write assumed values into the text. */
export const assumedRequest = 'tautline/assumed';

/** `WholeHouseQuestion` -> `WholeHouseAnswer`: works out the whole houses of a file in space. Takes seconds. */
export const wholeHouseRequest = 'tautline/wholeHouse';
/** `ChangesQuestion` -> `ChangesAnswer`: what changed since the last commit, as a review of the file's shelters. */
export const changesRequest = 'tautline/changes';
/** `ExploreQuestion` -> `ExploreAnswer`: every variant that a shelter's `vary` facts allow, worked out. */
export const exploreRequest = 'tautline/explore';
/** `VariantQuestion` -> `VariantAnswer`: text edits that say one of the variants explored. */
export const variantRequest = 'tautline/variant';

// --- Server asks, client answers ---------------------------------------------------------------

/** `CommittedQuestion` -> `CommittedAnswer`: text of a file as last committed. */
export const committedRequest = 'tautline/committed';

/** Command of the client, run once an `accept` line is written: selects the words that stand for the reason. */
export const reasonCommand = 'tautline.writeReason';

// --- Server tells ------------------------------------------------------------------------------

/**
 * `EvaluatedNotice`: there is news about a file after a change of it or of what it imports, also when its
 * text could not be read. The client asks again if the file's sheet is on show.
 */
export const evaluatedNotification = 'tautline/evaluated';

export interface PreviewQuestion {
  readonly uri: string;
  /** Width of the place the drawings are shown in, px, where it is a narrow one. */
  readonly wide?: number;
  /** The one that is on show: only it is drawn, or none; all of them without it. */
  readonly view?: PreviewView | 'none';
  /** Name of the only one that is wanted, '' for the first of the file: it waits for no other. All without it. */
  readonly one?: string;
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
  /** All that the file can show, in its order, whether it was asked for or not. */
  readonly names: readonly PreviewName[];
  /** Which one this is about, where only one was asked for: the first when the file has none of that name. */
  readonly one?: string;
  readonly shelters: readonly PreviewShelter[];
}

export interface PreviewName {
  readonly name: string;
  /** The whole block of the shelter. */
  readonly range: PlainRange;
}

export interface PreviewShelter extends PreviewName {
  /** Shelters side by side: drawn from above, counted together; absent for a shelter. */
  readonly kind?: 'range';
  /** First line of the shelter's doc comment, or ''. */
  readonly title: string;
  /** Drawings by view, in the order of the tabs, drawn or not. Absent views are not offered. */
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
  /**
   * Where it says what may vary: a mark that changes with everything its variants depend on, and not with the values
   * that vary themselves.
   */
  readonly varied?: string;
  /** Set while the first-failure gusts are still those of an earlier text: new ones follow by themselves. */
  readonly gustsOld?: true;
  /**
   * The whole house in space: 'now' when its findings belong to this text, 'old' when they are those of an earlier
   * one. Absent when it was not worked out.
   */
  readonly wholeHouse?: 'now' | 'old';
}

export type PreviewView = 'section' | 'plan' | 'side' | 'end' | 'setting-out';

export interface PreviewDrawing {
  readonly view: PreviewView;
  /** One sentence that says what is drawn, for a screen reader; absent, as the drawing is, where it was not drawn. */
  readonly description?: string;
  readonly svg?: string;
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
  /** The verdict as it is told: what fails and brings nothing down is 'to watch', what was accepted is 'accepted'. */
  readonly word: string;
  readonly message: string;
  readonly part: string;
  readonly place: PlainPlace;
  readonly utilisation?: number;
  readonly loadCase?: string;
  /** What the number leans on, as a reader would name it, or its id where there is no title. */
  readonly source?: string;
  readonly accepted?: string;
  /** From the whole house in space, which is worked out less often than the typical frame. */
  readonly tier?: 'full';
  /** Found in an earlier text. */
  readonly old?: true;
}

export interface PreviewMaterial {
  readonly title: string;
  /** e.g. '14 lengths of 20 ft', '62 m2'. */
  readonly quantity: string;
  /** e.g. 'cut 13 x 5.61 m', or ''. */
  readonly note: string;
  /** With currency, or '' where no price is known. */
  readonly cost: string;
  /** The last row: everything above it that has a price. */
  readonly sum?: true;
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

/** A starting point of the new-shelter wizard. */
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

/** A question whose answer takes long: progress is told under the token, cancelling the request stops the work. */
export interface LongQuestion {
  readonly uri: string;
  readonly workDoneToken?: string | number;
}

export type WholeHouseQuestion = LongQuestion;
export interface WholeHouseAnswer {
  /** Each shelter in a sentence; or why there is nothing to say. */
  readonly told: string;
  /** Whether anything was worked out. */
  readonly done: boolean;
}

export interface CommittedQuestion {
  readonly uri: string;
}
/** `text` is absent when the last commit has no such file. */
export type CommittedAnswer =
  | { readonly text?: string; readonly commit: string }
  /** There is no last commit to ask: one sentence that says why. */
  | { readonly why: string };

export type ChangesQuestion = LongQuestion;
export type ChangesAnswer =
  /** A complete page without scripts and without anything fetched. */
  { readonly title: string; readonly page: string } | { readonly why: string };

export interface ExploreQuestion extends LongQuestion {
  /** The shelter written around this place; the first with something to vary without it. */
  readonly position?: PlainPosition;
  readonly shelter?: string;
}
export type ExploreAnswer = Explored | { readonly why: string };

/** What exploring found; numbers in SI beside their words. */
export interface Explored {
  readonly shelter: string;
  /** Version of the text it was worked out from. */
  readonly version: number;
  /** As in `PreviewShelter`. */
  readonly varied: string;
  /** Names of the facts that vary, e.g. `bows spaced`. */
  readonly axes: readonly string[];
  /** What is compared, e.g. `least cost`. */
  readonly aims: readonly string[];
  readonly variants: readonly ExploredVariant[];
  /** How many there are, where it was stopped before the end. */
  readonly of: number;
  /** Table, front and what was held fixed, as a page of Markdown. */
  readonly markdown: string;
}

export interface ExploredVariant {
  /** As a reader counts, from 1. */
  readonly number: number;
  /** One for each axis, in words. */
  readonly values: readonly string[];
  /** e.g. 'holds, 2 to watch', '1 fails'. */
  readonly verdict: string;
  /** Nothing fails, and no other such variant is at least as good in every aim. */
  readonly best: boolean;
  readonly holds: boolean;
  /** Sum of money, with `costText` in words; absent without prices. */
  readonly cost?: number;
  readonly costText?: string;
  /** Lowest gust at which a part fails that is not declared to go first, m/s. */
  readonly gust?: number;
  readonly gustText?: string;
  /** m, at the place the page names. */
  readonly headroom?: number;
  readonly headroomText?: string;
  /** Share of its limit that the most used part is used up by. */
  readonly used?: number;
  readonly usedText?: string;
}

export interface VariantQuestion {
  readonly uri: string;
  readonly shelter: string;
  readonly number: number;
}
export type VariantAnswer = AssumedAnswer | { readonly why: string };
