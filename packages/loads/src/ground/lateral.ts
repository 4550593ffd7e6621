/** Sideways resistance of stubs, driven legs and posts by Broms. */
import { GRAVITY } from '../rain.ts';
import { given } from '../step.ts';
import { type GroundResult, groundResult, needPositive } from './ground-result.ts';
import { LATERAL_SAFETY } from './safety.ts';
import { isGranular, passiveCoefficient, type Soil, type SoilClass, soilOf, stateSteps } from './soil.ts';

export interface LateralInput {
  readonly soil: SoilClass;
  readonly diameter: number;
  /** Depth in the ground, m. */
  readonly depth: number;
  /** Height of the push over the ground, m; 0 for a head held against turning. */
  readonly height: number;
  readonly head: 'free' | 'fixed';
  /** Moment at which the stub itself yields, N·m; without it only the soil is checked. */
  readonly momentCapacity?: number;
  readonly waterlogged?: boolean | undefined;
  readonly backfilled?: boolean | undefined;
}

export interface LateralResult extends GroundResult {
  /** Greatest moment in the stub when the soil or the stub gives, N·m. */
  readonly moment: number;
  readonly givesWay: 'soil' | 'stub';
}

/**
 * Ultimate sideways load of a stub by Broms (1964), short and long, N; safety factor 2.5.
 * Clay: 9 c_u d below 1.5 d; a stub so wide that 1.5 d takes more than it gives counts with the width that gives most,
 * for it holds no less than a slimmer one in its place. Sand: 3 K_p γ z d over the whole depth with the counter force at the toe, which is
 * up to half as much again as a stake turning about a point would find; his tests held more than either.
 */
export function lateralCapacity(input: LateralInput): LateralResult {
  needPositive({ diameter: input.diameter, depth: input.depth });
  const soil = soilOf(input.soil, input);
  const short = shortPile(soil, input);
  const yields = input.momentCapacity !== undefined && short.moment > input.momentCapacity;
  const load = yields ? longPile(soil, input, input.momentCapacity!) : short.load;
  const granular = isGranular(soil);
  const result = groundResult(
    {
      symbol: 'H_u',
      meaning: yields ? 'push at which the stub bends over' : 'push at which the stub turns in the soil',
      formula: formulaOf(granular, input.head, yields),
      inputs: [
        given('d', 'width that counts', short.width, 'thickness'),
        given('L', 'depth in the ground', input.depth, 'length'),
        given('e', 'height of the push', input.height, 'length'),
        given('ρ', 'density of the soil', soil.unitWeight / GRAVITY, 'density'),
        given('g', 'gravity, N/kg', GRAVITY, 'ratio'),
        ...(yields ? [given('M_y', 'bending the stub takes', input.momentCapacity!, 'moment')] : []),
        granular
          ? given('K_p', 'passive coefficient', passiveCoefficient(soil.friction), 'ratio')
          : given('c_u', 'shear strength', soil.shear, 'stress'),
      ],
      value: load,
      source: granular ? 'broms:1964b' : 'broms:1964a',
    },
    LATERAL_SAFETY,
    input.soil,
    stateSteps(input.soil, input),
  );
  return {
    ...result,
    moment: yields ? input.momentCapacity! : short.moment,
    givesWay: yields ? 'stub' : 'soil',
  };
}

function formulaOf(granular: boolean, head: LateralInput['head'], yields: boolean): string {
  if (yields)
    return granular
      ? 'H_u (e + 0.54 √(H_u / (ρ g d K_p))) = M_y'
      : 'H_u (e + 1.5 d + 0.5 f) = M_y, f = H_u / (9 c_u d)';
  if (granular) return head === 'free' ? 'H = ρ g d L³ K_p / (2 (e + L))' : 'H = 1.5 ρ g d L² K_p';
  return head === 'free'
    ? 'H_u (e + 1.5 d + 0.5 f) = 2.25 c_u d (L - 1.5 d - f)², f = H_u / (9 c_u d)'
    : 'H = 9 c_u d (L - 1.5 d)';
}

interface Short {
  readonly load: number;
  readonly moment: number;
  /** Width that counts, m. */
  readonly width: number;
}

