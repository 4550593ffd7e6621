/** The questions of the editor that go beyond the standard protocol. */
import { type Evaluation, type Finding, messageText, sources } from '@tautline/checks';
import type { System } from '@tautline/quantity';
import type { Origin, SpecWorld } from '@tautline/shelter';
import { DocumentState, type LangiumDocument, URI } from 'langium';
import type { Connection } from 'vscode-languageserver';
import { catalogueText } from '../files/catalogue.ts';
import {
  type AssumedAnswer,
  type AssumedQuestion,
  assumedRequest,
  type CalculationAnswer,
  type CalculationQuestion,
  type CatalogueAnswer,
  type CatalogueQuestion,
  calculationRequest,
  catalogueRequest,
  type PlainPlace,
  type PreviewAnswer,
  type PreviewDrawing,
  type PreviewFact,
  type PreviewMaterial,
  type PreviewQuestion,
  type PreviewShelter,
  previewRequest,
} from '../protocol.ts';
import { docOf } from '../spec/to-spec.ts';
import { textEdits } from './actions.ts';
import { type FileAnalysis, findingsOf, type ShelterResult } from './analyses.ts';
import { writeAssumed } from './assumed.ts';
import { rangeOf } from './context.ts';
import { findingSpan, knownProblems } from './diagnostics.ts';
import type { ServerServices } from './lsp-module.ts';
import { definitionNamed, nameSpan } from './named.ts';
import { shown, systemFor } from './settings.ts';
import { locate } from './written.ts';

/** What drawing, takeoff and book put on a shelter's sheet; handed in by whoever bundles the server. */
export interface Sheets {
  readonly draw?: (
    evaluation: Evaluation,
    world: SpecWorld,
    system: System,
  ) => {
    readonly drawings: readonly PreviewDrawing[];
    readonly parts: readonly { readonly id: string; readonly title: string; readonly origin: Origin }[];
    readonly materials: readonly PreviewMaterial[];
    readonly facts: readonly PreviewFact[];
  };
  /** The calculation of some findings of a shelter, or of the whole shelter. */
  readonly calculation?: (
    evaluation: Evaluation,
    findings: readonly Finding[],
    system: System,
  ) => CalculationAnswer;
}

/** The document of a file that is open to the server, read and validated as it is now. */
export async function readyDocument(
  { shared }: Pick<ServerServices, 'shared'>,
  uri: string,
): Promise<LangiumDocument | undefined> {
  const { LangiumDocuments, DocumentBuilder, WorkspaceManager, WorkspaceLock } = shared.workspace;
  const parsed = URI.parse(uri);
  // Asked right after the start, or right after a file was opened: these are read first.
  await WorkspaceManager.ready;
  await WorkspaceLock.read(() => undefined);
  if (!LangiumDocuments.hasDocument(parsed)) return undefined;
  await DocumentBuilder.waitUntil(DocumentState.Validated, parsed).catch(() => undefined);
  return LangiumDocuments.getDocument(parsed);
}

export function registerRequests(connection: Connection, services: ServerServices, sheets: Sheets): void {
  const ready = (uri: string) => readyDocument(services, uri);
  connection.onRequest(catalogueRequest, ({ uri }: CatalogueQuestion): CatalogueAnswer | null => {
    const text = catalogueText(uri);
    return text === undefined ? null : { text };
  });
  connection.onRequest(assumedRequest, async ({ uri, position }: AssumedQuestion): Promise<AssumedAnswer> => {
    const document = await ready(uri);
    const analysis = document && (await services.analyses.current(document));
    if (!document || !analysis) return { version: 0, edits: [] };
    const offset = position && document.textDocument.offsetAt(position);
    const results = analysis.results.filter(
      ({ shelter }) => offset === undefined || inside(document, shelter, offset),
    );
    const assumed = results.flatMap(({ evaluation }) => evaluation?.assumed ?? []);
    const text = document.textDocument.getText();
    const changes = writeAssumed(text, uri, assumed, systemFor(analysis.world, services.context.settings()));
    return { version: document.textDocument.version, edits: textEdits(document, changes) };
  });
  connection.onRequest(previewRequest, async ({ uri }: PreviewQuestion): Promise<PreviewAnswer> => {
    const document = await ready(uri);
    const analysis = document && (await services.analyses.current(document));
    if (!document || !analysis)
      return { uri, version: 0, broken: 'The file is not open to the language server.', shelters: [] };
    const version = document.textDocument.version;
    const problems = knownProblems(document, services.context);
    const wrong = problems.find(({ severity }) => severity === 'error');
    const unreadable = problems.find(({ id }) => misread.has(id));
    const shelters: PreviewShelter[] = [];
    for (const result of analysis.results) {
      // The sheet keeps its last good drawing itself.
      const evaluation = result.kept ? undefined : result.evaluation;
      const shown = evaluation && previewOf(result, evaluation, document, analysis, services, sheets);
      if (shown)
        shelters.push(
          unreadable && shown.stale === undefined
            ? { ...shown, stale: `What cannot be read is left out: ${unreadable.message}` }
            : shown,
        );
    }
    const unread = analysis.results.find(({ evaluation, kept }) => kept || !evaluation);
    const broken =
      unread?.failure ??
      (unread
        ? (wrong?.message ?? unread.problems[0]?.message)
        : shelters.length === 0
          ? wrong?.message
          : undefined);
    return { uri, version, shelters, ...(broken === undefined ? {} : { broken }) };
  });
  connection.onRequest(
    calculationRequest,
    async (question: CalculationQuestion): Promise<CalculationAnswer | null> => {
      const document = await ready(question.uri);
      const analysis = document && (await services.analyses.current(document));
      if (!document || !analysis || !sheets.calculation) return null;
      const offset = document.textDocument.offsetAt(question.position);
      const result =
        analysis.results.find(({ shelter }) => inside(document, shelter, offset)) ?? analysis.results[0];
      if (!result?.evaluation) return null;
      const findings = findingsOf(result).filter(
        ({ id }) => question.check === undefined || id === question.check,
      );
      return sheets.calculation(
        result.evaluation,
        findings,
        systemFor(analysis.world, services.context.settings()),
      );
    },
  );
}

