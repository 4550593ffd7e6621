/** What the laws are asked of: a shelter in its world, as written and not yet resolved. */
import { readdirSync, readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { type Evaluation, evaluate } from '@tautline/checks';
import { loadWorkspace } from '@tautline/language';
import { resolveShelter, type SpecWorld } from '@tautline/shelter';

export interface Subject {
  /** Where it comes from, for the report of a break. */
  readonly from: string;
  /** Name of its definition. */
  readonly name: string;
  readonly world: SpecWorld;
}

/** Ages are counted to this day, so that the laws do not change with the calendar. */
export const today = '2026-11-25';

/** The verdict on the typical frame; undefined where no shelter can be read from it. */
export function judged({ name, world }: Subject, on = today, gusts = false): Evaluation | undefined {
  const { shelter, problems } = resolveShelter(name, world);
  if (shelter === undefined || problems.some(({ severity }) => severity === 'error')) return undefined;
  return evaluate(shelter, { on, gusts });
}

/** Every shelter and variant of a file's text, or of several files that import each other. */
export async function subjectsOf(
  files: readonly { readonly uri: string; readonly text: string }[],
): Promise<Subject[]> {
  const { shelters } = await loadWorkspace(files);
  return shelters
    .filter(({ kind }) => kind !== 'range')
    .map(({ name, uri, world }) => ({ from: uri.slice(uri.lastIndexOf('/') + 1), name, world }));
}

/** Every shelter of the files of a folder. */
export function examplesIn(folder: string | URL): Promise<Subject[]> {
  const files = readdirSync(folder)
    .filter((name) => name.endsWith('.shelter'))
    .map((name) => ({ name, at: new URL(name, typeof folder === 'string' ? pathToFileURL(folder) : folder) }))
    .map(({ at }) => ({ uri: at.href, text: readFileSync(at, 'utf8') }));
  return subjectsOf(files);
}

export const examples = (): Promise<Subject[]> => examplesIn(new URL('../../examples/', import.meta.url));
export const checkSpecs = (): Promise<Subject[]> =>
  examplesIn(new URL('../../packages/checks/specs/', import.meta.url));
