/**
 * What a foot in the ground may be pushed with: one method and one set of soil values for what is driven, set in a
 * hole or cast in concrete.
 */
import type { Basis } from '../combinations.ts';
import type { Expected } from '../expected.ts';
import { levelOf } from '../resistance/duration.ts';
import { given, type Step, type StepInput } from '../step.ts';
import { slidingFriction } from './ballast.ts';
import { postEmbedmentLateral } from './embedment.ts';
import { GROUND_SPREAD, type GroundResult, groundAllowedAt } from './ground-result.ts';
import { lateralCapacity, pushOfMoment } from './lateral.ts';
import { LATERAL_SAFETY, type Stay } from './safety.ts';
import { type SoilClass, soilOf } from './soil.ts';

export interface SidewaysInput {
  readonly soil: SoilClass;
  /** Driven into firm ground, set in a hole filled again with what was dug, or cast in concrete against the ground. */
  readonly setting: 'driven' | 'hole' | 'concrete';
  /** Width against the soil, m, and that of IBC 1807.3.2.1 where it is another: the diagonal of a square post. */
  readonly width: number;
  readonly diagonal?: number;
  readonly depth: number;
  /** Height of the push over the ground, m: moment over push. */
  readonly height: number;
  readonly stay: Stay;
  readonly basis: Basis;
  readonly waterlogged?: boolean | undefined;
  /** Force that presses the foot down (N) on its underside (m²). */
  readonly pressed?: number;
  readonly underside?: number;
  /** Bending that a stake may have by the rules of its own material at the level of the basis, N·m. */
  readonly allowedMoment?: number;
}

export interface SidewaysHold extends GroundResult {
  /** Depth from which on the methods are meant to be used, m, where the foot is shallower. */
  readonly leastDepth?: number;
}

/** Widths of depth from which on both methods are meant to be used: own choice (Broms counts nothing above 1.5). */
export const LEAST_WIDTHS = 2;

/** Height of the push below which the embedment formula is not asked, m: own choice. */
const LOWEST_PUSH = 0.05;

/** Ultimate over allowable in the table of IBC 1806.2: the safety of ASAE EP486 (DEC98) 3.4.2, 2.5 to 3. */
const TABLE_SAFETY = 2.5;

/** Own bending of a stake at which it gives over what it may have: the Ω = 1.67 of AISI S100 for bending. */
const BENDING_SAFETY = 1.67;

/**
 * Sideways load that may be counted on, N, at the level of the basis. Two published methods give an allowable load for
 * a post in earth: Broms (1964) over 2.5, from the strength of the soil in its state; and IBC 1807.3 from presumptive
 * pressures, doubled in gusts for posts that half an inch of movement does no harm (1806.3.4). Either may be used, so
 * the larger counts. A stake is held to its own bending besides, where the soil with its strength over the same factor
 * has taken the shear. Never less than what the underside rubs with, as far as the push does not topple the foot on it.
 */
export function embeddedSideways(input: SidewaysInput): SidewaysHold {
  const level = levelOf(input.basis);
  const { soil, width, depth, height, stay, allowedMoment } = input;
  const state = { waterlogged: input.waterlogged, backfilled: input.setting === 'hole' };
  const broms = lateralCapacity({ soil, diameter: width, depth, height, head: 'free', ...state });
  const table = postEmbedmentLateral({
    soil,
    width: input.diagonal ?? width,
    depth,
    height: Math.max(LOWEST_PUSH, height),
    constrained: false,
  });
  const times = stay === 'gust' ? 2 : 1;
  const byBroms = groundAllowedAt(broms, input.basis);
  const byTable = times * level * table.allowable;
  const inSoil = Math.max(byBroms, byTable);
  const rubs = rubbing(input);
  const ground = soilOf(soil, state);
  const own =
    allowedMoment === undefined
      ? undefined
      : pushOfMoment(ground, { diameter: width, height }, allowedMoment, LATERAL_SAFETY / level, inSoil);
  const held = Math.min(inSoil, own ?? inSoil);
  const value = Math.max(held, rubs?.value ?? 0);
  const source =
    rubs !== undefined && value === rubs.value
      ? 'ibc2018:1806.2'
      : held === byTable
        ? table.source
        : broms.source;
  const steps: Step[] = [
    ...broms.steps.slice(0, -1),
    force('H_B', 'by Broms, what may be counted on', 'H_B = H_u f / n', byBroms, broms.source, [
      given('H_u', 'push at which the soil gives', broms.capacity, 'force'),
      given('f', 'factor of the load basis', level, 'ratio'),
      given('n', 'safety factor', LATERAL_SAFETY, 'ratio'),
    ]),
    ...table.steps.slice(0, -1),
    force(
      'P_a',
      stay === 'gust'
        ? 'by the table, doubled in gusts, where half an inch of movement does no harm'
        : 'by the table',
      'P_a = m f P',
      byTable,
      stay === 'gust' ? 'ibc2018:1806.3.4' : 'ibc2018:1807.3',
      [
        given('m', 'times the pressure of the table', times, 'ratio'),
        given('f', 'factor of the load basis', level, 'ratio'),
        given('P', 'sideways load the post may take', table.allowable, 'force'),
      ],
    ),
    ...(own === undefined ? [] : [bendingStep(input, own, broms)]),
    ...(rubs === undefined ? [] : rubs.steps),
    final(byBroms, byTable, own, rubs?.value, value),
  ];
  return {
    capacity: value,
    safetyFactor: 1,
    allowable: value / level,
    expected: expected(broms.capacity, TABLE_SAFETY * table.allowable, rubs?.value ?? 0, input),
    source,
    steps,
    ...(depth < LEAST_WIDTHS * width ? { leastDepth: LEAST_WIDTHS * width } : {}),
  };
}

