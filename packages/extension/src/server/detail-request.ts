import type { AtGust } from '@tautline/checks';
import { DocumentState, type ServerServices, systemFor, URI } from '@tautline/language/server';
import { CancellationTokenSource, type Connection } from 'vscode-languageserver';
import {
  type DetailAnswer,
  type DetailQuestion,
  type DetailWanted,
  detailRequest,
  type OverlayWanted,
} from '../details.ts';
import { detail, rangeDetail } from './details.ts';
import { type GlbInput, glbJob } from './glb-job.ts';

/** Puts the answers to `detailRequest` on the connection of a started server. */
export function registerDetails(connection: Connection, services: ServerServices): void {
  const { LangiumDocuments, DocumentBuilder } = services.shared.workspace;
  /** The gust last asked for of each sheet: somebody who slides on does not wait for it. */
  const sliding = new Map<string, CancellationTokenSource>();
  connection.onRequest(
    detailRequest,
    async ({ uri, shelter, wanted, wide }: DetailQuestion): Promise<DetailAnswer> => {
      const parsed = URI.parse(uri);
      if (!LangiumDocuments.hasDocument(parsed)) {
        return { kind: 'nothing', why: 'The file is not open to the language server.' };
      }
      await DocumentBuilder.waitUntil(DocumentState.Validated, parsed).catch(() => undefined);
      const document = LangiumDocuments.getDocument(parsed);
      const analysis = document && (await services.analyses.current(document));
      const range = analysis?.ranges.find((one) => one.shelter === shelter);
      if (analysis !== undefined && range?.judged !== undefined && !range.kept) {
        const system = systemFor(analysis.world, services.context.settings());
        return rangeDetail(range.judged.range, analysis.world, wanted, system);
      }
      const result = analysis?.results.find((one) => one.shelter === shelter);
      // The last good drawing can be looked at from all sides; the sheet marks it.
      const kept = result?.kept === true && wanted.kind !== 'view';
      if (analysis === undefined || result?.evaluation === undefined || kept) {
        return { kind: 'nothing', why: 'The text cannot be worked out as it is now.' };
      }
      if (wanted.kind === 'file' && wanted.file.format === 'glb') {
        const input: GlbInput = { shelter };
        const bytes = await services.longWork.run<Uint8Array>(glbJob, [analysis.world], input);
        return bytes === undefined
          ? { kind: 'nothing', why: 'The text cannot be worked out as it is now.' }
          : { kind: 'file', name: `${shelter}.glb`, base64: base64Of(bytes) };
      }
      const over = overlayIn(wanted);
      const gust = over?.gust;
      let blown: AtGust | undefined;
      if (gust !== undefined) {
        const sheet = `${uri} ${shelter}`;
        const source = new CancellationTokenSource();
        // What is written to a file is waited for.
        if (wanted.kind === 'overlay') {
          sliding.get(sheet)?.cancel();
          sliding.set(sheet, source);
        }
        blown = await services.analyses.atGust(analysis, shelter, gust, source.token);
        if (sliding.get(sheet) === source) {
          sliding.delete(sheet);
        }
        if (source.token.isCancellationRequested) {
          return { kind: 'overtaken' };
        }
      }
      const loaded =
        wanted.kind === 'overlay' || (wanted.kind === 'file' && wanted.file.format !== 'csv')
          ? await services.analyses.withFrame(analysis, result)
          : result.evaluation;
      const system = systemFor(analysis.world, services.context.settings());
      return detail(loaded ?? result.evaluation, analysis.world, wanted, system, blown, wide);
    },
  );
}

function overlayIn(wanted: DetailWanted): OverlayWanted | undefined {
  if (wanted.kind === 'overlay') {
    return wanted;
  }
  return wanted.kind === 'file' && 'over' in wanted.file ? wanted.file.over : undefined;
}

/** In pieces, for a call takes only so many arguments. */
function base64Of(bytes: Uint8Array): string {
  let text = '';
  for (let from = 0; from < bytes.length; from += 0x8000) {
    text += String.fromCharCode(...bytes.subarray(from, from + 0x8000));
  }
  return btoa(text);
}
