/** Stronger wind on the frames near the ends of a house, as far as a load basis gives it. */
import { asceEndWind } from './asce-end.ts';
import { enEndWind } from './en-end.ts';
import type { EndWind, WindInput, WindShape } from './wind-case.ts';

/**
 * Wind cases in the end zones, beside those of `windActions` for every frame. Net pressures in Pa at the same level.
 * Where the standard gives no end zones for a shape, there are no cases and `none` says so.
 */
export function endWind(input: WindInput, shape: WindShape): EndWind {
  return input.basis === 'eurocode' ? enEndWind(input, shape) : asceEndWind(input, shape);
}
