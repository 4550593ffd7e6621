/** What holds a shelter down along its side: stubs, posts in holes, concrete. */
import { GRAVITY } from '../rain.ts';
import { given, type Step } from '../step.ts';
import { type GroundResult, groundResult, needPositive } from './ground-result.ts';
import { type Stay, UPLIFT_RULE, upliftSafety, WEIGHT_SHARE } from './safety.ts';
import {
  adhesionFactor,
  betaFactor,
  countedDepth,
  countedOverburden,
  restingBeta,
  skinFriction,
} from './skin-friction.ts';
import { type GroundState, isGranular, type Soil, type SoilClass, soilOf, stateSteps } from './soil.ts';

export interface StubInput {
  readonly soil: SoilClass;
  readonly diameter: number;
  /** Depth in the ground, m. */
  readonly depth: number;
  readonly waterlogged?: boolean | undefined;
  /** Whether what pulls stays or is a gust; it stays when absent. */
  readonly stay?: Stay;
}

/** Pull-out of a driven stub, stake or leg by skin friction, N. Lengths in m, above zero. */
export function stubUplift(input: StubInput): GroundResult {
  needPositive({ diameter: input.diameter, depth: input.depth });
  const state = { waterlogged: input.waterlogged };
  const soil = soilOf(input.soil, state);
  return bySide(
    input,
    state,
    Math.PI * input.diameter,
    betaFactor(soil.friction),
    'pull at which the stub comes up',
  );
}

export interface PostInput extends Omit<StubInput, 'diameter'> {
  /** Girth of the post, m. */
  readonly girth: number;
}

/**
 * Pull-out of a post in a hole that was filled again with the soil dug from it, N: friction of thrown-back soil on its
 * sides. A footing or collar keyed to the post, over which the soil would have to be lifted, is not counted.
 */
export function postUplift(input: PostInput): GroundResult {
  needPositive({ girth: input.girth, depth: input.depth });
  const state = { waterlogged: input.waterlogged, backfilled: true };
  const soil = soilOf(input.soil, state);
  return bySide(
    input,
    state,
    input.girth,
    restingBeta(soil.friction),
    'pull at which the post comes up out of its hole',
  );
}

function bySide(
  { soil: id, depth, stay }: Pick<StubInput, 'soil' | 'depth' | 'stay'>,
  state: GroundState,
  girth: number,
  beta: number,
  meaning: string,
): GroundResult {
  const soil = soilOf(id, state);
  const granular = isGranular(soil);
  return groundResult(
    {
      symbol: 'Q_s',
      meaning,
      formula: granular ? 'Q_s = β ρ g s z_2' : 'Q_s = f s z_1',
      inputs: [...friction(soil, beta), given('s', 'girth', girth, 'length'), ...counted(granular, depth)],
      value: skinFriction(soil, girth, depth, beta),
      source: granular ? 'navfac-dm7:beta' : 'api-rp2a:alpha',
    },
    upliftSafety(stay),
    id,
    [...stateSteps(id, state), ...adhesion(soil), loosened(granular, depth)],
    { rule: UPLIFT_RULE },
  );
}

const friction = (soil: Soil, beta: number) =>
  isGranular(soil)
    ? [
        given('β', 'K tan δ', beta, 'ratio'),
        given('ρ', 'density of the soil', soil.unitWeight / GRAVITY, 'density'),
        given('g', 'gravity, N/kg', GRAVITY, 'ratio'),
      ]
    : [given('f', 'adhesion', adhesionFactor(soil.shear) * soil.shear, 'stress')];

/** Adhesion of loam and clay as a step; sand has none. */
function adhesion(soil: Soil): readonly Step[] {
  if (isGranular(soil)) return [];
  const alpha = adhesionFactor(soil.shear);
  return [
    {
      symbol: 'f',
      meaning: 'adhesion on the side',
      formula: 'f = α c_u',
      inputs: [
        given('α', 'adhesion factor', alpha, 'ratio'),
        given('c_u', 'shear strength', soil.shear, 'stress'),
      ],
      value: alpha * soil.shear,
      kind: 'stress',
      source: 'api-rp2a:alpha',
    },
  ];
}

