/** What holds a shelter down: stubs, concrete, deadmen, screws, ballast. */
import { along } from '../interpolate.ts';
import { GRAVITY } from '../rain.ts';
import { given, type Step } from '../step.ts';
import { type GroundResult, groundResult, needPositive } from './ground-result.ts';
import { isGranular, type Soil, type SoilClass, soilOf } from './soil.ts';

/** Top layer that dries, cracks and is hoed: no skin friction is counted there, m: common practice, no source. */
export const LOOSE_TOP = 0.2;

/** Adhesion factor α of API RP 2A (1986): 1 up to c_u = 24 kPa, 0.5 from 72 kPa. c_u in Pa. */
export function adhesionFactor(shear: number): number {
  return along(
    [
      [24_000, 1],
      [72_000, 0.5],
    ],
    shear,
  );
}

/** β = K tan δ of small driven stakes pulled up in sand: K = 0.6, δ = 0.75 φ. */
export function betaFactor(friction: number): number {
  return 0.6 * Math.tan(0.75 * friction);
}

/** Skin friction over the depth below the loose top, N. Granular: β σ'_v; others: α c_u. */
export function skinFriction(
  soil: Soil,
  perimeter: number,
  depth: number,
  beta = betaFactor(soil.friction),
): number {
  const length = Math.max(0, depth - LOOSE_TOP);
  const middle = soil.unitWeight * (LOOSE_TOP + length / 2);
  const unit = isGranular(soil) ? beta * middle : adhesionFactor(soil.shear) * soil.shear;
  return unit * perimeter * length;
}

export interface StubInput {
  readonly soil: SoilClass;
  readonly diameter: number;
  /** Depth in the ground, m. */
  readonly depth: number;
  readonly waterlogged?: boolean;
}

/** Pull-out of a driven stub, stake or leg by skin friction, N. Lengths in m, above zero. */
export function stubUplift(input: StubInput): GroundResult {
  needPositive({ diameter: input.diameter, depth: input.depth });
  const soil = soilOf(input.soil, input.waterlogged);
  const granular = isGranular(soil);
  const value = skinFriction(soil, Math.PI * input.diameter, input.depth);
  return groundResult(
    {
      symbol: 'Q_s',
      meaning: 'pull at which the stub comes up',
      formula: granular ? "Q_s = K tan δ · σ'_v · π d (L - 0.2 m)" : 'Q_s = α c_u · π d (L - 0.2 m)',
      inputs: [
        given('d', 'diameter', input.diameter, 'thickness'),
        given('L', 'depth in the ground', input.depth, 'length'),
        granular
          ? given('K tan δ', 'friction factor', betaFactor(soil.friction), 'ratio')
          : given('α c_u', 'adhesion', adhesionFactor(soil.shear) * soil.shear, 'stress'),
      ],
      value,
      source: granular ? 'navfac-dm7:beta' : 'api-rp2a:alpha',
    },
    3,
    input.soil,
  );
}

export interface ConcreteFootInput {
  readonly soil: SoilClass;
  readonly diameter: number;
  readonly depth: number;
  readonly waterlogged?: boolean;
}

/** Uplift of a concrete-filled hole: its weight and the friction of its rough side, N. */
export function concreteFootUplift(input: ConcreteFootInput): GroundResult {
  needPositive({ diameter: input.diameter, depth: input.depth });
  const soil = soilOf(input.soil, input.waterlogged);
  const density = input.waterlogged ? 1300 : 2300;
  const weight = density * GRAVITY * (Math.PI / 4) * input.diameter ** 2 * input.depth;
  // Rough concrete in a bored hole: δ = φ, K = 0.7; adhesion 0.55 of the usual α in bored clay.
  const side = isGranular(soil)
    ? skinFriction(soil, Math.PI * input.diameter, input.depth, 0.7 * Math.tan(soil.friction))
    : 0.55 * skinFriction(soil, Math.PI * input.diameter, input.depth);
  const capacity = weight + side;
  const allowable = 0.9 * weight + side / 3;
  const own: Step = {
    symbol: 'W',
    meaning: 'weight of the concrete',
    formula: 'W = ρ g π/4 d² L',
    inputs: [given('ρ', 'concrete, less water where waterlogged', density, 'density')],
    value: weight,
    kind: 'force',
    source: 'derived:weight',
  };
  return groundResult(
    {
      symbol: 'Q',
      meaning:
        'pull at which the foot comes up (0.9 of the weight and a third of the side friction in service)',
      formula: 'Q = W + Q_side',
      inputs: [given('W', 'weight', weight, 'force'), given('Q_side', 'side friction', side, 'force')],
      value: capacity,
      source: isGranular(soil) ? 'navfac-dm7:beta' : 'api-rp2a:alpha',
    },
    capacity / allowable,
    input.soil,
    [own],
  );
}

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
  readonly waterlogged?: boolean;
}

