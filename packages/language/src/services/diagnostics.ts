/** Problems and findings as the editor shows them: one list a file, language problems first. */
import { messageText } from '@tautline/checks';
import type { Origin } from '@tautline/shelter';
import { DocumentState, type DocumentValidator, interruptAndCheck, type LangiumDocument, URI } from 'langium';
import { type Diagnostic, DiagnosticSeverity } from 'vscode-languageserver';
import type { ToldFinding } from '../analyst/result.ts';
import { asSentence, isEcho } from '../problems/echo.ts';
import type { LanguageProblem } from '../problems/problem.ts';
import type { Span } from '../spec/origin-key.ts';
import { type EditorContext, rangeOf } from './context.ts';
import { problemsOf } from './file-view.ts';
import { nameSpan } from './named.ts';
import {
  type FileAnalysis,
  findingsOf,
  guestFindings,
  type RangeResult,
  type ShelterResult,
} from './results.ts';
import { isCatalogue } from './scope.ts';
import { systemFor } from './settings.ts';
import { locate, type Written } from './written.ts';

export const source = 'tautline';

const severities = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
} as const;

type Documents = EditorContext['view']['shared']['workspace']['LangiumDocuments'];

export function problemDiagnostic(
  problem: LanguageProblem,
  document: LangiumDocument,
  documents: Documents,
): Diagnostic {
  const related = (problem.related ?? []).flatMap(({ uri, start, end, message }) => {
    const other = documents.getDocument(URI.parse(uri));
    return other ? [{ location: { uri, range: rangeOf(other, start, end) }, message }] : [];
  });
  return {
    range: rangeOf(document, problem.start, problem.end),
    severity: severities[problem.severity],
    source,
    code: problem.id,
    message: problem.message,
    ...(related.length > 0 ? { relatedInformation: related } : {}),
  };
}

/** A finding to be shown in a file, and where. */
export interface PlacedFinding extends ToldFinding {
  readonly shelter: string;
  readonly span: Span;
  /** The result it comes from; absent for a shelter that only stands in a range of this file. */
  readonly result?: ShelterResult | RangeResult;
}

/** Where the whole house and the typical frame do not tell the same, a reader must know that both were asked. */
const differs = (check: string): boolean => check === 'tier-difference';

/** Findings a reader is to see in the text: what fails or comes near, unless accepted or turned off. */
export function shownFindings(
  analysis: FileAnalysis,
  document: LangiumDocument,
  context: EditorContext,
): readonly PlacedFinding[] {
  const { severity } = context.settings();
  const shown = <T extends ToldFinding>(findings: readonly T[]): readonly T[] =>
    findings
      .filter(({ verdict, id }) => verdict === 'fails' || verdict === 'near its limit' || differs(id))
      .filter((finding) => finding.accepted === undefined && severity[finding.id] !== 'off');
  const own = [...analysis.results, ...analysis.ranges].flatMap((result) =>
    shown(findingsOf(result)).map((finding) => {
      const { shelter } = result;
      return { ...finding, shelter, result, span: findingSpan(finding, result, document, context) };
    }),
  );
  // What fails in a file that is not this one is shown where this one puts the shelter up.
  const guests = analysis.ranges.flatMap((range) =>
    shown(guestFindings(range)).map((finding) => ({
      ...finding,
      span: findingSpan(finding, range, document, context),
    })),
  );
  return [...own, ...guests];
}

function placeHere(
  origin: Origin,
  document: LangiumDocument,
  { view }: EditorContext,
  written: Written,
): Span | undefined {
  const place = locate(origin, view.shared.workspace.LangiumDocuments, written);
  return place?.document === document ? { start: place.start, end: place.end } : undefined;
}

/** Where a finding is shown in a file: its own line, or the shelter's name when that is elsewhere. */
export function findingSpan(
  finding: ToldFinding,
  { shelter, written }: ShelterResult | RangeResult,
  document: LangiumDocument,
  context: EditorContext,
): Span {
  return placeHere(finding.origin, document, context, written) ?? nameSpan(document, shelter);
}

