/** What a stake may take sideways with the safety of the soil on the soil, and that of the stake on the stake. */
import type { Basis } from '../combinations.ts';
import { levelOf } from '../resistance/duration.ts';
import { given } from '../step.ts';
import { type GroundResult, groundAllowedAt } from './ground-result.ts';
import { type LateralInput, lateralCapacity } from './lateral.ts';
import { isGranular, passiveCoefficient, soilOf } from './soil.ts';

export interface StakeInput extends Omit<LateralInput, 'momentCapacity' | 'head'> {
  /** Bending the stake may have by the rules of its own material at the level of the basis, N·m. */
  readonly allowedMoment: number;
  readonly basis: Basis;
}

/**
 * Sideways load a stake with a free head may take, N. Either the soil decides, by Broms with its factor of safety of
 * 2.5, or the bending of the stake: then the push is that at which the stake has the bending its own rules allow,
 * where the soil with its strength over the same factor has taken the shear. The factor of the soil does not come
 * on top of that of the steel or wood. Throws a RangeError for a diameter, depth or moment not above zero.
 */
export function stakeLateral({ allowedMoment, basis, ...input }: StakeInput): GroundResult {
  if (!(allowedMoment > 0)) throw new RangeError('a stake needs a bending it may have above zero');
  const inSoil = lateralCapacity({ ...input, head: 'free' });
  const bySoil = groundAllowedAt(inSoil, basis);
  const level = levelOf(basis);
  const reduction = inSoil.safetyFactor / level;
  const soil = soilOf(input.soil, input.waterlogged);
  const { diameter: d, height: e } = input;
  const granular = isGranular(soil);
  /** Below the ground to where the shear is taken and the bending is largest, under the push, m. */
  const arm = (load: number): number =>
    granular
      ? e + 0.544 * Math.sqrt((reduction * load) / (passiveCoefficient(soil.friction) * soil.unitWeight * d))
      : e + 1.5 * d + (0.5 * reduction * load) / (9 * soil.shear * d);
  if (bySoil * arm(bySoil) <= allowedMoment) return inSoil;
  let low = 0;
  let high = bySoil;
  for (let pass = 0; pass < 60; pass++) {
    const middle = (low + high) / 2;
    if (middle * arm(middle) > allowedMoment) high = middle;
    else low = middle;
  }
  const source = granular ? 'broms:1964b' : 'broms:1964a';
  return {
    capacity: low,
    safetyFactor: 1,
    allowable: low / level,
    source,
    steps: [
      ...inSoil.steps,
      {
        symbol: 'H_s',
        meaning: 'push at which the stake has the bending it may have',
        formula: granular
          ? 'H (e + 0.54 √(n H/(γ d K_p))) = M_a'
          : 'H (e + 1.5 d + 0.5 f) = M_a, f = n H/(9 c_u d)',
        inputs: [
          given('M_a', 'bending the stake may have', allowedMoment, 'moment'),
          given('e', 'height of the push', e, 'length'),
          given('n', 'safety on the strength of the soil', reduction, 'ratio'),
        ],
        value: low,
        kind: 'force',
        source,
      },
    ],
  };
}
