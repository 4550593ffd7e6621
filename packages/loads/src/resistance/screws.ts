/** Screws pulled along their axis: out of wood, out of a thin metal wall, and the sheet pulled over their washer. */
import type { Basis } from '../combinations.ts';
import { given, type Step, type StepInput } from '../step.ts';
import { EN_KMOD, levelOf, NDS_DURATION } from './duration.ts';

export interface ScrewHold {
  /** Force one screw may have in a gust, N. */
  readonly force: number;
  readonly step: Step;
}

export interface WoodScrew {
  /** Over the thread, m. */
  readonly diameter: number;
  /** Thread in the wood, m. */
  readonly grip: number;
  /** Mean density of the wood as it is used, kg/m³. */
  readonly density: number;
}

/** lbf/in of 2850 G² D with D in inches, as N/m with D in m: by definition of pound and inch. */
const NDS_SCREW = (2850 * 4.4482216152605) / 0.0254 ** 2;
/** Oven-dry over air-dry density: by G = ρ / (1 + 0.009 G m)(1 + m/100) at 12 % moisture, near G = 0.4. Computed. */
const OVEN_DRY = 0.93;
/** Screws in wood that is rained on, NDS table 11.3.3: from memory. */
const WET = 0.7;
/** Strength format, NDS table N.1 and N.2: K_F = 3.32, φ = 0.65 for connections. From memory. */
const NDS_FORMAT = 3.32 * 0.65;
/** Characteristic over mean density of EN 338: ρ_mean = 1.2 ρ_k, as its table 1 has it. */
const CHARACTERISTIC = 1 / 1.2;

/**
 * Pulled out of the side grain in a gust. NDS 12.2.2: W = 2850 G² D (lbf per inch of thread), C_D = 1.6, or K_F φ λ
 * with λ = 1. EN 1995-1-1, 8.7.2: f_ax = 0.52 d^-0.5 l^-0.1 ρ_k^0.8, k_d = min(1, d / 8 mm), for threads of 6 to 12 mm
 * and at least six diameters in the wood; shorter ones hold nothing by it.
 */
export function screwInWood({ diameter, grip, density }: WoodScrew, wet: boolean, basis: Basis): ScrewHold {
  const common = [
    given('d', 'thread of the screw', diameter, 'thickness'),
    given('l', 'thread in the wood', grip, 'length'),
  ];
  const meaning = 'pull one screw may have before it comes out of the wood';
  if (basis === 'eurocode') {
    const [d, l, rho] = [diameter * 1e3, grip * 1e3, density * CHARACTERISTIC];
    const kmod = EN_KMOD.gust[wet ? 1 : 0];
    const strength = 0.52 * d ** -0.5 * l ** -0.1 * rho ** 0.8;
    const force = l < 6 * d ? 0 : (kmod / 1.3) * strength * d * l * Math.min(1, d / 8);
    return {
      force,
      step: {
        symbol: 'F_w',
        meaning,
        formula:
          l < 6 * d
            ? 'F = 0, for the thread is shorter than 6 d'
            : 'F = k_mod f_ax d l min(1, d / d_8) / γ_M',
        inputs: [
          ...common,
          given('d_8', 'diameter from which all of it counts', 0.008, 'thickness'),
          given('f_ax', '0.52 d^-0.5 l^-0.1 ρ_k^0.8 in N, mm and kg/m³', strength * 1e6, 'stress'),
          given('ρ_k', 'characteristic density', rho, 'density'),
          given('k_mod', 'gust and moisture', kmod, 'ratio'),
          given('γ_M', 'connections', 1.3, 'ratio'),
        ],
        value: force,
        kind: 'force',
        source: 'en1995-1-1:8.7.2',
      },
    };
  }
  const gravity = (OVEN_DRY * density) / 1000;
  const time = basis === 'asce7-asd' ? NDS_DURATION.gust : NDS_FORMAT;
  const moisture = wet ? WET : 1;
  const force = NDS_SCREW * gravity ** 2 * diameter * grip * time * moisture;
  return {
    force,
    step: {
      symbol: 'F_w',
      meaning,
      formula: basis === 'asce7-asd' ? 'F = w G² d l C_D C_M' : 'F = w G² d l K_F φ λ C_M',
      inputs: [
        ...common,
        given('w', 'of the standard: 2850 lbf per square inch', NDS_SCREW, 'stress'),
        given('G', 'specific gravity, oven dry', gravity, 'ratio'),
        given(basis === 'asce7-asd' ? 'C_D' : 'K_F φ λ', 'gust', time, 'ratio'),
        given('C_M', 'wet service', moisture, 'ratio'),
      ],
      value: force,
      kind: 'force',
      source: 'nds:12.2',
    },
  };
}