function findingDiagnostic(
  finding: PlacedFinding,
  document: LangiumDocument,
  analysis: FileAnalysis,
  context: EditorContext,
): Diagnostic {
  const documents = context.view.shared.workspace.LangiumDocuments;
  const system = systemFor(analysis.world, context.settings());
  const chosen = context.settings().severity[finding.id];
  const related = finding.related.flatMap(({ origin, message }) => {
    const place = locate(origin, documents, finding.result?.written);
    if (!place) return [];
    const range = rangeOf(place.document, place.start, place.end);
    return [{ location: { uri: place.document.uri.toString(), range }, message }];
  });
  const link = context.explanation(finding.id);
  const { kept, whole, awaited }: Partial<ShelterResult> = finding.result ?? {};
  const earlier = whole?.old === true && whole.findings.some(({ id }) => id === finding.id);
  const old = kept
    ? ' (As the text stood when it could last be worked out.)'
    : earlier
      ? ' (As the whole house stood before the last edits.)'
      : awaited?.some(({ id }) => id === finding.id)
        ? ' (As the order of failure stood before the last edits.)'
        : '';
  return {
    range: rangeOf(document, finding.span.start, finding.span.end),
    severity: severities[chosen && chosen !== 'off' ? chosen : finding.severity],
    source,
    code: finding.id,
    message: messageText(finding.message, system) + old,
    ...(link === undefined ? {} : { codeDescription: { href: link } }),
    ...(related.length > 0 ? { relatedInformation: related } : {}),
  };
}

function resolverDiagnostics(
  analysis: FileAnalysis,
  document: LangiumDocument,
  taken: readonly LanguageProblem[],
  context: EditorContext,
): Diagnostic[] {
  return [...analysis.results, ...analysis.ranges].flatMap(({ shelter: name, problems, failure }) => {
    const all: Diagnostic[] = problems.flatMap((problem) => {
      const span = placeHere(problem.origin, document, context, analysis.written) ?? nameSpan(document, name);
      // What the language has already said of these words is not said again.
      if (isEcho(problem.id, span, taken)) return [];
      const message = asSentence(problem.message);
      const range = rangeOf(document, span.start, span.end);
      return [{ range, severity: severities[problem.severity], source, code: problem.id, message }];
    });
    if (failure !== undefined) {
      const { start, end } = nameSpan(document, name);
      const message = `${name} could not be worked out: ${failure}. Nothing is said about it here.`;
      const range = rangeOf(document, start, end);
      all.push({ range, severity: DiagnosticSeverity.Warning, source, code: 'not-worked-out', message });
    }
    return all;
  });
}

const validated = new WeakMap<object, readonly LanguageProblem[]>();

/** The language's problems of a document, as they were found when it was last validated. */
export function knownProblems(
  document: LangiumDocument,
  { view }: EditorContext,
): readonly LanguageProblem[] {
  const file = document.parseResult.value;
  const known = document.state >= DocumentState.Validated ? validated.get(file) : undefined;
  return known ?? problemsOf(document, view);
}

/** Everything to be shown for a document: its problems now, and the last results of its shelters. */
export function diagnosticsOf(
  document: LangiumDocument,
  context: EditorContext,
  problems = knownProblems(document, context),
): Diagnostic[] {
  if (isCatalogue(document.uri)) return [];
  const documents = context.view.shared.workspace.LangiumDocuments;
  const own = problems.map((problem) => problemDiagnostic(problem, document, documents));
  const analysis = context.analyses.of(document.uri.toString());
  if (!analysis || problems.some(({ id }) => id === 'unreadable')) return own;
  const found = shownFindings(analysis, document, context).map((finding) =>
    findingDiagnostic(finding, document, analysis, context),
  );
  const resolver = resolverDiagnostics(analysis, document, problems, context);
  const seen = new Set<string>();
  return [...own, ...resolver, ...found].filter(({ code, message, range }) => {
    const key = JSON.stringify([code, message, range]);
    return !seen.has(key) && seen.add(key);
  });
}

export class ShelterValidator implements DocumentValidator {
  private readonly context: () => EditorContext;

  constructor(context: () => EditorContext) {
    this.context = context;
  }

  async validateDocument(
    document: LangiumDocument,
    _options?: unknown,
    token?: Parameters<typeof interruptAndCheck>[0],
  ): Promise<Diagnostic[]> {
    if (token) await interruptAndCheck(token);
    // The same text may be validated again, when something it imports has changed.
    const problems = problemsOf(document, this.context().view);
    validated.set(document.parseResult.value, problems);
    return diagnosticsOf(document, this.context(), problems);
  }
}
