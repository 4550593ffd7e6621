/** Sideways resistance of stubs, driven legs and posts. */
import { GRAVITY } from '../rain.ts';
import { given } from '../step.ts';
import { type GroundResult, groundResult, needPositive } from './ground-result.ts';
import { isGranular, passiveCoefficient, type Soil, type SoilClass, soilOf } from './soil.ts';

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
  readonly waterlogged?: boolean;
}

export interface LateralResult extends GroundResult {
  /** Greatest moment in the stub when the soil or the stub gives, N·m. */
  readonly moment: number;
  readonly givesWay: 'soil' | 'stub';
}

/**
 * Ultimate sideways load of a stub by Broms (1964), short and long, N; safety factor 2.5.
 * Clay: 9 c_u d below 1.5 d. Sand: 3 K_p γ z d over the whole depth with the counter force at the toe, which is
 * up to half as much again as a stake turning about a point would find; his tests held more than either.
 */
export function lateralCapacity(input: LateralInput): LateralResult {
  needPositive({ diameter: input.diameter, depth: input.depth });
  const soil = soilOf(input.soil, input.waterlogged);
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
        given('d', 'diameter', input.diameter, 'thickness'),
        given('L', 'depth in the ground', input.depth, 'length'),
        given('e', 'height of the push', input.height, 'length'),
        given('γ/g', 'density of the soil', soil.unitWeight / GRAVITY, 'density'),
        granular
          ? given('K_p', 'passive coefficient', passiveCoefficient(soil.friction), 'ratio')
          : given('c_u', 'shear strength', soil.shear, 'stress'),
      ],
      value: load,
      source: granular ? 'broms:1964b' : 'broms:1964a',
    },
    2.5,
    input.soil,
  );
  return {
    ...result,
    moment: yields ? input.momentCapacity! : short.moment,
    givesWay: yields ? 'stub' : 'soil',
  };
}

function formulaOf(granular: boolean, head: LateralInput['head'], yields: boolean): string {
  if (yields)
    return granular ? 'H (e + 0.54 √(H/(γ d K_p))) = M_y' : 'H (e + 1.5 d + 0.5 f) = M_y, f = H/(9 c_u d)';
  if (granular) return head === 'free' ? 'H = γ d L³ K_p / (2 (e + L))' : 'H = 1.5 γ d L² K_p';
  return head === 'free' ? 'H (e + 1.5 d + 0.5 f) = 2.25 c_u d (L - 1.5 d - f)²' : 'H = 9 c_u d (L - 1.5 d)';
}

function shortPile(soil: Soil, input: LateralInput): { load: number; moment: number } {
  const { diameter: d, depth: length, height: e } = input;
  if (isGranular(soil)) {
    const k = passiveCoefficient(soil.friction) * soil.unitWeight * d;
    if (input.head === 'fixed') {
      const load = 1.5 * k * length ** 2;
      return { load, moment: (2 / 3) * load * length };
    }
    const load = (0.5 * k * length ** 3) / (e + length);
    return { load, moment: load * (e + 0.544 * Math.sqrt(load / k)) };
  }
  const reach = length - 1.5 * d;
  if (reach <= 0) return { load: 0, moment: 0 };
  const k = 9 * soil.shear * d;
  if (input.head === 'fixed') {
    const load = k * reach;
    return { load, moment: 0.5 * load * (length + 1.5 * d) };
  }
  // 9 f (e + 1.5 d + f/2) = 2.25 (reach - f)²: a quadratic in f.
  const a = 4.5 - 2.25;
  const b = 9 * (e + 1.5 * d) + 4.5 * reach;
  const c = -2.25 * reach * reach;
  const f = (-b + Math.sqrt(b * b - 4 * a * c)) / (2 * a);
  return { load: k * f, moment: k * f * (e + 1.5 * d + 0.5 * f) };
}

function longPile(soil: Soil, input: LateralInput, yieldMoment: number): number {
  const { diameter: d, height: e } = input;
  const available = input.head === 'fixed' ? 2 * yieldMoment : yieldMoment;
  const arm = (load: number): number =>
    isGranular(soil)
      ? e + 0.544 * Math.sqrt(load / (passiveCoefficient(soil.friction) * soil.unitWeight * d))
      : e + 1.5 * d + (0.5 * load) / (9 * soil.shear * d);
  let low = 0;
  let high = shortPile(soil, input).load;
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2;
    if (middle * arm(middle) > available) high = middle;
    else low = middle;
  }
  return low;
}

export interface EmbedmentInput {
  readonly soil: SoilClass;
  /** Width or diameter of post or concrete, m. */
  readonly width: number;
  readonly depth: number;
  /** Height of the push over the ground, m. */
  readonly height: number;
  /** Held at ground level by a slab or floor. */
  readonly constrained: boolean;
}

/**
 * Allowable sideways load on a post in earth by IBC 1807.3 (the older ASABE EP486 formula), N.
 * Free: P = S_1 b d² / (2.34 (d + 1.09 h)), S_1 at a third of the depth; held at grade:
 * P = S_3 b d² / (4.25 h). The safety is in the allowable pressures, so the factor is 1.
 */
export function postEmbedmentLateral(input: EmbedmentInput): GroundResult {
  needPositive({ width: input.width, depth: input.depth, height: input.height });
  const soil = soilOf(input.soil);
  const d = Math.min(3.658, input.depth);
  const pressure = input.constrained ? soil.lateral * d : (soil.lateral * d) / 3;
  const value = input.constrained
    ? (pressure * input.width * d * d) / (4.25 * input.height)
    : (pressure * input.width * d * d) / (2.34 * (d + 1.09 * input.height));
  return groundResult(
    {
      symbol: 'P',
      meaning: 'sideways load the post may take',
      formula: input.constrained
        ? 'd = √(4.25 P h / (S_3 b))'
        : 'd = A/2 (1 + √(1 + 4.36 h/A)), A = 2.34 P/(S_1 b)',
      inputs: [
        given(input.constrained ? 'S_3' : 'S_1', 'allowable lateral pressure', pressure, 'stress'),
        given('b', 'width', input.width, 'length'),
        given('d', 'depth', d, 'length'),
        given('h', 'height of the push', input.height, 'length'),
      ],
      value,
      source: 'ibc2018:1807.3',
    },
    1,
    input.soil,
  );
}
