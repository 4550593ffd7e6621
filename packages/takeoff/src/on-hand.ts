/** What the yard blocks say the grower already has, put as the cutting and the counting want it. */
import type { OnHand } from '@tautline/shelter';
import type { Demand } from './cutting/problem.ts';
import type { MaterialOptions } from './materials.ts';

/** Lengths and pieces on hand by item. What is said without a length counts as pieces. */
export function stockOnHand(
  have: readonly OnHand[],
): Required<Pick<MaterialOptions, 'onHand' | 'piecesOnHand'>> {
  const onHand = new Map<string, Demand[]>();
  const piecesOnHand = new Map<string, number>();
  for (const { item, count, length } of have) {
    if (length === undefined) piecesOnHand.set(item, (piecesOnHand.get(item) ?? 0) + count);
    else onHand.set(item, [...(onHand.get(item) ?? []), { length, count }]);
  }
  return { onHand, piecesOnHand };
}
