/** Velocity pressure of both standards, with every factor as a step. */
import { given, type Step } from '../step.ts';
import { asceReturnFactor, enReturnFactor, OPEN_TURBULENCE, tenMinuteMean } from './gust.ts';
import type { WindInput } from './wind-case.ts';

type Exposure = WindInput['exposure'];

/** ASCE 7-16 table 26.11-1: power law exponent and gradient height (m) for exposures B, C, D. */
const ASCE_TERRAIN: Record<Exposure, { letter: string; alpha: number; gradient: number }> = {
  sheltered: { letter: 'B', alpha: 7, gradient: 365.76 },
  open: { letter: 'C', alpha: 9.5, gradient: 274.32 },
  coastal: { letter: 'D', alpha: 11.5, gradient: 213.36 },
};

/** EN 1991-1-4 table 4.1: roughness length and least height (m) for categories III, II, 0. */
const EN_TERRAIN: Record<Exposure, { category: string; roughness: number; least: number }> = {
  sheltered: { category: 'III', roughness: 0.3, least: 5 },
  open: { category: 'II', roughness: 0.05, least: 2 },
  coastal: { category: '0', roughness: 0.003, least: 1 },
};

/** K_z of ASCE 7-16 table 26.10-1: 2.01 (z/z_g)^(2/α), constant below 4.6 m. Height in m. */
export function exposureFactor(height: number, exposure: Exposure): number {
  const { alpha, gradient } = ASCE_TERRAIN[exposure];
  return 2.01 * (Math.min(gradient, Math.max(4.572, height)) / gradient) ** (2 / alpha);
}

/** K_e of ASCE 7-16 table 26.9-1: e^(-0.000119 z), z in m above the sea. */
export function elevationFactor(elevation: number): number {
  return Math.exp(-0.000119 * Math.max(0, elevation));
}

/** q_p(z) of EN 1991-1-4 eq. 4.8 in Pa for a basic velocity (10 min mean, m/s), orography factor c_o. */
export function peakVelocityPressure(
  basic: number,
  height: number,
  exposure: Exposure,
  orography: number,
): number {
  const { roughness, least } = EN_TERRAIN[exposure];
  const terrain = 0.19 * (roughness / 0.05) ** 0.07;
  const log = Math.log(Math.max(least, height) / roughness);
  const mean = terrain * log * orography * basic;
  return (1 + 7 / (orography * log)) * 0.5 * 1.25 * mean * mean;
}

export interface VelocityPressure {
  /** Pa, with directionality in it for ASCE. */
  readonly pressure: number;
  readonly steps: readonly Step[];
}

/**
 * ASCE velocity pressure q_h at a height (m), Pa. The gust is brought to the return period that
 * the strength-level map speeds have (300 years for risk category I, 700 for II).
 */
export function asceVelocityPressure(input: WindInput, height: number): VelocityPressure {
  const target = input.lowHazard ? 300 : 700;
  const design = (input.gust * asceReturnFactor(target)) / asceReturnFactor(input.gustReturnPeriod);
  const kz = exposureFactor(height, input.exposure);
  const kzt = input.topography ** 2;
  const ke = elevationFactor(input.elevation);
  const pressure = 0.613 * kz * kzt * 0.85 * ke * design * design;
  const letter = ASCE_TERRAIN[input.exposure].letter;
  return {
    pressure,
    steps: [
      {
        symbol: 'V',
        meaning: `design gust, risk category ${input.lowHazard ? 'I' : 'II'} (${target} years)`,
        formula: 'V = V_site (0.36 + 0.1 ln(12 T)) / (0.36 + 0.1 ln(12 T_site))',
        inputs: [
          given('V_site', 'gust of the site', input.gust, 'speed'),
          given(
            'T_site',
            'its return period, years, at least 5',
            Math.max(5, input.gustReturnPeriod),
            'count',
          ),
          given('T', 'return period of the standard, years', target, 'count'),
        ],
        value: design,
        kind: 'speed',
        source: 'asce7-16:c26.5',
      },
      {
        symbol: 'K_z',
        meaning: `exposure factor, exposure ${letter}`,
        formula: 'K_z = 2.01 (z / z_g)^(2/α)',
        inputs: [
          given('z', 'mean roof height, not under that of the tables', Math.max(4.572, height), 'length'),
          given('z_g', 'height of the gradient wind', ASCE_TERRAIN[input.exposure].gradient, 'length'),
          given('α', 'exponent of the power law', ASCE_TERRAIN[input.exposure].alpha, 'ratio'),
        ],
        value: kz,
        kind: 'ratio',
        source: 'asce7-16:26.10-1',
      },
      {
        symbol: 'q_h',
        meaning: 'velocity pressure',
        formula: 'q_h = ½ ρ K_z K_zt K_d K_e V²',
        inputs: [
          given('ρ', 'air at sea level: the 0.613 of the standard, doubled', 2 * 0.613, 'density'),
          given('K_z', 'exposure factor', kz, 'ratio'),
          given('K_zt', 'topographic factor, speed-up squared', kzt, 'ratio'),
          given('K_d', 'directionality factor', 0.85, 'ratio'),
          given('K_e', 'ground elevation factor', ke, 'ratio'),
          given('V', 'design gust', design, 'speed'),
        ],
        value: pressure,
        kind: 'pressure',
        source: 'asce7-16:26.10',
      },
    ],
  };
}

/** Peak velocity pressure of EN 1991-1-4 at a height (m), Pa, from the site's 3 s gust. */
export function enVelocityPressure(input: WindInput, height: number): VelocityPressure {
  const mean = tenMinuteMean(input.gust);
  const basic = mean / enReturnFactor(input.gustReturnPeriod);
  const pressure = peakVelocityPressure(basic, height, input.exposure, input.topography);
  const { category, roughness } = EN_TERRAIN[input.exposure];
  return {
    pressure,
    steps: [
      {
        symbol: 'v_b',
        meaning: 'basic velocity, 10-minute mean of 50 years',
        formula: 'v_b = V_3s / (√(1 + 7 I_v) c_prob)',
        inputs: [
          given('V_3s', 'gust of the site', input.gust, 'speed'),
          given('I_v', 'turbulence in open country, 10 m up', OPEN_TURBULENCE, 'ratio'),
          given(
            'c_prob',
            'gust of its return period over that of 50 years',
            enReturnFactor(input.gustReturnPeriod),
            'ratio',
          ),
        ],
        value: basic,
        kind: 'speed',
        source: 'derived:gust-to-mean',
      },
      {
        symbol: 'q_p',
        meaning: `peak velocity pressure, terrain category ${category}`,
        formula:
          'q_p = (1 + 7 I_v) ½ ρ (c_r c_o v_b)², c_r = 0.19 (z_0 / z_0,II)^0.07 ln(z / z_0), I_v = 1 / (c_o ln(z / z_0))',
        inputs: [
          given(
            'z',
            'height of the roof, not under that of the table',
            Math.max(EN_TERRAIN[input.exposure].least, height),
            'length',
          ),
          given('z_0,II', 'roughness length of open country', EN_TERRAIN.open.roughness, 'length'),
          given('ρ', 'air', 1.25, 'density'),
          given('z_0', 'roughness length', roughness, 'length'),
          given('c_o', 'orography factor', input.topography, 'ratio'),
          given('v_b', 'basic velocity', basic, 'speed'),
        ],
        value: pressure,
        kind: 'pressure',
        source: 'en1991-1-4:4.5',
      },
    ],
  };
}
