/** Answers what may vary in a shelter, and how one of the variants is said in its text. */
import {
  type ExploreAnswer,
  type ExploreQuestion,
  exploreRequest,
  type VariantAnswer,
  type VariantQuestion,
  variantRequest,
} from '@tautline/language/protocol';
import {
  applySpecEdits,
  editsByFile,
  inside,
  readyDocument,
  type ServerServices,
  systemFor,
  textEdits,
  workAsked,
} from '@tautline/language/server';
import { axesOf, editsAt, gridSize, sourcesOf } from '@tautline/review';
import type { CancellationToken, Connection } from 'vscode-languageserver';
import { type ExploreInput, type ExploreOutput, exploreJob } from './explore-job.ts';

export function registerExplore(connection: Connection, services: ServerServices): void {
  connection.onRequest(exploreRequest, (question: ExploreQuestion, token: CancellationToken) =>
    explored(question, token, connection, services),
  );
  connection.onRequest(variantRequest, (question: VariantQuestion) => variant(question, services));
}

async function explored(
  { uri, position, shelter: named, workDoneToken }: ExploreQuestion,
  token: CancellationToken,
  connection: Connection,
  services: ServerServices,
): Promise<ExploreAnswer> {
  const document = await readyDocument(services, uri);
  const analysis = document && (await services.analyses.current(document));
  if (!document || !analysis) return { why: 'The file is not open to the language server.' };
  const names = analysis.results.map(({ shelter }) => shelter);
  const offset = position && document.textDocument.offsetAt(position);
  const varies = (name: string): boolean =>
    (sourcesOf({ name, world: analysis.world }).shelter?.children ?? []).some(({ word }) => word === 'vary');
  const shelter =
    named ??
    names.find((name) => offset !== undefined && inside(document, name, offset)) ??
    names.find(varies) ??
    names[0];
  if (shelter === undefined) return { why: 'There is no shelter in this file.' };
  const on = services.context.today();
  const input: ExploreInput = {
    shelter,
    file: fileName(uri),
    system: systemFor(analysis.world, services.context.settings()),
    ...(on === undefined ? {} : { on }),
  };
  const shown = workAsked(connection, workDoneToken, `Exploring ${shelter}`);
  try {
    const found = await services.longWork.run<ExploreOutput>(exploreJob, [analysis.world], input, {
      token,
      progress: shown.tell,
      partial: true,
    });
    if (found === undefined) return { why: 'Stopped before it was done.' };
    return 'why' in found ? found : { ...found, version: analysis.version };
  } catch (error) {
    return { why: `It could not be worked out: ${error instanceof Error ? error.message : error}.` };
  } finally {
    shown.end();
  }
}

async function variant(
  { uri, shelter, number }: VariantQuestion,
  services: ServerServices,
): Promise<VariantAnswer> {
  const document = await readyDocument(services, uri);
  const analysis = document && (await services.analyses.current(document));
  const source = analysis && sourcesOf({ name: shelter, world: analysis.world }).shelter;
  if (!document || !analysis || !source) return { why: `There is no ${shelter} in this file.` };
  const { axes } = axesOf(source);
  if (axes.length === 0 || number < 1 || number > gridSize(axes))
    return { why: `${shelter} has no variant ${number} any more: explore it again.` };
  const byFile = editsByFile(editsAt(axes, number - 1));
  const own = byFile.get(uri);
  if (analysis.world.definitions.get(shelter)?.word !== 'shelter' || byFile.size !== 1 || !own)
    return {
      why: `${shelter} takes its facts from another shelter: change that one, or say them in ${shelter} first.`,
    };
  const system = systemFor(analysis.world, services.context.settings());
  const result = applySpecEdits(document.textDocument.getText(), own, system);
  if (!result.ok) return { why: `Variant ${number} cannot be written: ${result.reason}.` };
  return { version: document.textDocument.version, edits: textEdits(document, result.changes) };
}

export const fileName = (uri: string): string => decodeURIComponent(uri.split('/').at(-1) ?? uri);
