/** What a line costs, from the price points of its item. */
import type { PricePoint } from '@tautline/shelter';
import type { CutPlan } from './cutting/problem.ts';
import type { TakeoffLine } from './line.ts';

/** Prices by `priceKey`; they go before the prices an item brings itself. */
export type PriceList = ReadonlyMap<string, readonly PricePoint[]>;

/** The name a price list knows a line by: its item, or a word made from its title (`wire-rope-clips`). */
export const priceKey = (line: TakeoffLine): string => line.item?.id ?? line.id.replace(/^.*\//, '');

export function pricesOf(line: TakeoffLine, list: PriceList | undefined): readonly PricePoint[] {
  const listed = list?.get(priceKey(line));
  return listed && listed.length > 0 ? listed : (line.item?.prices ?? []);
}

const SAME_LENGTH = 5e-4;

/** The point for this very size, or else the one for the nearest size, to be taken in proportion. */
function nearest(
  points: readonly PricePoint[],
  unit: PricePoint['per']['unit'],
  value: number,
): PricePoint | undefined {
  return points
    .filter((point) => point.per.unit === unit && point.per.value > 0)
    .reduce<PricePoint | undefined>(
      (best, point) =>
        !best || Math.abs(point.per.value - value) < Math.abs(best.per.value - value) ? point : best,
      undefined,
    );
}

/** The price of `value` of this unit, in proportion to the nearest price point; undefined without one. */
export function priceFor(
  points: readonly PricePoint[],
  unit: PricePoint['per']['unit'],
  value: number,
): number | undefined {
  const point = nearest(points, unit, value);
  return point && (point.amount * value) / point.per.value;
}

/** Price of one bar or roll of a stock length, m; `width` for rolls and sheets priced by area. */
export function stockPrice(
  points: readonly PricePoint[],
  length: number,
  width?: number,
): number | undefined {
  const exact = points.find(
    (point) => point.per.unit === 'length' && Math.abs(point.per.value - length) < SAME_LENGTH,
  );
  return (
    exact?.amount ??
    priceFor(points, 'piece', 1) ??
    (width === undefined ? undefined : priceFor(points, 'area', length * width)) ??
    priceFor(points, 'length', length)
  );
}

/** Whole bags, packs, rolls or cans that hold as much, never one more for a crumb of rounding. */
export const wholePacks = (total: number, pack: number): number => Math.ceil(total / pack - 1e-9);

/** Cost of a line; undefined when a price it needs is missing. */
export function lineCost(
  line: TakeoffLine,
  points: readonly PricePoint[],
  plan?: CutPlan,
): number | undefined {
  if (plan) {
    if (plan.impossible.length > 0) return undefined;
    return plan.bought.reduce<number | undefined>((sum, { length, count }) => {
      const one = stockPrice(points, length, line.width);
      return sum === undefined || one === undefined ? undefined : sum + one * count;
    }, 0);
  }
  if (line.tied) return 0;
  if (line.pack !== undefined) {
    const packs = wholePacks(line.total, line.pack);
    const single = line.kind === 'count' ? line.pack : 1;
    const byPack = priceFor(points, 'pack', packs) ?? priceFor(points, 'piece', packs * single);
    if (byPack !== undefined) return byPack;
  }
  if (line.kind === 'count') return priceFor(points, 'piece', line.total);
  if (line.kind === 'volume') return priceFor(points, 'volume', line.total);
  if (line.kind === 'area') {
    const byArea = priceFor(points, 'area', line.total);
    return byArea ?? (line.width ? priceFor(points, 'length', line.total / line.width) : undefined);
  }
  if (line.kind === 'length') {
    const byLength = priceFor(points, 'length', line.total);
    const pieces = line.pieces?.reduce((sum, piece) => sum + piece.count, 0);
    return byLength ?? (pieces === undefined ? undefined : priceFor(points, 'piece', pieces));
  }
  return undefined;
}
