/**
 * The cutting question in whole numbers. Lengths are counted in tenths of a millimetre, pieces and saw
 * cuts rounded up and bars rounded down, so that a plan that fits on paper fits on the bench; whole
 * numbers also make every comparison and every proof exact.
 */

export interface Demand {
  /** m */
  readonly length: number;
  readonly count: number;
}

export interface Stock {
  /** Length sold, m. */
  readonly length: number;
  /** Price of one bar; leave out where not known. */
  readonly price?: number;
}

export interface CutRequest {
  readonly demand: readonly Demand[];
  readonly stock: readonly Stock[];
  /** Width of the saw cut, m. */
  readonly kerf: number;
  /** Bars the grower already has: free, but no more than there are. */
  readonly onHand?: readonly Demand[];
}

/** Bars of one kind cut alike. */
export interface Bar {
  /** Length of the bar, m. */
  readonly length: number;
  readonly onHand: boolean;
  /** Pieces out of one bar, longest first, m. */
  readonly cuts: readonly number[];
  /** What is left of one bar, m. */
  readonly offcut: number;
  readonly count: number;
}

export interface CutPlan {
  readonly bars: readonly Bar[];
  readonly bought: readonly Demand[];
  /** What was made least: the price of what is bought, or its length where a price is missing. */
  readonly least: 'price' | 'length';
  /** Its value in the plan, in money or m. */
  readonly total: number;
  /** No plan at all can do with less than this. */
  readonly bound: number;
  /** True only when `total` is proven to be the least. */
  readonly optimal: boolean;
  readonly method: 'exact' | 'quick';
  /** Length bought or taken from hand that ends in no piece, as a share; 0 when nothing is cut. */
  readonly waste: number;
  /** Pieces that no bar can give: longer than any, or left when the bars on hand ran out. */
  readonly impossible: readonly Demand[];
  /** What kept the exact method from a proof, in plain words. */
  readonly note?: string;
}

/** A kind of bar to cut from. `cost` in whole units, 0 for bars on hand. */
export interface Source {
  readonly length: number;
  /** Room for pieces that each bring one saw cut: the last piece of a full bar needs none. */
  readonly room: number;
  readonly cost: number;
  /** How many there are; Infinity for bars that can be bought. */
  readonly available: number;
}

export interface Problem {
  /** Size of each different piece with its saw cut, longest first, and how many are needed. */
  readonly sizes: readonly number[];
  readonly counts: readonly number[];
  readonly kerf: number;
  /** Bars on hand first, then bars to buy, each by falling length. */
  readonly sources: readonly Source[];
  readonly least: 'price' | 'length';
  readonly impossible: readonly Demand[];
}

const PER_METRE = 10_000;
const PER_COIN = 10_000;
/** A value within this share of a whole unit is that unit: 3.048 m is 30480 tenths, not 30481. */
const SLACK = 1e-5;

const up = (length: number): number => Math.ceil(length * PER_METRE - SLACK);
const down = (length: number): number => Math.floor(length * PER_METRE + SLACK);

function positive(value: number, what: string): void {
  if (!Number.isFinite(value) || value <= 0)
    throw new RangeError(`${what} must be more than zero, not ${value}`);
}

/**
 * Throws RangeError for lengths that are not positive, counts that are not whole, a negative saw cut or
 * price, or nothing to cut from.
 */
export function problemOf(request: CutRequest): Problem {
  const { demand, stock, kerf, onHand = [] } = request;
  if (!Number.isFinite(kerf) || kerf < 0) throw new RangeError(`a saw cut cannot be ${kerf}`);
  for (const { length, count } of [...demand, ...onHand]) {
    positive(length, 'a length');
    if (!Number.isInteger(count) || count < 0) throw new RangeError(`${count} is no number of pieces`);
  }
  for (const { length, price } of stock) {
    positive(length, 'a stock length');
    if (price !== undefined && !(Number.isFinite(price) && price >= 0)) {
      throw new RangeError(`${price} is no price`);
    }
  }
  const least = stock.length > 0 && stock.every((one) => one.price !== undefined) ? 'price' : 'length';
  const cut = up(kerf);
  const toBuy = stock.map(({ length, price = 0 }) => ({
    length: down(length),
    room: down(length) + cut,
    cost: least === 'price' ? Math.round(price * PER_COIN) : down(length),
    available: Number.POSITIVE_INFINITY,
  }));
  const inHand = onHand
    .filter(({ count }) => count > 0)
    .map(({ length, count }) => ({
      length: down(length),
      room: down(length) + cut,
      cost: 0,
      available: count,
    }));
  const sources = [...mergeInHand(inHand), ...cheapestOfEach(toBuy)];
  const longest = Math.max(0, ...sources.map((source) => source.room));
  const merged = new Map<number, number>();
  const impossible: Demand[] = [];
  for (const piece of demand) {
    if (piece.count === 0) continue;
    const size = up(piece.length) + cut;
    if (size > longest) impossible.push(piece);
    else merged.set(size, (merged.get(size) ?? 0) + piece.count);
  }
  const sizes = [...merged.keys()].sort((a, b) => b - a);
  return { sizes, counts: sizes.map((size) => merged.get(size) ?? 0), kerf: cut, sources, least, impossible };
}

