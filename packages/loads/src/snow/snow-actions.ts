/** Snow on arches, gables and single slopes: ASCE 7-16 chapter 7 and EN 1991-1-3. */
import { asceSnow } from './asce-snow.ts';
import { enSnow } from './en-snow.ts';
import type { SnowActions, SnowCase, SnowInput, SnowShape, SnowZone } from './snow-case.ts';

/** Snow cases, Pa on plan. No case when there is no ground snow. Throws a RangeError for span or rise of 0. */
export function snowActions(input: SnowInput, shape: SnowShape): SnowActions {
  if (!(shape.span > 0 && shape.rise > 0)) throw new RangeError('snow needs a span and rise above zero');
  if (input.groundSnow <= 0) return { cases: [], notCovered: [] };
  const notCovered = ['Snow that slides off and piles up against the sides or off a higher roof.'];
  return input.basis === 'eurocode' ? enSnow(input, shape, notCovered) : asceSnow(input, shape, notCovered);
}

/** A snow case with its load as a function of the place on plan. */
export interface PlacedSnowCase extends SnowCase {
  /** Pa on plan at a share 0..1 of the span. */
  readonly pressureAt: (share: number) => number;
}

/** `snowActions` with each case's load as a function of place; both inputs may carry more facts than needed. */
export function snowCases(
  input: SnowInput,
  shape: SnowShape,
): { readonly cases: readonly PlacedSnowCase[]; readonly notCovered: readonly string[] } {
  const actions = snowActions(input, shape);
  return {
    cases: actions.cases.map((snow) => ({ ...snow, pressureAt: (share) => pressureIn(snow.zones, share) })),
    notCovered: actions.notCovered,
  };
}

function pressureIn(zones: readonly SnowZone[], share: number): number {
  const zone = zones.find(({ from, to }) => share >= from && share <= to);
  if (zone === undefined) return 0;
  const along = zone.to > zone.from ? (share - zone.from) / (zone.to - zone.from) : 0;
  return zone.loadFrom + (zone.loadTo - zone.loadFrom) * along;
}
