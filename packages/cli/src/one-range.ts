import type { LoadedShelter } from '@tautline/language';
import { type Range, resolveRange } from '@tautline/shelter';
import { CannotRun } from './exit.ts';
import { load, shelterFiles } from './files.ts';

export interface OneRange {
  readonly range: Range;
  readonly loaded: LoadedShelter;
}

/** The range of that name in a file; undefined when the file has none of that name. */
export async function rangeNamed(
  file: string,
  name: string | boolean | undefined,
): Promise<OneRange | undefined> {
  if (typeof name !== 'string') return undefined;
  const workspace = await load(await shelterFiles([file]));
  const loaded = workspace.shelters.find((entry) => entry.kind === 'range' && entry.name === name);
  if (loaded === undefined) return undefined;
  const { range, problems } = resolveRange(name, loaded.world);
  if (range !== undefined) return { range, loaded };
  const reason =
    problems.find((problem) => problem.severity === 'error')?.message ?? 'its spec is incomplete';
  throw new CannotRun(`${name} cannot be drawn or counted yet: ${reason}`);
}
