import { DocumentState, type ServerServices, systemFor, URI } from '@tautline/language/server';
import type { Connection } from 'vscode-languageserver';
import { type DetailAnswer, type DetailQuestion, detailRequest } from '../details.ts';
import { detail } from './details.ts';

/** Puts the answers to `detailRequest` on the connection of a started server. */
export function registerDetails(connection: Connection, services: ServerServices): void {
  const { LangiumDocuments, DocumentBuilder } = services.shared.workspace;
  connection.onRequest(
    detailRequest,
    async ({ uri, shelter, wanted }: DetailQuestion): Promise<DetailAnswer> => {
      const parsed = URI.parse(uri);
      if (!LangiumDocuments.hasDocument(parsed)) {
        return { kind: 'nothing', why: 'The file is not open to the language server.' };
      }
      await DocumentBuilder.waitUntil(DocumentState.Validated, parsed).catch(() => undefined);
      const document = LangiumDocuments.getDocument(parsed);
      const analysis = document && (await services.analyses.current(document));
      const result = analysis?.results.find((one) => one.shelter === shelter);
      if (analysis === undefined || result?.evaluation === undefined || result.kept) {
        return { kind: 'nothing', why: 'The text cannot be worked out as it is now.' };
      }
      const loaded =
        wanted.kind === 'overlay' || (wanted.kind === 'file' && wanted.file.format !== 'csv')
          ? await services.analyses.withFrame(analysis, result)
          : result.evaluation;
      const system = systemFor(analysis.world, services.context.settings());
      return detail(loaded ?? result.evaluation, analysis.world, wanted, system);
    },
  );
}