/** Problems of a text that is read only in part. */
const misread: ReadonlySet<string> = new Set([
  'unreadable',
  'unclosed',
  'stray-brace',
  'character',
  'syntax',
  'unclosed-text',
  'unclosed-comment',
  'incomplete',
  'unexpected',
]);

/** Whether a place is in the block of a shelter. */
export function inside(document: LangiumDocument, shelter: string, offset: number): boolean {
  const cst = definitionNamed(document, shelter)?.$cstNode;
  return cst !== undefined && cst.offset <= offset && offset <= cst.end;
}

function previewOf(
  result: ShelterResult,
  evaluation: Evaluation,
  document: LangiumDocument,
  analysis: FileAnalysis,
  { context }: ServerServices,
  sheets: Sheets,
): PreviewShelter | undefined {
  const { shelter } = result;
  const definition = definitionNamed(document, shelter);
  const cst = definition?.$cstNode;
  if (!definition || !cst) return undefined;
  const documents = context.view.shared.workspace.LangiumDocuments;
  const settings = context.settings();
  const system = systemFor(analysis.world, settings);
  const home: PlainPlace = {
    uri: document.uri.toString(),
    range: rangeOf(document, nameSpan(document, shelter).start, nameSpan(document, shelter).end),
  };
  const place = (origin: Origin): PlainPlace => {
    const found = locate(origin, documents, result.written);
    if (!found) return home;
    return { uri: found.document.uri.toString(), range: rangeOf(found.document, found.start, found.end) };
  };
  const drawn = sheets.draw?.(evaluation, analysis.world, system);
  return {
    name: shelter,
    title: docOf(definition).split('\n')[0] ?? '',
    range: rangeOf(document, cst.offset, cst.end),
    drawings: drawn?.drawings ?? [],
    parts: (drawn?.parts ?? []).map(({ id, title, origin }) => ({ id, title, place: place(origin) })),
    materials: drawn?.materials ?? [],
    facts: [
      ...(drawn?.facts ?? []),
      ...(result.whole
        ? [{ label: 'Whole house', value: result.whole.old ? 'as before the last edit' : 'worked out' }]
        : []),
    ],
    findings: findingsOf(result).map((finding) => ({
      id: finding.id,
      verdict: finding.verdict,
      severity: finding.severity,
      message: messageText(finding.message, system),
      part: finding.part,
      place: findingPlace(finding, result, document, home, context),
      source: sources[finding.source]?.title ?? finding.source,
      ...(result.whole?.findings.includes(finding)
        ? { tier: 'full' as const, ...(result.whole.old ? { old: true as const } : {}) }
        : {}),
      ...(finding.utilisation === undefined ? {} : { utilisation: finding.utilisation }),
      ...(finding.loadCase === undefined ? {} : { loadCase: finding.loadCase }),
      ...(finding.accepted === undefined ? {} : { accepted: finding.accepted.because }),
    })),
    assumed: evaluation.assumed.map(({ part, fact, value, kind, origin }) => ({
      what: `${part}: ${fact}`,
      value: typeof value === 'number' ? shown(value, kind, system, settings) : value,
      place: place(origin),
    })),
    notChecked: (result.whole?.old === false ? result.whole : evaluation).notChecked.map(
      ({ id, reason }) => ({ what: id, why: reason }),
    ),
    ...(result.gustsOld ? { gustsOld: true } : {}),
    ...(result.whole ? { wholeHouse: result.whole.old ? ('old' as const) : ('now' as const) } : {}),
    ...(analysis.stale ? { stale: 'The text has changed since these results were worked out.' } : {}),
  };
}

function findingPlace(
  finding: Finding,
  result: ShelterResult,
  document: LangiumDocument,
  home: PlainPlace,
  context: ServerServices['context'],
): PlainPlace {
  const { start, end } = findingSpan(finding, result, document, context);
  return { ...home, range: rangeOf(document, start, end) };
}
