import { asceWindActions } from './asce-wind.ts';
import { enWindActions } from './en-wind.ts';
import type { WindActions, WindInput, WindShape } from './wind-case.ts';

/**
 * Wind cases for one shelter standing alone, by the published basis of the site. Net pressures in Pa at
 * the level the basis' own combinations expect: strength level (300 or 700 years) for ASCE 7, whose
 * allowable-stress combinations take 0.6 of it; characteristic (50 years) for EN.
 * Throws a RangeError for a shape or gust that is not above zero.
 */
export function windActions(input: WindInput, shape: WindShape): WindActions {
  if (!(input.gust > 0 && input.gustReturnPeriod > 0 && input.topography > 0)) {
    throw new RangeError('wind needs a gust, return period and topographic factor above zero');
  }
  return input.basis === 'eurocode' ? enWindActions(input, shape) : asceWindActions(input, shape);
}
