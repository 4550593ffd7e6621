/**
 * Cutting by hand's rule: longest piece first, into the first bar it fits. At once, and good enough
 * while typing; the exact method never does worse because it starts from here.
 */
import { simpleBound } from './bound.ts';
import {
  type CutPlan,
  type CutRequest,
  costOf,
  type Pattern,
  type Problem,
  planOf,
  problemOf,
  type Source,
  type Use,
} from './problem.ts';

/** More bars of one length than this are not looked at: no yard of a grower holds them. */
const MOST_BARS = 10_000;

interface OpenBar {
  source: number;
  left: number;
  readonly pieces: number[];
}

/** Bars with their cuts, and how many pieces of each size found no bar. */
export interface QuickCut {
  readonly uses: readonly Use[];
  readonly missing: readonly number[];
}

/** First-fit decreasing. `open` are the bars to fill first, `fresh` the sources to open new ones from. */
function firstFit(
  problem: Problem,
  open: readonly OpenBar[],
  fresh: readonly number[],
): { readonly bars: readonly OpenBar[]; readonly missing: readonly number[] } {
  const bars = [...open];
  const missing = problem.sizes.map(() => 0);
  for (const [index, size] of problem.sizes.entries()) {
    // What was too short for one piece of a size stays too short for the next.
    let at = 0;
    for (let n = problem.counts[index] ?? 0; n > 0; n -= 1) {
      while (at < bars.length && (bars[at] as OpenBar).left < size) at += 1;
      let bar = bars[at];
      if (!bar) {
        const source = fresh.find((one) => (problem.sources[one] as Source).room >= size);
        if (source === undefined) {
          missing[index] = n;
          break;
        }
        bar = empty(problem, source);
        bars.push(bar);
      }
      bar.left -= size;
      bar.pieces[index] = (bar.pieces[index] ?? 0) + 1;
    }
  }
  return { bars: bars.filter((one) => one.pieces.some((n) => n > 0)), missing };
}

function empty(problem: Problem, source: number): OpenBar {
  return {
    source,
    left: (problem.sources[source] as Source).room,
    pieces: problem.sizes.map(() => 0),
  };
}

/** Moves what was cut from a bought bar to the cheapest bar that holds it. */
function shrink(problem: Problem, bar: OpenBar): OpenBar {
  const own = problem.sources[bar.source] as Source;
  if (own.available !== Number.POSITIVE_INFINITY) return bar;
  const used = own.room - bar.left;
  let best = bar.source;
  for (const [index, source] of problem.sources.entries()) {
    const bought = source.available === Number.POSITIVE_INFINITY;
    if (bought && source.room >= used && source.cost < (problem.sources[best] as Source).cost) best = index;
  }
  return { source: best, left: (problem.sources[best] as Source).room - used, pieces: bar.pieces };
}

/** The best of several first-fit plans: with and without the bars on hand, for every length sold. */
export function quickCut(problem: Problem): QuickCut {
  const bought = (source: Source): boolean => source.available === Number.POSITIVE_INFINITY;
  const buy = problem.sources.flatMap((source, index) => (bought(source) ? [index] : []));
  const inHand = problem.sources.flatMap((source, index) =>
    bought(source) ? [] : Array<number>(Math.min(source.available, MOST_BARS)).fill(index),
  );
  // With nothing on hand, or bars of one length only, some of the three ways are the same.
  const waysToBegin = [[], inHand, [...inHand].reverse()].slice(0, 1 + new Set(inHand).size);
  const plans: QuickCut[] = [];
  for (const first of buy.length > 0 ? buy : [undefined]) {
    // The wanted length first; a longer one only for what does not fit it.
    const fresh = first === undefined ? [] : [first, ...buy.filter((other) => other < first).reverse()];
    for (const held of waysToBegin) {
      const open = held.map((source) => empty(problem, source));
      const { bars, missing } = firstFit(problem, open, fresh);
      plans.push({ uses: usesOf(bars.map((bar) => shrink(problem, bar))), missing });
    }
  }
  const short = (plan: QuickCut): number => plan.missing.reduce((sum, n) => sum + n, 0);
  return plans.reduce((best, one) => {
    const fewer = short(one) - short(best);
    return fewer < 0 || (fewer === 0 && costOf(problem, one.uses) < costOf(problem, best.uses)) ? one : best;
  });
}

function usesOf(bars: readonly OpenBar[]): readonly Use[] {
  const grouped = new Map<string, { pattern: Pattern; times: number }>();
  for (const { source, pieces } of bars) {
    const key = `${source}/${pieces.join()}`;
    const use = grouped.get(key) ?? { pattern: { source, pieces }, times: 0 };
    use.times += 1;
    grouped.set(key, use);
  }
  return [...grouped.values()];
}

/**
 * A cutting plan by first-fit decreasing, with a bound. Pieces longer than any bar come back in
 * `impossible`. Throws RangeError as `problemOf` does.
 */
export function cutStockQuick(request: CutRequest): CutPlan {
  const problem = problemOf(request);
  const { uses, missing } = quickCut(problem);
  return planOf(problem, { uses, missing, bound: simpleBound(problem), method: 'quick' });
}
