import { pathToFileURL } from 'node:url';
import type { LoadedShelter, LoadedWorkspace } from '@tautline/language';
import { resolveShelter, type Shelter } from '@tautline/shelter';
import { CannotRun } from './exit.ts';
import { load, shelterFiles } from './files.ts';

export interface OneShelter {
  readonly shelter: Shelter;
  readonly loaded: LoadedShelter;
  readonly workspace: LoadedWorkspace;
}

/** The one shelter of a file, or the one of that name where it has several. Files `beside` it are loaded with it. */
export async function oneShelter(
  file: string,
  name: string | boolean | undefined,
  beside: readonly string[] = [],
): Promise<OneShelter> {
  const own = await shelterFiles([file]);
  const workspace = await load(await shelterFiles([file, ...beside]));
  const uris = new Set(own.map((path) => pathToFileURL(path).href));
  const candidates = workspace.shelters.filter(({ kind, uri }) => kind !== 'range' && uris.has(uri));
  const loaded = typeof name === 'string' ? candidates.find((entry) => entry.name === name) : candidates[0];
  if (loaded === undefined) {
    const names = workspace.shelters
      .filter(({ uri }) => uris.has(uri))
      .map((entry) => entry.name)
      .join(', ');
    throw new CannotRun(
      typeof name === 'string'
        ? `There is no shelter '${name}' in ${file}; it has ${names || 'none'}.`
        : `There is no shelter in ${file}.`,
    );
  }
  if (typeof name !== 'string' && candidates.length > 1) {
    throw new CannotRun(
      `${file} has several shelters: say one with --shelter (${candidates.map((entry) => entry.name).join(', ')}).`,
    );
  }
  const { shelter, problems } = resolveShelter(loaded.name, loaded.world);
  const broken = workspace.problems.find((problem) => problem.severity === 'error');
  if (shelter === undefined) {
    const reason =
      problems.find((problem) => problem.severity === 'error')?.message ??
      broken?.message ??
      'its spec is incomplete';
    throw new CannotRun(`${loaded.name} cannot be drawn or counted yet: ${reason}`);
  }
  return { shelter, loaded, workspace };
}
