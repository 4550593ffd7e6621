/** How many times the ground must hold what it is asked for. */
import type { Duration } from '../resistance/duration.ts';

/** How long a load stays; the ground asks only whether it is that of a gust. */
export type Stay = Duration;

/**
 * Factor of safety of an uplift capacity that was worked out and not tested: 3, and 2 where the uplift is that of wind
 * (IBC 1810.3.3.1.5 and its exception). The ground is taken in the state it has then, so the factor need not cover
 * rain.
 */
export function upliftSafety(stay: Stay = 'permanent'): number {
  return stay === 'gust' ? 2 : 3;
}

/** Factor of safety of the method of Broms: from memory of FHWA-HI-97-013, 9.7.3; ASAE EP486 (DEC98) 3.4.2 has 2.5 to 3. */
export const LATERAL_SAFETY = 2.5;

/**
 * The same of a plate or log whose breakout is a theory of plates: 3, and 2.5 in gusts, so that what may be counted on
 * stays under the holding power that TM 5-5420-278-10 gives deadmen in loam. Own choice.
 */
export function plateSafety(stay: Stay = 'permanent'): number {
  return stay === 'gust' ? 2.5 : 3;
}

/** Source of the factors of uplift. */
export const UPLIFT_RULE = 'ibc2018:1810.3.3.1.5';

/** Share of a weight that may be set against lift: the 0.6 D of ASCE 7 2.4.1. */
export const WEIGHT_SHARE = 0.6;
