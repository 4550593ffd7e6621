/** What a command is asked to draw or count: one shelter of a file, or a range of several. */
import { pathToFileURL } from 'node:url';
import type { LoadedShelter, LoadedWorkspace } from '@tautline/language';
import { type Problem, type Range, resolveRange, resolveShelter, type Shelter } from '@tautline/shelter';
import { CannotRun } from './exit.ts';
import { load, shelterFiles } from './files.ts';

export interface OneShelter {
  readonly shelter: Shelter;
  readonly loaded: LoadedShelter;
  readonly workspace: LoadedWorkspace;
}

export interface OneRange {
  readonly range: Range;
  readonly loaded: LoadedShelter;
}

type Name = string | boolean | undefined;

/** A file with what it imports, and the shelters and ranges of its own. */
interface Opened {
  readonly file: string;
  readonly workspace: LoadedWorkspace;
  readonly own: readonly LoadedShelter[];
}

/** The one shelter of a file, or the one of that name where it has several. Files `beside` it are loaded with it. */
export async function oneShelter(
  file: string,
  name: Name,
  beside: readonly string[] = [],
): Promise<OneShelter> {
  return shelterIn(await open(file, beside), name);
}

/** The range of that name in a file, else its shelter as `oneShelter` picks it; the file is read once. */
export async function shelterOrRange(file: string, name: Name): Promise<OneShelter | OneRange> {
  const opened = await open(file);
  return rangeIn(opened, name) ?? shelterIn(opened, name);
}

async function open(file: string, beside: readonly string[] = []): Promise<Opened> {
  const own = await shelterFiles([file]);
  const workspace = await load(beside.length === 0 ? own : await shelterFiles([file, ...beside]));
  const uris = new Set(own.map((path) => pathToFileURL(path).href));
  return { file, workspace, own: workspace.shelters.filter(({ uri }) => uris.has(uri)) };
}

function rangeIn({ own }: Opened, name: Name): OneRange | undefined {
  const loaded = own.find((entry) => entry.kind === 'range' && entry.name === name);
  if (loaded === undefined) return undefined;
  const { range, problems } = resolveRange(loaded.name, loaded.world);
  if (range === undefined) throw unready(loaded.name, problems);
  return { range, loaded };
}

function shelterIn({ file, workspace, own }: Opened, name: Name): OneShelter {
  const candidates = own.filter(({ kind }) => kind !== 'range');
  const loaded = typeof name === 'string' ? candidates.find((entry) => entry.name === name) : candidates[0];
  if (loaded === undefined) {
    const names = own.map((entry) => entry.name).join(', ');
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
  if (shelter === undefined) throw unready(loaded.name, [...problems, ...workspace.problems]);
  return { shelter, loaded, workspace };
}

function unready(name: string, problems: readonly Pick<Problem, 'severity' | 'message'>[]): CannotRun {
  const reason = problems.find(({ severity }) => severity === 'error')?.message ?? 'its spec is incomplete';
  return new CannotRun(`${name} cannot be drawn or counted yet: ${reason}`);
}