function mergeInHand(sources: readonly Source[]): readonly Source[] {
  const byLength = new Map<number, Source>();
  for (const source of sources) {
    const before = byLength.get(source.length);
    byLength.set(source.length, { ...source, available: source.available + (before?.available ?? 0) });
  }
  return [...byLength.values()].sort((a, b) => b.length - a.length);
}

/** One source a length, and none that is shorter and no cheaper than another. */
function cheapestOfEach(sources: readonly Source[]): readonly Source[] {
  const kept: Source[] = [];
  for (const source of [...sources].sort((a, b) => b.length - a.length || a.cost - b.cost)) {
    if (kept.every((longer) => source.length < longer.length && source.cost < longer.cost)) kept.push(source);
  }
  return kept;
}

/** One bar: which source, and how many of each size. */
export interface Pattern {
  readonly source: number;
  readonly pieces: readonly number[];
}

/** A pattern and how often it is cut. */
export interface Use {
  readonly pattern: Pattern;
  readonly times: number;
}

export const costOf = (problem: Problem, uses: readonly Use[]): number =>
  uses.reduce((sum, { pattern, times }) => sum + times * (problem.sources[pattern.source] as Source).cost, 0);

const inTotals = (problem: Problem, whole: number): number =>
  whole / (problem.least === 'price' ? PER_COIN : PER_METRE);

/** What a method found. Bound in whole units. */
export interface Found {
  readonly uses: readonly Use[];
  /** Pieces of each size that found no bar. */
  readonly missing: readonly number[];
  readonly bound: number;
  readonly method: 'exact' | 'quick';
  readonly note?: string;
}

/** The plan in metres and money. */
export function planOf(problem: Problem, found: Found): CutPlan {
  const { uses, bound, method, note } = found;
  const missing = found.missing.flatMap((count, index) =>
    count > 0 ? [{ length: ((problem.sizes[index] as number) - problem.kerf) / PER_METRE, count }] : [],
  );
  const cost = costOf(problem, uses);
  const bars = new Map<string, Bar>();
  let taken = 0;
  let inPieces = 0;
  for (const { pattern, times } of uses) {
    const source = problem.sources[pattern.source] as Source;
    const cuts = pattern.pieces.flatMap((n, index) =>
      Array<number>(n).fill((problem.sizes[index] as number) - problem.kerf),
    );
    const length = cuts.reduce((sum, one) => sum + one, 0);
    const sawn = length + problem.kerf * cuts.length;
    taken += source.length * times;
    inPieces += length * times;
    const onHand = source.available !== Number.POSITIVE_INFINITY;
    const key = `${onHand}/${source.length}/${cuts.join()}`;
    bars.set(key, {
      length: source.length / PER_METRE,
      onHand,
      cuts: cuts.map((one) => one / PER_METRE),
      offcut: Math.max(0, source.length - sawn) / PER_METRE,
      count: times + (bars.get(key)?.count ?? 0),
    });
  }
  const listed = [...bars.values()].sort(
    (a, b) =>
      Number(b.onHand) - Number(a.onHand) ||
      b.length - a.length ||
      (b.cuts[0] ?? 0) - (a.cuts[0] ?? 0) ||
      a.offcut - b.offcut ||
      b.cuts.join().localeCompare(a.cuts.join()),
  );
  const bought = new Map<number, number>();
  for (const bar of listed) {
    if (!bar.onHand) bought.set(bar.length, (bought.get(bar.length) ?? 0) + bar.count);
  }
  return {
    bars: listed,
    bought: [...bought].map(([length, count]) => ({ length, count })),
    least: problem.least,
    total: inTotals(problem, cost),
    bound: inTotals(problem, Math.min(bound, cost)),
    optimal: missing.length === 0 && cost <= bound,
    method,
    waste: taken === 0 ? 0 : 1 - inPieces / taken,
    impossible: [...problem.impossible, ...missing],
    ...(note === undefined ? {} : { note }),
  };
}
