/** Two revisions worked out for a review: only what can differ is calculated. */
import { anythingDiffers, changesOf } from './changes.ts';
import { pairShelters } from './pairs.ts';
import type { RenamedFiles, Reviewed, Written } from './revision.ts';

export type Figures = Pick<Reviewed, 'evaluation' | 'materials' | 'firstFailure'>;

/**
 * The shelters of both revisions, each with what `workOut` gives of it, where anything that it follows from
 * differs. `problemsOf` tells the errors that keep one from being worked out. Nothing is asked of ranges.
 */
export async function workedOut<T extends Written>(
  before: readonly T[],
  after: readonly T[],
  renamed: RenamedFiles,
  problemsOf: (one: T) => readonly string[],
  workOut: (one: T) => Promise<Figures> | Figures,
): Promise<readonly [readonly Reviewed[], readonly Reviewed[]]> {
  const done = new Map<T, Reviewed>();
  for (const pair of pairShelters(before, after, renamed)) {
    const quiet = pair.before && pair.after && !anythingDiffers(changesOf(pair.before, pair.after));
    for (const one of [pair.before, pair.after]) {
      if (!one) continue;
      const { name, file, kind, world } = one;
      const written: Reviewed = { name, file, kind, world, problems: problemsOf(one) };
      done.set(one, quiet || kind === 'range' ? written : { ...written, ...(await workOut(one)) });
    }
  }
  const all = (side: readonly T[]): Reviewed[] => side.flatMap((one) => done.get(one) ?? []);
  return [all(before), all(after)];
}
