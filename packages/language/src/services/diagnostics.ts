/** Problems and findings as the editor shows them: one list a file, language problems first. */
import { type Finding, messageText } from '@tautline/checks';
import type { Origin } from '@tautline/shelter';
import { type DocumentValidator, interruptAndCheck, type LangiumDocument, URI } from 'langium';
import { type Diagnostic, DiagnosticSeverity } from 'vscode-languageserver';
import { isDefinition } from '../generated/ast.ts';
import type { LanguageProblem } from '../problems/problem.ts';
import { placeOf, type Span, spanOf } from '../spec/origin-key.ts';
import type { FileAnalysis } from './analyses.ts';
import { type EditorContext, rangeOf } from './context.ts';
import { problemsOf } from './file-view.ts';
import { fileOf, isCatalogue } from './scope.ts';
import { systemFor } from './settings.ts';

export const source = 'tautline';

const severities = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
} as const;

type Documents = EditorContext['view']['shared']['workspace']['LangiumDocuments'];

/** Where an origin is, if its file is open to the server. */
export function locate(
  origin: Origin,
  documents: Documents,
): (Span & { document: LangiumDocument }) | undefined {
  const place = placeOf(origin);
  const document = place && documents.getDocument(URI.parse(place.uri));
  const file = document && fileOf(document);
  const span = file && spanOf(file, origin);
  return document && span ? { ...span, document } : undefined;
}

/** The name of a shelter in its file. */
export function nameSpan(document: LangiumDocument, name: string): Span {
  const statement = fileOf(document)?.statements.find((one) => isDefinition(one) && one.name === name);
  const cst = statement?.$cstNode;
  if (!cst) return { start: 0, end: 0 };
  const start = cst.offset + Math.max(0, cst.text.indexOf(name));
  return { start, end: start + name.length };
}

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

/** Findings a reader is to see in the text: what fails or comes near, unless accepted or turned off. */
export function shownFindings(
  analysis: FileAnalysis,
  { settings }: EditorContext,
): readonly (Finding & { shelter: string })[] {
  const { severity } = settings();
  return analysis.results.flatMap(({ evaluation, shelter }) =>
    (evaluation?.findings ?? [])
      .filter((finding) => finding.verdict === 'fails' || finding.verdict === 'near its limit')
      .filter((finding) => finding.accepted === undefined && severity[finding.id] !== 'off')
      .map((finding) => ({ ...finding, shelter })),
  );
}

/** Where a finding is shown in a file: its own line, or the shelter's name when that is elsewhere. */
export function findingSpan(
  finding: Finding & { shelter: string },
  document: LangiumDocument,
  documents: Documents,
): Span {
  const place = locate(finding.origin, documents);
  return place?.document === document ? place : nameSpan(document, finding.shelter);
}

function findingDiagnostic(
  finding: Finding & { shelter: string },
  document: LangiumDocument,
  analysis: FileAnalysis,
  context: EditorContext,
): Diagnostic {
  const documents = context.view.shared.workspace.LangiumDocuments;
  const { start, end } = findingSpan(finding, document, documents);
  const system = systemFor(analysis.world, context.settings());
  const chosen = context.settings().severity[finding.id];
  const related = finding.related.flatMap(({ origin, message }) => {
    const place = locate(origin, documents);
    if (!place) return [];
    const range = rangeOf(place.document, place.start, place.end);
    return [{ location: { uri: place.document.uri.toString(), range }, message }];
  });
  const link = context.explanation?.(finding.id);
  return {
    range: rangeOf(document, start, end),
    severity: severities[chosen && chosen !== 'off' ? chosen : finding.severity],
    source,
    code: finding.id,
    message: messageText(finding.message, system),
    ...(link === undefined ? {} : { codeDescription: { href: link } }),
    ...(related.length > 0 ? { relatedInformation: related } : {}),
  };
}

function resolverDiagnostics(
  analysis: FileAnalysis,
  document: LangiumDocument,
  taken: readonly Span[],
  context: EditorContext,
): Diagnostic[] {
  const documents = context.view.shared.workspace.LangiumDocuments;
  return analysis.results.flatMap(({ problems, failure, shelter }) => {
    const all: Diagnostic[] = problems.flatMap((problem) => {
      const place = locate(problem.origin, documents);
      const span = place?.document === document ? place : nameSpan(document, shelter);
      // What the language has already said of these words is not said again.
      if (taken.some((other) => span.start <= other.end && other.start <= span.end)) return [];
      const message = problem.message.charAt(0).toUpperCase() + problem.message.slice(1);
      return [
        {
          range: rangeOf(document, span.start, span.end),
          severity: severities[problem.severity],
          source,
          code: problem.id,
          message: /[.!?]$/.test(message) ? message : `${message}.`,
        },
      ];
    });
    if (failure !== undefined) {
      const { start, end } = nameSpan(document, shelter);
      const message = `This shelter could not be worked out: ${failure}. Nothing is said about it here.`;
      const range = rangeOf(document, start, end);
      all.push({ range, severity: DiagnosticSeverity.Warning, source, code: 'not-worked-out', message });
    }
    return all;
  });
}

/** Everything to be shown for a document: its problems now, and the last results of its shelters. */
export function diagnosticsOf(document: LangiumDocument, context: EditorContext): Diagnostic[] {
  if (isCatalogue(document.uri)) return [];
  const documents = context.view.shared.workspace.LangiumDocuments;
  const problems = problemsOf(document, context.view);
  const own = problems.map((problem) => problemDiagnostic(problem, document, documents));
  const analysis = context.analyses.of(document.uri.toString());
  if (!analysis || problems.some(({ id }) => id === 'unreadable')) return own;
  const found = shownFindings(analysis, context).map((finding) =>
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
    return diagnosticsOf(document, this.context());
  }
}
