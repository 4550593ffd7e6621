/** Soil by class: what a screening calculation may take without a soil test. */
import { GRAVITY } from '../rain.ts';
import { given, type Step } from '../step.ts';

export type SoilClass =
  | 'sand-loose'
  | 'sand'
  | 'gravel'
  | 'loam'
  | 'clay-soft'
  | 'clay'
  | 'clay-stiff'
  | 'rock';

export interface Soil {
  readonly id: SoilClass;
  readonly title: string;
  /** N/m³, moist. */
  readonly unitWeight: number;
  /** Friction angle of a granular soil, rad; 0 for clay. */
  readonly friction: number;
  /** Undrained shear strength, Pa; 0 for sand. */
  readonly shear: number;
  /** Allowable bearing, Pa. */
  readonly bearing: number;
  /** Allowable lateral bearing, Pa per m of depth. */
  readonly lateral: number;
  /** Friction of concrete sliding on it; 0 for clay, which has `slidingCohesion` instead. */
  readonly sliding: number;
  /** Pa. */
  readonly slidingCohesion: number;
  /** Growth of the lateral subgrade with depth, N/m³ (Terzaghi n_h); 0 for clay, where it is 67 c_u. */
  readonly subgradeGrowth: number;
  /** How the two allowable values stand. */
  readonly source: string;
}

const degrees = (value: number): number => (value * Math.PI) / 180;
/** psf and psf/ft of IBC table 1806.2 in SI: by definition. */
const PSF = 47.8803;
const PSF_PER_FOOT = 157.087;

/**
 * Bearing and lateral bearing: IBC 2018 table 1806.2; half of it for loose sand and soft clay, which the
 * table does not cover. Weights, friction angles and shear strengths: lower part of the NAVFAC DM 7 ranges,
 * from memory; n_h: Terzaghi 1955, 7, 21 and 56 tons a cubic foot of loose, medium and dense sand over the water.
 */
export const SOILS: Readonly<Record<SoilClass, Soil>> = {
  'sand-loose': {
    id: 'sand-loose',
    title: 'loose sand',
    unitWeight: 15_500,
    friction: degrees(28),
    shear: 0,
    bearing: 1000 * PSF,
    lateral: 75 * PSF_PER_FOOT,
    sliding: 0.25,
    slidingCohesion: 0,
    subgradeGrowth: 2.2e6,
    source: 'practice:half-presumptive',
  },
  sand: {
    id: 'sand',
    title: 'sand',
    unitWeight: 17_000,
    friction: degrees(32),
    shear: 0,
    bearing: 2000 * PSF,
    lateral: 150 * PSF_PER_FOOT,
    sliding: 0.25,
    slidingCohesion: 0,
    subgradeGrowth: 6.6e6,
    source: 'ibc2018:1806.2',
  },
  gravel: {
    id: 'gravel',
    title: 'gravel',
    unitWeight: 18_500,
    friction: degrees(36),
    shear: 0,
    bearing: 3000 * PSF,
    lateral: 200 * PSF_PER_FOOT,
    sliding: 0.35,
    slidingCohesion: 0,
    subgradeGrowth: 17.6e6,
    source: 'ibc2018:1806.2',
  },
  loam: {
    id: 'loam',
    title: 'loam',
    unitWeight: 16_000,
    friction: 0,
    shear: 25_000,
    bearing: 1500 * PSF,
    lateral: 100 * PSF_PER_FOOT,
    sliding: 0,
    slidingCohesion: 130 * PSF,
    subgradeGrowth: 0,
    source: 'ibc2018:1806.2',
  },
  'clay-soft': {
    id: 'clay-soft',
    title: 'soft clay',
    unitWeight: 16_000,
    friction: 0,
    shear: 18_000,
    bearing: 750 * PSF,
    lateral: 50 * PSF_PER_FOOT,
    sliding: 0,
    slidingCohesion: 65 * PSF,
    subgradeGrowth: 0,
    source: 'practice:half-presumptive',
  },
  clay: {
    id: 'clay',
    title: 'clay',
    unitWeight: 17_500,
    friction: 0,
    shear: 40_000,
    bearing: 1500 * PSF,
    lateral: 100 * PSF_PER_FOOT,
    sliding: 0,
    slidingCohesion: 130 * PSF,
    subgradeGrowth: 0,
    source: 'ibc2018:1806.2',
  },
  'clay-stiff': {
    id: 'clay-stiff',
    title: 'stiff clay',
    unitWeight: 18_500,
    friction: 0,
    shear: 80_000,
    bearing: 1500 * PSF,
    lateral: 100 * PSF_PER_FOOT,
    sliding: 0,
    slidingCohesion: 130 * PSF,
    subgradeGrowth: 0,
    source: 'ibc2018:1806.2',
  },
  rock: {
    id: 'rock',
    title: 'rock',
    unitWeight: 23_000,
    friction: 0,
    shear: 250_000,
    bearing: 4000 * PSF,
    lateral: 400 * PSF_PER_FOOT,
    sliding: 0.35,
    slidingCohesion: 0,
    subgradeGrowth: 0,
    source: 'ibc2018:1806.2',
  },
};