/** Bending (N·m) that the embedded length may be counted on for with no push at its top, at the level of the basis. */
export function embeddedMoment(input: Omit<SidewaysInput, 'height' | 'pressed'>): number {
  const far = 1e4;
  const hold = embeddedSideways({ ...input, height: far });
  return far * groundAllowedAt(hold, input.basis);
}

/** Friction under a foot that is pressed down, as far as the push does not topple it. */
function rubbing(
  input: SidewaysInput,
): { readonly value: number; readonly steps: readonly Step[] } | undefined {
  const { pressed = 0, underside = 0, height, width } = input;
  if (pressed <= 0 || underside <= 0) return undefined;
  const friction = slidingFriction(input.soil, pressed, underside);
  const topples = (pressed * width) / 2 / Math.max(height, 1e-9);
  if (friction.capacity <= topples) return { value: friction.capacity, steps: friction.steps.slice(0, -1) };
  return {
    value: topples,
    steps: [
      force(
        'H_f',
        'push that topples the foot on its underside',
        'H_f = V b / (2 e)',
        topples,
        'derived:topple',
        [
          given('V', 'force that presses it down', pressed, 'force'),
          given('b', 'width', width, 'length'),
          given('e', 'height of the push', height, 'length'),
        ],
      ),
    ],
  };
}

function bendingStep(input: SidewaysInput, own: number, { source, steps }: GroundResult): Step {
  // The soil is that of the method above; the table in between has other letters for the same things.
  const soil = steps.find(({ symbol }) => symbol === 'H_u')?.inputs ?? [];
  return {
    ...force(
      'H_s',
      'push at which the stake has the bending it may have',
      source === 'broms:1964b'
        ? 'H_s (e + 0.544 √(n H_s / (ρ g d K_p))) = M_a, at most what the soil bears'
        : 'H_s (e + 1.5 d + 0.5 f) = M_a, f = n H_s / (9 c_u d), with the d that bends it least, at most the soil',
      own,
      source,
      [
        given('M_a', 'bending the stake may have', input.allowedMoment ?? 0, 'moment'),
        given('e', 'height of the push', input.height, 'length'),
        given('n', 'safety on the strength of the soil', LATERAL_SAFETY / levelOf(input.basis), 'ratio'),
        ...soil.filter(({ symbol }) => ['d', 'ρ', 'g', 'K_p', 'c_u'].includes(symbol)),
      ],
    ),
    prose: true,
  };
}

/** The rule by which one of the values governs. */
function final(
  byBroms: number,
  byTable: number,
  own: number | undefined,
  rubs: number | undefined,
  value: number,
): Step {
  const soil = 'max(H_B, P_a)';
  const held = own === undefined ? soil : `min(${soil}, H_s)`;
  return force(
    'H_a',
    'what may be counted on: the larger of two published allowances',
    rubs === undefined ? `H_a = ${held}` : `H_a = max(${held}, H_f)`,
    value,
    'own:larger-allowance',
    [
      given('H_B', 'by Broms', byBroms, 'force'),
      given('P_a', 'by the table of the code', byTable, 'force'),
      ...(own === undefined ? [] : [given('H_s', 'by the bending of the stake', own, 'force')]),
      ...(rubs === undefined ? [] : [given('H_f', 'by friction under it', rubs, 'force')]),
    ],
  );
}

/** What is expected to be reached: the larger of the two methods with no safety in it, or the bending of the stake. */
function expected(broms: number, table: number, rubs: number, input: SidewaysInput): Expected {
  const inSoil = Math.max(broms, table);
  const { allowedMoment, width, height, soil } = input;
  const ground = soilOf(soil, { waterlogged: input.waterlogged, backfilled: input.setting === 'hole' });
  const moment =
    allowedMoment === undefined ? undefined : (BENDING_SAFETY * allowedMoment) / levelOf(input.basis);
  const bent =
    moment === undefined ? inSoil : pushOfMoment(ground, { diameter: width, height }, moment, 1, inSoil);
  const median = Math.max(bent, rubs);
  return {
    median,
    spread: GROUND_SPREAD,
    source: 'tests:pull-out',
    steps: [
      force(
        'H_m',
        'what is expected to be reached, no safety in it',
        moment === undefined ? 'H_m = max(H_u, P_u, H_f)' : 'H_m = max(min(max(H_u, P_u), H_y), H_f)',
        median,
        'tests:pull-out',
        [
          given('H_u', 'by Broms', broms, 'force'),
          given('P_u', 'by the table, times 2.5', table, 'force'),
          ...(moment === undefined ? [] : [given('H_y', 'push that bends the stake over', bent, 'force')]),
          given('H_f', 'friction under it', rubs, 'force'),
        ],
      ),
    ],
  };
}

function force(
  symbol: string,
  meaning: string,
  formula: string,
  value: number,
  source: string,
  inputs: readonly StepInput[],
): Step {
  return { symbol, meaning, formula, inputs, value, kind: 'force', source };
}