function shortPile(soil: Soil, input: LateralInput): Short {
  const { depth: length, height: e } = input;
  const d = isGranular(soil) ? input.diameter : countedWidth(input);
  if (isGranular(soil)) {
    const k = passiveCoefficient(soil.friction) * soil.unitWeight * d;
    if (input.head === 'fixed') {
      const load = 1.5 * k * length ** 2;
      return { load, moment: (2 / 3) * load * length, width: d };
    }
    const load = (0.5 * k * length ** 3) / (e + length);
    return { load, moment: load * (e + 0.544 * Math.sqrt(load / k)), width: d };
  }
  const k = 9 * soil.shear * d;
  if (input.head === 'fixed') {
    const load = k * (length - 1.5 * d);
    return { load, moment: 0.5 * load * (length + 1.5 * d), width: d };
  }
  const f = sheared(length, d, e);
  return { load: k * f, moment: k * f * (e + 1.5 * d + 0.5 * f), width: d };
}

/** Depth below 1.5 d over which the clay in front of a short stub takes the push, m. */
function sheared(length: number, d: number, e: number): number {
  const reach = length - 1.5 * d;
  // 9 f (e + 1.5 d + f/2) = 2.25 (reach - f)²: a quadratic in f.
  const a = 4.5 - 2.25;
  const b = 9 * (e + 1.5 * d) + 4.5 * reach;
  const c = -2.25 * reach * reach;
  return (-b + Math.sqrt(b * b - 4 * a * c)) / (2 * a);
}

/** The width up to that of the stub at which d f is largest in clay, m. The product has one peak. */
function countedWidth({ diameter, depth: length, height: e, head }: LateralInput): number {
  if (head === 'fixed') return Math.min(diameter, length / 3);
  let low = 0;
  let high = Math.min(diameter, length / 1.5);
  const product = (d: number): number => d * sheared(length, d, e);
  for (let pass = 0; pass < 80; pass++) {
    const [left, right] = [low + (high - low) / 3, high - (high - low) / 3];
    if (product(left) < product(right)) low = left;
    else high = right;
  }
  const best = (low + high) / 2;
  return product(Math.min(diameter, length / 1.5)) >= product(best) ? Math.min(diameter, length / 1.5) : best;
}

function longPile(soil: Soil, input: LateralInput, yieldMoment: number): number {
  const available = input.head === 'fixed' ? 2 * yieldMoment : yieldMoment;
  return pushOfMoment(soil, input, available, 1, shortPile(soil, input).load, Number.POSITIVE_INFINITY);
}

/** Width of a stub in clay beyond which the soil it leaves out above 1.5 d bends it more, m: d at which 1.5 d + f/2 is least. */
const leastArm = (push: number, shear: number): number => Math.sqrt(push / (27 * shear));

/**
 * Push at which the stub has a moment (N·m) where the soil, with its strength over `reduction`, has taken the shear;
 * at most `most` (N). A stub wider than `widest` (m) counts with that width; by itself the one that is bent least, for
 * a wide stub is bent no more than a slimmer one in its place.
 */
export function pushOfMoment(
  soil: Soil,
  { diameter, height: e }: Pick<LateralInput, 'diameter' | 'height'>,
  moment: number,
  reduction: number,
  most: number,
  widest?: number,
): number {
  /** Below the ground to where the shear is taken and the bending is largest, under the push, m. */
  const arm = (load: number): number => {
    if (isGranular(soil)) {
      const k = passiveCoefficient(soil.friction) * soil.unitWeight * diameter;
      return e + 0.544 * Math.sqrt((reduction * load) / k);
    }
    const d = Math.min(diameter, widest ?? leastArm(reduction * load, soil.shear));
    return d > 0 ? e + 1.5 * d + (0.5 * reduction * load) / (9 * soil.shear * d) : e;
  };
  if (most * arm(most) <= moment) return most;
  let low = 0;
  let high = most;
  for (let pass = 0; pass < 80; pass++) {
    const middle = (low + high) / 2;
    if (middle * arm(middle) > moment) high = middle;
    else low = middle;
  }
  return low;
}