function plateCapacity(soil: Soil, area: number, breadth: number, aspect: number, depth: number): number {
  const ratio = depth / breadth;
  if (isGranular(soil)) return breakoutFactor(ratio, soil.friction, aspect) * soil.unitWeight * area * depth;
  // Clay (Das 1978, Vesic): F_c = 1.2 H/B for squares, limit 7.56 + 1.44 B/L.
  const factor = Math.min(7.56 + 1.44 * aspect, (1 + 0.2 * aspect) * ratio);
  return area * (soil.unitWeight * depth + factor * soil.shear);
}

/**
 * Uplift of a buried plate, beam or block (deadman), N. The hole is backfilled, so sand counts as loose
 * and clay with half its strength.
 */
export function deadmanUplift(input: PlateInput): GroundResult {
  const length = input.length ?? input.breadth;
  needPositive({ breadth: input.breadth, length, depth: input.depth });
  const natural = soilOf(input.soil, input.waterlogged);
  const fill: Soil = isGranular(natural)
    ? { ...natural, friction: Math.min(natural.friction, (28 * Math.PI) / 180) }
    : { ...natural, shear: natural.shear / 2 };
  const breadth = Math.min(input.breadth, length);
  const area = input.breadth * length;
  const value = plateCapacity(fill, area, breadth, (breadth * breadth) / area, input.depth);
  return groundResult(
    plateStep(fill, 'pull at which the buried anchor breaks out', area, input.depth, value),
    2.5,
    input.soil,
  );
}

/** Uplift of a screw anchor with one helix, N: breakout of the helix in ground it has cut, not dug. */
export function screwAnchorUplift(input: PlateInput): GroundResult {
  needPositive({ breadth: input.breadth, depth: input.depth });
  const natural = soilOf(input.soil, input.waterlogged);
  // Turning the screw in disturbs clay: 0.85 of its strength; common practice.
  const soil: Soil = isGranular(natural) ? natural : { ...natural, shear: 0.85 * natural.shear };
  const area = (Math.PI / 4) * input.breadth ** 2;
  const value = plateCapacity(soil, area, input.breadth, 1, input.depth);
  return groundResult(
    plateStep(soil, 'pull at which the screw breaks out', area, input.depth, value),
    2.5,
    input.soil,
  );
}

function plateStep(
  soil: Soil,
  meaning: string,
  area: number,
  depth: number,
  value: number,
): Omit<Step, 'kind'> {
  const granular = isGranular(soil);
  return {
    symbol: 'Q_u',
    meaning,
    formula: granular ? 'Q_u = F_q γ A H' : 'Q_u = A (γ H + F_c c_u)',
    inputs: [
      given('A', 'area', area, 'area'),
      given('H', 'depth', depth, 'length'),
      given('γ/g', 'density of the soil', soil.unitWeight / GRAVITY, 'density'),
      granular
        ? given('φ', 'friction angle', soil.friction, 'angle')
        : given('c_u', 'shear strength', soil.shear, 'stress'),
    ],
    value,
    source: granular ? 'meyerhof-adams:1968' : 'das:clay-anchor',
  };
}

export interface BallastInput {
  readonly soil: SoilClass;
  /** kg on one foot. */
  readonly mass: number;
}

/** Weight on a foot against lift, N, with a factor of 1.5. */
export function ballastUplift(input: BallastInput): GroundResult {
  needPositive({ mass: input.mass });
  return groundResult(
    {
      symbol: 'W',
      meaning: 'lift that raises the ballast',
      formula: 'W = m g',
      inputs: [given('m', 'ballast', input.mass, 'mass')],
      value: input.mass * GRAVITY,
      source: 'derived:weight',
    },
    1.5,
    input.soil,
  );
}

/**
 * Sideways force that a ballasted or bearing foot takes before it slides, N: friction on what weight the
 * lift leaves, or cohesion on its area, at most half the weight (IBC 1806.3.2).
 * @param lift N pulling up at the same time; `area` m2 of contact
 */
export function ballastSliding(input: BallastInput, lift: number, area: number): GroundResult {
  needPositive({ mass: input.mass, area });
  const soil = soilOf(input.soil);
  const weight = Math.max(0, input.mass * GRAVITY - lift);
  const value = soil.sliding > 0 ? soil.sliding * weight : Math.min(soil.slidingCohesion * area, weight / 2);
  return groundResult(
    {
      symbol: 'H',
      meaning: 'sideways force at which the foot slides',
      formula: soil.sliding > 0 ? 'H = μ (W - U)' : 'H = c A, at most (W - U)/2',
      inputs: [
        given('W - U', 'weight left on the ground', weight, 'force'),
        soil.sliding > 0
          ? given('μ', 'friction', soil.sliding, 'ratio')
          : given('c', 'sliding cohesion', soil.slidingCohesion, 'stress'),
      ],
      value,
      source: 'ibc2018:1806.2',
    },
    1,
    input.soil,
  );
}
