/** The questions of the editor that go beyond the standard protocol. */
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
  type PreviewAnswer,
  type PreviewQuestion,
  previewRequest,
} from '../protocol.ts';
import { textEdits } from './actions.ts';
import { writeAssumed } from './assumed.ts';
import type { ServerServices } from './lsp-module.ts';
import { definitionNamed } from './named.ts';
import { previewOf } from './preview-of.ts';
import { assumedIn } from './results.ts';
import { systemFor } from './settings.ts';
import type { Sheets } from './sheet-of.ts';

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
    const assumed = [...analysis.results, ...analysis.ranges]
      .filter(({ shelter }) => offset === undefined || inside(document, shelter, offset))
      .flatMap(assumedIn);
    const text = document.textDocument.getText();
    const changes = writeAssumed(text, uri, assumed, systemFor(analysis.world, services.context.settings()));
    return { version: document.textDocument.version, edits: textEdits(document, changes) };
  });
  connection.onRequest(previewRequest, async (question: PreviewQuestion): Promise<PreviewAnswer> => {
    const document = await ready(question.uri);
    return previewOf(question, document, services, sheets);
  });
  connection.onRequest(
    calculationRequest,
    async (question: CalculationQuestion): Promise<CalculationAnswer | null> => {
      const document = await ready(question.uri);
      const analysis = document && (await services.analyses.current(document));
      if (!document || !analysis || !sheets.calculation) return null;
      const offset = document.textDocument.offsetAt(question.position);
      const all = [...analysis.results, ...analysis.ranges];
      const result = all.find(({ shelter }) => inside(document, shelter, offset)) ?? all[0];
      if (!result?.evaluation && !result?.judged) return null;
      const findings = (await services.analyses.calculated(result)).filter(
        ({ id }) => question.check === undefined || id === question.check,
      );
      return sheets.calculation(
        result.shelter,
        findings,
        systemFor(analysis.world, services.context.settings()),
      );
    },
  );
}

/** Whether a place is in the block of a shelter. */
export function inside(document: LangiumDocument, shelter: string, offset: number): boolean {
  const cst = definitionNamed(document, shelter)?.$cstNode;
  return cst !== undefined && cst.offset <= offset && offset <= cst.end;
}