/** Ω = 3.00, φ = 0.50 of AISI S100 J4; γ_M2 = 1.25 of EN 1993-1-3. */
const ofMetal = (basis: Basis): number =>
  basis === 'eurocode' ? 1 / 1.25 : basis === 'asce7-asd' ? 1 / 3 : 0.5;

/** The same as an input of a step. */
const ofMetalInput = (basis: Basis): StepInput =>
  basis === 'eurocode'
    ? given('γ_M2', 'connections', 1.25, 'ratio')
    : basis === 'asce7-asd'
      ? given('Ω', 'screws in thin metal', 3, 'ratio')
      : given('φ', 'screws in thin metal', 0.5, 'ratio');

/**
 * Pulled out of a thin wall: 0.85 t d F_u (AISI S100 J4.4.1); 0.45 d t f_u (EN 1993-1-3 table 8.2, wall thinner than
 * the pitch of the thread). Lengths in m, `ultimate` in Pa.
 */
export function screwInMetal(diameter: number, wall: number, ultimate: number, basis: Basis): ScrewHold {
  const en = basis === 'eurocode';
  const force = (en ? 0.45 : 0.85) * wall * diameter * ultimate * ofMetal(basis);
  return {
    force,
    step: {
      symbol: 'F_o',
      meaning: 'pull one screw may have before its thread comes out of the wall',
      formula: en
        ? 'F = 0.45 d t F_u / γ_M2'
        : basis === 'asce7-asd'
          ? 'F = 0.85 t d F_u / Ω'
          : 'F = φ 0.85 t d F_u',
      inputs: [
        given('d', 'thread of the screw', diameter, 'thickness'),
        given('t', 'wall it is screwed into', wall, 'thickness'),
        given('F_u', 'strength of the wall; its yield stress', ultimate, 'stress'),
        ofMetalInput(basis),
      ],
      value: force,
      kind: 'force',
      source: en ? 'en1993-1-3:8.2' : 'aisi-s100:j4',
    },
  };
}

/** Diameter of a washer that counts in AISI S100 J4.4.2, m: 3/4 in, from memory. */
const WIDEST_WASHER = 0.75 * 0.0254;

/**
 * The sheet pulled over the washer in gusts: 1.5 t d_w F_u, d_w at most 3/4 in (AISI S100 J4.4.2); 0.5 d_w t f_u where
 * gusts come again and again (EN 1993-1-3 table 8.2). Both are made for thin steel. Lengths in m, `strength` in Pa.
 */
export function sheetOverWasher(
  washer: number,
  thickness: number,
  strength: number,
  basis: Basis,
): ScrewHold {
  const en = basis === 'eurocode';
  const counts = en ? washer : Math.min(washer, WIDEST_WASHER);
  const force = (en ? 0.5 : 1.5) * counts * thickness * strength * ofMetal(basis);
  return {
    force,
    step: {
      symbol: 'F_p',
      meaning: 'pull one screw may have before the sheet tears over its washer',
      formula: en
        ? 'F = 0.5 d_w t F_u / γ_M2'
        : basis === 'asce7-asd'
          ? 'F = 1.5 t d_w F_u / Ω'
          : 'F = φ 1.5 t d_w F_u',
      inputs: [
        given('d_w', 'washer', counts, 'thickness'),
        given('t', 'thickness of the sheet', thickness, 'thickness'),
        given('F_u', 'strength of the sheet', strength, 'stress'),
        ofMetalInput(basis),
      ],
      value: force,
      kind: 'force',
      source: en ? 'en1993-1-3:8.2' : 'aisi-s100:j4',
    },
  };
}

/** Guard factor in a gust where no standard is used: common practice, no source. */
const GUARD = 3;

/**
 * Bending stress a stiff plastic sheet may have in a gust, Pa. No standard for it is used: a guard factor of 3, as for
 * members without one.
 */
export function sheetBending(
  strength: number,
  basis: Basis,
): { readonly stress: number; readonly step: Step } {
  const level = levelOf(basis);
  const stress = (strength * level) / GUARD;
  return {
    stress,
    step: {
      symbol: 'f_b',
      meaning: 'bending stress the sheet may have in a gust',
      formula: 'f_a = f_y / n · level',
      inputs: [
        given('f_y', 'stress at which it yields', strength, 'stress'),
        given('n', 'guard factor', GUARD, 'ratio'),
        given('level', 'allowable to factored loads', level, 'ratio'),
      ],
      value: stress,
      kind: 'stress',
      source: 'practice:guard-factor',
    },
  };
}