/** Whether strength comes from friction (sand, gravel) rather than from shear strength (loam, clay, rock). */
export function isGranular(soil: Soil): boolean {
  return soil.friction > 0;
}

/**
 * Share of the shear strength that loam and clay keep in ground that a storm has soaked: stakes in saturated ground
 * hold about half of what they hold in the same ground when dry (a trade's study of tent stakes by the University of
 * Illinois, as a magazine of June 2009 has it). In sand the same half comes from buoyancy.
 */
export const SOAKED_SHARE = 0.5;

/** Share of the shear strength that loam and clay have when they were dug out and thrown back: own choice. */
export const BACKFILL_SHARE = 0.5;

/** Friction angle that sand and gravel have at most when they were thrown back, rad: that of loose sand, own choice. */
const LOOSE_FRICTION = degrees(28);

/** What was done to the ground, or rained on it. */
export interface GroundState {
  /** Soaked to the surface, as in the days of a storm. */
  readonly waterlogged?: boolean | undefined;
  /** Dug out and thrown back around what stands in it. */
  readonly backfilled?: boolean | undefined;
}

/**
 * Soil in its state. Soaked: weight less buoyancy, n_h less (Terzaghi 1955), loam and clay with half their strength.
 * Thrown back: sand counts as loose, loam and clay with half of what they have in that state.
 */
export function soilOf(id: SoilClass, { waterlogged = false, backfilled = false }: GroundState = {}): Soil {
  const soil = SOILS[id];
  const share = (waterlogged ? SOAKED_SHARE : 1) * (backfilled ? BACKFILL_SHARE : 1);
  return {
    ...soil,
    unitWeight: waterlogged ? soil.unitWeight + 2_000 - 9_807 : soil.unitWeight,
    friction: backfilled ? Math.min(soil.friction, LOOSE_FRICTION) : soil.friction,
    shear: share * soil.shear,
    subgradeGrowth: (waterlogged ? 0.6 : 1) * soil.subgradeGrowth,
  };
}

/** How the strength or weight of a soil follows from that of firm, drained ground; nothing where it stays. */
export function stateSteps(id: SoilClass, state: GroundState): readonly Step[] {
  const dry = SOILS[id];
  const soil = soilOf(id, state);
  const { waterlogged = false, backfilled = false } = state;
  if (!waterlogged && !backfilled) return [];
  if (!isGranular(dry)) {
    return [
      {
        symbol: 'c_u',
        meaning: `shear strength of ${[waterlogged ? 'soaked' : '', backfilled ? 'thrown-back' : ''].filter(Boolean).join(', ')} ${dry.title}`,
        formula: 'c_u = w b c_u0',
        inputs: [
          given('w', 'share left when soaked', waterlogged ? SOAKED_SHARE : 1, 'ratio'),
          given('b', 'share of what is thrown back', backfilled ? BACKFILL_SHARE : 1, 'ratio'),
          given('c_u0', 'of firm, drained ground', dry.shear, 'stress'),
        ],
        value: soil.shear,
        kind: 'stress',
        source: backfilled
          ? waterlogged
            ? 'tm5-5420:deadmen'
            : 'own:backfill-half'
          : 'stakes:saturated-half',
      },
    ];
  }
  const buoyant: Step = {
    symbol: 'ρ',
    meaning: `density of soaked ${dry.title}, less that of water`,
    formula: 'ρ = ρ_0 + ρ_s - ρ_w',
    inputs: [
      given('ρ_0', 'of moist soil', dry.unitWeight / GRAVITY, 'density'),
      given('ρ_s', 'water it takes up', 2_000 / GRAVITY, 'density'),
      given('ρ_w', 'of water', 9_807 / GRAVITY, 'density'),
    ],
    value: soil.unitWeight / GRAVITY,
    kind: 'density',
    source: 'stakes:saturated-half',
  };
  return waterlogged ? [buoyant] : [];
}

/** Spring of the soil against a stake at a depth (m), N/m per m of stake: n_h z in sand, 67 c_u in clay. */
export function lateralSubgrade(soil: Soil, depth: number): number {
  return isGranular(soil) ? soil.subgradeGrowth * depth : 67 * soil.shear;
}

/** Rankine K_p = tan²(45° + φ/2). */
export function passiveCoefficient(friction: number): number {
  return Math.tan(Math.PI / 4 + friction / 2) ** 2;
}
