/**
 * Works out one built-in template before anybody waits for anything: the worker then is up, knows the
 * catalogue and has run its code once, so that the first file opened is answered as quickly as the tenth.
 */
import type { SpecWorld } from '@tautline/shelter';
import { URI } from 'langium';
import type { Analyst } from '../analyst/analyst.ts';
import { templateFor, textOfTemplate } from '../files/templates.ts';
import { definitionsOf, type ViewServices } from './file-view.ts';
import { isCatalogue } from './scope.ts';

/** Has bows, posts, cable, film and feet, so that most of the calculation is gone through. */
const kind = 'cable-house';

/** Resolves when the worker has answered; never rejects. */
export async function warmUp({ shared }: ViewServices, analyst: Analyst): Promise<void> {
  const template = templateFor(kind);
  if (!template) return;
  const { LangiumDocumentFactory, LangiumDocuments, WorkspaceManager } = shared.workspace;
  await WorkspaceManager.ready;
  // Belongs to no workspace: nobody sees it, and nothing can refer to it.
  const document = LangiumDocumentFactory.fromString(
    textOfTemplate(template),
    URI.parse(`tautline-warm-up:/${kind}.shelter`),
  );
  const catalogue = LangiumDocuments.all.filter(({ uri }) => isCatalogue(uri)).toArray();
  const all = [document, ...catalogue].flatMap((one) => definitionsOf(one));
  const world: SpecWorld = { definitions: new Map(all.map((one) => [one.name, one])) };
  await analyst.analyse(world, kind, { gusts: true }).catch(() => undefined);
}
