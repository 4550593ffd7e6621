/** What a plate, log or screw holds down that lies in the ground. */
import { along } from '../interpolate.ts';
import { GRAVITY } from '../rain.ts';
import { given, type Step } from '../step.ts';
import { type GroundResult, groundResult, needPositive } from './ground-result.ts';
import { plateSafety, type Stay, UPLIFT_RULE } from './safety.ts';
import { isGranular, type Soil, type SoilClass, soilOf, stateSteps } from './soil.ts';

/** Breakout limits of Meyerhof and Adams (1968) by friction angle, degrees: shape factor m, critical depth H/B. */
const BREAKOUT_SHAPE = [
  [20, 0.05],
  [25, 0.1],
  [30, 0.15],
  [35, 0.25],
  [40, 0.35],
  [45, 0.5],
] as const;
const BREAKOUT_DEPTH = [
  [20, 2.5],
  [25, 3],
  [30, 4],
  [35, 5],
  [40, 7],
  [45, 9],
] as const;

/**
 * Breakout factor F_q of a plate in sand: 1 + ((1 + 2 m H/B) B/L + 1) (H/B) K_u tan φ, K_u = 0.95; for a
 * square or circle 1 + 2 (1 + m H/B)(H/B) K_u tan φ. H/B is held at its critical value.
 */
export function breakoutFactor(depthRatio: number, friction: number, aspect = 1): number {
  const angle = (friction * 180) / Math.PI;
  const ratio = Math.min(depthRatio, along(BREAKOUT_DEPTH, angle));
  return breakout(ratio, along(BREAKOUT_SHAPE, angle), 0.95 * Math.tan(friction), aspect);
}

/** The breakout formula itself, for given m and K_u tan φ. */
export function breakout(depthRatio: number, m: number, kTan: number, aspect: number): number {
  return 1 + ((1 + 2 * m * depthRatio) * aspect + 1) * depthRatio * kTan;
}

export interface PlateInput {
  readonly soil: SoilClass;
  /** Short side, or diameter, m. */
  readonly breadth: number;
  /** Long side, m; the breadth when absent. */
  readonly length?: number;
  /** Depth of its top, m. */
  readonly depth: number;
  readonly waterlogged?: boolean | undefined;
  /** Whether what pulls stays or is a gust; it stays when absent. */
  readonly stay?: Stay;
}

/** Clay (Das 1978, Vesic): F_c = 1.2 H/B for squares, limit 7.56 + 1.44 B/L. */
function plateFactor(soil: Soil, breadth: number, aspect: number, depth: number): number {
  const ratio = depth / breadth;
  return isGranular(soil)
    ? breakoutFactor(ratio, soil.friction, aspect)
    : Math.min(7.56 + 1.44 * aspect, (1 + 0.2 * aspect) * ratio);
}

function plateCapacity(soil: Soil, area: number, factor: number, depth: number): number {
  if (isGranular(soil)) return factor * soil.unitWeight * area * depth;
  return area * (soil.unitWeight * depth + factor * soil.shear);
}

/**
 * Uplift of a buried plate, beam or block (deadman), N. The hole is backfilled, so the soil over it counts as thrown
 * back.
 */
export function deadmanUplift(input: PlateInput): GroundResult {
  const length = input.length ?? input.breadth;
  needPositive({ breadth: input.breadth, length, depth: input.depth });
  const state = { waterlogged: input.waterlogged, backfilled: true };
  const fill = soilOf(input.soil, state);
  const breadth = Math.min(input.breadth, length);
  const area = input.breadth * length;
  const factor = plateFactor(fill, breadth, (breadth * breadth) / area, input.depth);
  const value = plateCapacity(fill, area, factor, input.depth);
  return groundResult(
    plateStep(fill, 'pull at which the buried anchor breaks out', area, input.depth, factor, value),
    plateSafety(input.stay),
    input.soil,
    stateSteps(input.soil, state),
    { rule: UPLIFT_RULE },
  );
}

/**
 * Uplift of a screw anchor with one helix, N: breakout of the helix in ground it has cut, not dug. Half of it may be
 * counted on (IBC 1810.3.3.1.9, equation 18-4).
 */
export function screwAnchorUplift(input: PlateInput): GroundResult {
  needPositive({ breadth: input.breadth, depth: input.depth });
  const state = { waterlogged: input.waterlogged };
  const natural = soilOf(input.soil, state);
  // Turning the screw in disturbs clay: 0.85 of its strength; common practice.
  const soil: Soil = isGranular(natural) ? natural : { ...natural, shear: 0.85 * natural.shear };
  const area = (Math.PI / 4) * input.breadth ** 2;
  const factor = plateFactor(soil, input.breadth, 1, input.depth);
  const value = plateCapacity(soil, area, factor, input.depth);
  return groundResult(
    plateStep(soil, 'pull at which the screw breaks out', area, input.depth, factor, value),
    2,
    input.soil,
    stateSteps(input.soil, state),
    { rule: UPLIFT_RULE },
  );
}

function plateStep(
  soil: Soil,
  meaning: string,
  area: number,
  depth: number,
  factor: number,
  value: number,
): Omit<Step, 'kind'> {
  const granular = isGranular(soil);
  return {
    symbol: 'Q_u',
    meaning,
    formula: granular ? 'Q_u = F_q ρ g A H' : 'Q_u = A (ρ g H + F_c c_u)',
    inputs: [
      given('A', 'area', area, 'area'),
      given('H', 'depth', depth, 'length'),
      given('ρ', 'density of the soil', soil.unitWeight / GRAVITY, 'density'),
      given('g', 'gravity, N/kg', GRAVITY, 'ratio'),
      given(granular ? 'F_q' : 'F_c', 'breakout factor by depth over breadth', factor, 'ratio'),
      granular
        ? given('φ', 'friction angle', soil.friction, 'angle')
        : given('c_u', 'shear strength', soil.shear, 'stress'),
    ],
    value,
    source: granular ? 'meyerhof-adams:1968' : 'das:clay-anchor',
  };
}
