/** Every way to fill a bar so that no further wanted piece fits. */
import type { Pattern, Problem, Source } from './problem.ts';

export interface Patterns {
  readonly list: readonly Pattern[];
  /** False when there were more than the cap: a plan from these may miss the best. */
  readonly complete: boolean;
}

/**
 * Maximal patterns of all sources, at most `cap` of them, looking at no more than fifty times as many
 * fillings. Counts in a pattern never exceed what is needed, so a plan that covers the demand with
 * these patterns can always be trimmed to the demand.
 */
export function maximalPatterns(problem: Problem, cap: number): Patterns {
  const { sizes, counts } = problem;
  const list: Pattern[] = [];
  const last = sizes.length - 1;
  let looks = 0;
  let complete = true;

  function fill(source: number, pieces: number[], index: number, left: number): void {
    looks += 1;
    if (list.length >= cap || looks > 50 * cap) {
      complete = false;
      return;
    }
    const size = sizes[index] as number;
    const most = Math.min(counts[index] as number, Math.floor(left / size));
    if (index === last) {
      pieces[index] = most;
      const room = left - most * size;
      const full = sizes.every(
        (other, at) => other > room || (pieces[at] as number) >= (counts[at] as number),
      );
      if (full && pieces.some((n) => n > 0)) list.push({ source, pieces: [...pieces] });
      return;
    }
    for (let n = most; n >= 0; n -= 1) {
      pieces[index] = n;
      fill(source, pieces, index + 1, left - n * size);
      if (!complete) return;
    }
  }

  for (const [index, source] of problem.sources.entries()) {
    if (sizes.length > 0)
      fill(
        index,
        sizes.map(() => 0),
        0,
        (source as Source).room,
      );
  }
  return { list, complete };
}
