/**
 * Reads, works out and draws a small house before anybody waits for anything: the worker then is up and knows the
 * catalogue, and all code has run once, so that the first file opened is answered as quickly as the tenth.
 */
import type { SpecWorld } from '@tautline/shelter';
import { URI } from 'langium';
import type { Analyst } from '../analyst/analyst.ts';
import { definitionsOf, problemsOf, type ViewServices } from './file-view.ts';
import { isCatalogue } from './scope.ts';
import type { Sheets } from './sheet-of.ts';

/** Has bows, posts, a cable, film and feet, so that most of the calculation is gone through. */
const name = 'warm-up';
const text = `site plot { gust 30 m/s; rain 60 mm/h; soil loam }
shelter ${name} on plot {
  footprint 6 m by 12 m
  bows spaced 1.5 m { of pvc40-50; shape elastic; rise 2.6 m; foot stub of rebar-16 { length 1.5 m; deep 0.9 m } }
  ridge cable of rope-6 { tension 4 kN; posts of lumber-4x4 spaced 4 m { foot hole { deep 0.8 m; across 0.3 m } } }
  cover roof with film-uv-150 { fastened by board-1x3; tension 200 N/m }
}
`;

/** Resolves when the worker has answered, and the house is drawn if it can be. */
export async function warmUp(
  services: ViewServices,
  analyst: Analyst,
  { draw }: Pick<Sheets, 'draw'>,
): Promise<void> {
  const { LangiumDocumentFactory, LangiumDocuments, WorkspaceManager } = services.shared.workspace;
  await WorkspaceManager.ready;
  // Belongs to no workspace: nobody sees it, and nothing can refer to it.
  const document = LangiumDocumentFactory.fromString(text, URI.parse(`tautline-warm-up:/${name}.shelter`));
  problemsOf(document, services);
  const catalogue = LangiumDocuments.all.filter(({ uri }) => isCatalogue(uri)).toArray();
  const all = [document, ...catalogue].flatMap((one) => definitionsOf(one));
  const world: SpecWorld = { definitions: new Map(all.map((one) => [one.name, one])) };
  const result = await analyst.analyse(world, name, { gusts: true });
  if (result?.evaluation) draw?.(result.evaluation, world, 'metric', { view: 'section' });
}
