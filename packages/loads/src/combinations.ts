/** Load combinations of ASCE 7-16 chapter 2 and EN 1990. */
import type { Combination } from './combination.ts';
import { allowable, strength } from './combinations-asce.ts';
import { eurocode } from './combinations-en.ts';

export type { Combination, Factors } from './combination.ts';

export type Basis = 'asce7-asd' | 'asce7-strength' | 'eurocode';

/** Each with other factors than those before it. */
function distinct(all: readonly Combination[]): Combination[] {
  const seen = new Set<string>();
  return all.filter(({ use, factors }) => {
    const said = JSON.stringify([use, factors]);
    const first = !seen.has(said);
    seen.add(said);
    return first;
  });
}

/**
 * All combinations of a basis. The locked-in bending of an elastic bow and pretension are permanent and
 * enter with 1: they are stresses of the geometry, not of a load that can grow.
 * @param lowHazard EN: reliability class RC1. ASCE: only in the in-use gust, since the strength-level gust
 *   already has the return period of its risk category
 */
export function combinations(basis: Basis, lowHazard: boolean): readonly Combination[] {
  const all =
    basis === 'eurocode'
      ? eurocode(lowHazard)
      : basis === 'asce7-asd'
        ? allowable(lowHazard)
        : strength(lowHazard);
  return distinct(all);
}
