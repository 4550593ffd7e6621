/** What no cutting plan can go below, without any solver. */
import type { Problem, Source } from './problem.ts';

function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b);
}

/** Every plan costs a whole multiple of this. */
export function costStep(problem: Problem): number {
  return problem.sources.reduce((step, source) => gcd(step, source.cost), 0) || 1;
}

/** The next cost at or above a bound that a plan can have. */
export function roundBound(problem: Problem, bound: number): number {
  const step = costStep(problem);
  return Math.ceil(bound / step - 1e-6) * step;
}

/**
 * Bars of one size needed at least: bound L2 of Martello and Toth, Knapsack Problems (1990), 8.3.2
 * (from memory). Pieces over half a bar each need a bar of their own; those of at least `least` share
 * what room is left beside them.
 */
function barsNeeded(sizes: readonly number[], counts: readonly number[], room: number): number {
  let best = 0;
  for (const least of [0, ...sizes.filter((size) => 2 * size <= room)]) {
    let alone = 0;
    let large = 0;
    let largeSum = 0;
    let smallSum = 0;
    for (const [index, size] of sizes.entries()) {
      const count = counts[index] ?? 0;
      if (size > room - least) alone += count;
      else if (2 * size > room) {
        large += count;
        largeSum += size * count;
      } else if (size >= least) smallSum += size * count;
    }
    const beside = large * room - largeSum;
    best = Math.max(best, alone + large + Math.max(0, Math.ceil((smallSum - beside) / room)));
  }
  return best;
}

/**
 * Least cost in whole units: every piece takes room, and no room is cheaper than that of the cheapest
 * bar for its length; with a single bar length, the sharper count of bars.
 */
export function simpleBound(problem: Problem): number {
  const buy = problem.sources.filter((source) => source.available === Number.POSITIVE_INFINITY);
  const inHand = problem.sources.filter((source) => source.available !== Number.POSITIVE_INFINITY);
  const needed = problem.sizes.reduce((sum, size, index) => sum + size * (problem.counts[index] ?? 0), 0);
  const left = needed - inHand.reduce((sum, source) => sum + source.room * source.available, 0);
  const [only] = buy;
  if (left <= 0 || !only) return 0;
  if (buy.length === 1 && inHand.length === 0) {
    return barsNeeded(problem.sizes, problem.counts, only.room) * only.cost;
  }
  const rate = Math.min(...buy.map((source: Source) => source.cost / source.room));
  return roundBound(problem, left * rate);
}