const counted = (granular: boolean, depth: number) => [
  granular
    ? given('z_2', 'depth times counted depth', countedOverburden(depth), 'area')
    : given('z_1', 'counted depth', countedDepth(depth), 'length'),
];

/** What the loose top leaves of the depth, as a step. */
function loosened(granular: boolean, depth: number): Step {
  return {
    symbol: granular ? 'z_2' : 'z_1',
    meaning: 'depth that counts: the top 0.4 m only in part, evenly from nothing at the surface',
    formula: granular
      ? depth < 0.4
        ? 'z_2 = L³ / 1.2'
        : 'z_2 = 0.4² / 3 + (L² - 0.4²) / 2'
      : depth < 0.4
        ? 'z_1 = L² / 0.8'
        : 'z_1 = L - 0.2',
    inputs: [given('L', 'depth in the ground', depth, 'length')],
    value: granular ? countedOverburden(depth) : countedDepth(depth),
    kind: granular ? 'area' : 'length',
    source: 'own:loose-top',
  };
}

export interface ConcreteFootInput extends StubInput {}

/** Uplift of a concrete-filled hole: its weight and the friction of its rough side, N. */
export function concreteFootUplift(input: ConcreteFootInput): GroundResult {
  needPositive({ diameter: input.diameter, depth: input.depth });
  const state = { waterlogged: input.waterlogged };
  const soil = soilOf(input.soil, state);
  const granular = isGranular(soil);
  const girth = Math.PI * input.diameter;
  const density = input.waterlogged === true ? 1300 : 2300;
  const weight = density * GRAVITY * (Math.PI / 4) * input.diameter ** 2 * input.depth;
  // Rough concrete in a bored hole: δ = φ, K = 0.7; adhesion 0.55 of the usual α in bored clay.
  const beta = 0.7 * Math.tan(soil.friction);
  const side = granular
    ? skinFriction(soil, girth, input.depth, beta)
    : 0.55 * skinFriction(soil, girth, input.depth);
  const safety = upliftSafety(input.stay);
  const capacity = weight + side;
  const allowable = WEIGHT_SHARE * weight + side / safety;
  const own: Step = {
    symbol: 'W',
    meaning: 'weight of the concrete',
    formula: 'W = ρ_c g π d² L / 4',
    inputs: [
      given('ρ_c', 'concrete, less water where soaked', density, 'density'),
      given('g', 'gravity, N/kg', GRAVITY, 'ratio'),
      given('d', 'diameter', input.diameter, 'length'),
      given('L', 'depth', input.depth, 'length'),
    ],
    value: weight,
    kind: 'force',
    source: 'derived:weight',
  };
  const along: Step = {
    symbol: 'Q_s',
    meaning: 'friction of its rough side',
    formula: granular ? 'Q_s = β ρ g s z_2' : 'Q_s = 0.55 f s z_1',
    inputs: [
      ...friction(soil, beta),
      given('s', 'girth', girth, 'length'),
      ...counted(granular, input.depth),
    ],
    value: side,
    kind: 'force',
    source: granular ? 'navfac-dm7:beta' : 'api-rp2a:alpha',
  };
  return groundResult(
    {
      symbol: 'Q',
      meaning: `pull at which the foot comes up (0.6 of the weight and 1/${safety} of the side friction in service)`,
      formula: 'Q = W + Q_s',
      inputs: [given('W', 'weight', weight, 'force'), given('Q_s', 'side friction', side, 'force')],
      value: capacity,
      source: granular ? 'navfac-dm7:beta' : 'api-rp2a:alpha',
    },
    capacity / allowable,
    input.soil,
    [...stateSteps(input.soil, state), own, ...adhesion(soil), loosened(granular, input.depth), along],
    { rule: UPLIFT_RULE },
  );
}
