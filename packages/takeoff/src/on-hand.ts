/** What the yard blocks say the grower already has, put as the cutting and the counting want it, and what is left of it. */
import type { OnHand } from '@tautline/shelter';
import type { Demand } from './cutting/problem.ts';
import type { MaterialOptions, Materials } from './materials.ts';

type Hands = Required<Pick<MaterialOptions, 'onHand' | 'piecesOnHand'>>;

/** Lengths and pieces on hand by item. What is said without a length counts as pieces. */
export function stockOnHand(have: readonly OnHand[]): Hands {
  const onHand = new Map<string, Demand[]>();
  const piecesOnHand = new Map<string, number>();
  for (const { item, count, length } of have) {
    if (length === undefined) piecesOnHand.set(item, (piecesOnHand.get(item) ?? 0) + count);
    else onHand.set(item, [...(onHand.get(item) ?? []), { length, count }]);
  }
  return { onHand, piecesOnHand };
}

/** What remains of an item once everything is cut and taken. */
export interface Left {
  readonly item: string;
  /** Lengths that nothing was cut from, the longest first. */
  readonly untouched: readonly Demand[];
  /** Pieces that nobody needs. */
  readonly pieces: number;
  /** Ends of bars, on hand or bought, long enough to keep, the longest first. */
  readonly offcuts: readonly Demand[];
  /** Said without a length, of an item that is cut from lengths: nothing could be cut from these. */
  readonly unsaidLength: number;
}

/** Shortest end worth keeping, m: a stub or a brace comes out of it (common practice, no source). */
const worthKeeping = 0.6;
/** Lengths are counted in tenths of a millimetre when they are cut. */
const sameLength = 2e-4;

/** What is left by item, in order of their names; items of which nothing is left are not in it. */
export function leftOnHand(materials: Materials, { onHand, piecesOnHand }: Hands): readonly Left[] {
  const items = new Set([
    ...onHand.keys(),
    ...piecesOnHand.keys(),
    ...materials.cutList.map(({ item }) => item.id),
  ]);
  return [...items]
    .sort()
    .map((item): Left => {
      const lines = materials.lines.filter((line) => line.item?.id === item);
      const bars = lines.flatMap((line) => line.cuts?.bars ?? []);
      const untouched = byLength(onHand.get(item) ?? []).map(({ length, count }) => ({
        length,
        count:
          count -
          bars
            .filter((bar) => bar.onHand && Math.abs(bar.length - length) < sameLength)
            .reduce((sum, bar) => sum + bar.count, 0),
      }));
      const pieces = piecesOnHand.get(item) ?? 0;
      const cut = lines.some((line) => line.cuts);
      const taken = lines.reduce((sum, line) => sum + (line.fromHand ?? 0), 0);
      return {
        item,
        untouched: untouched.filter(({ count }) => count > 0),
        pieces: cut ? 0 : pieces - taken,
        offcuts: byLength(bars.map((bar) => ({ length: bar.offcut, count: bar.count }))).filter(
          ({ length }) => length >= worthKeeping,
        ),
        unsaidLength: cut ? pieces : 0,
      };
    })
    .filter(
      ({ untouched, pieces, offcuts, unsaidLength }) =>
        untouched.length + offcuts.length + pieces + unsaidLength > 0,
    );
}

function byLength(lengths: readonly Demand[]): readonly Demand[] {
  const counts: { length: number; count: number }[] = [];
  for (const { length, count } of lengths) {
    const known = counts.find((one) => Math.abs(one.length - length) < sameLength);
    if (known) known.count += count;
    else counts.push({ length, count });
  }
  return counts.sort((a, b) => b.length - a.length);
}
