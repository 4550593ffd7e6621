/** Two revisions worked out for a review: only what can differ is calculated. */
import { anythingDiffers, changesOf } from './changes.ts';
import { pairShelters } from './pairs.ts';
import type { RenamedFiles, Reviewed, Written } from './revision.ts';

export type Figures = Pick<Reviewed, 'evaluation' | 'materials' | 'firstFailure'>;

/** Shelters of both revisions of which anything that their figures follow from differs; no ranges. */
export function worthWorkingOut<T extends Written>(
  before: readonly T[],
  after: readonly T[],
  renamed: RenamedFiles,
): readonly T[] {
  return pairShelters(before, after, renamed).flatMap((pair) => {
    if (pair.before && pair.after && !anythingDiffers(changesOf(pair.before, pair.after))) return [];
    return [pair.before, pair.after].filter((one) => one !== undefined && one.kind !== 'range') as T[];
  });
}

/** Shelters as a review takes them. `problemsOf` tells the errors that keep one from being worked out. */
export function withFigures<T extends Written>(
  shelters: readonly T[],
  problemsOf: (one: T) => readonly string[],
  figures: ReadonlyMap<T, Figures>,
): readonly Reviewed[] {
  return shelters.map((one) => {
    const { name, file, kind, world } = one;
    return { name, file, kind, world, problems: problemsOf(one), ...figures.get(one) };
  });
}

/** Both revisions, each shelter with what `workOut` gives of it where it is worth working out, one by one. */
export async function workedOut<T extends Written>(
  before: readonly T[],
  after: readonly T[],
  renamed: RenamedFiles,
  problemsOf: (one: T) => readonly string[],
  workOut: (one: T) => Promise<Figures> | Figures,
): Promise<readonly [readonly Reviewed[], readonly Reviewed[]]> {
  const figures = new Map<T, Figures>();
  for (const one of worthWorkingOut(before, after, renamed)) figures.set(one, await workOut(one));
  return [withFigures(before, problemsOf, figures), withFigures(after, problemsOf, figures)];
}
