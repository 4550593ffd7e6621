/** Snow on arches, gables and single slopes: ASCE 7-16 chapter 7 and EN 1991-1-3. */
import { asceSnow } from './asce-snow.ts';
import { enSnow } from './en-snow.ts';
import type { SnowActions, SnowInput, SnowShape } from './snow-case.ts';

/** Snow cases, Pa on plan. No case when there is no ground snow. Throws a RangeError for span or rise of 0. */
export function snowActions(input: SnowInput, shape: SnowShape): SnowActions {
  if (!(shape.span > 0 && shape.rise > 0)) throw new RangeError('snow needs a span and rise above zero');
  if (input.groundSnow <= 0) return { cases: [], notCovered: [] };
  const notCovered = ['Snow that slides off and piles up against the sides or off a higher roof.'];
  return input.basis === 'eurocode' ? enSnow(input, shape, notCovered) : asceSnow(input, shape, notCovered);
}
