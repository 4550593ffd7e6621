/** Bearing of one member on another, and of bolts in tube and wood. */
import type { Basis } from '../combinations.ts';
import { given, type Step } from '../step.ts';
import { type Duration, EN_KMOD, levelOf } from './duration.ts';

export interface Bearing {
  /** Force it may carry, N. */
  readonly force: number;
  readonly step: Step;
}

/**
 * Wood pressed across the grain: F = F_c⊥ A C_b, C_b = (l + 9.5 mm)/l for bearings under 150 mm that are not nearer
 * than 76 mm to the end of the wood (NDS 3.10.4); two thirds of it when wet. `strength` is the allowable F_c⊥ in Pa; length along the
 * grain and width in m.
 */
export function woodBearing(
  strength: number,
  length: number,
  width: number,
  wet: boolean,
  basis: Basis,
): Bearing {
  const reach = length < 0.15 ? (length + 0.0095) / length : 1;
  const moisture = wet ? 0.67 : 1;
  const force = strength * length * width * reach * moisture * levelOf(basis);
  return {
    force,
    step: {
      symbol: 'P_⊥',
      meaning: 'bearing across the grain',
      formula: 'P = F_c⊥ l b C_b C_M · level',
      inputs: [
        given('F_c⊥', 'allowable across the grain', strength, 'stress'),
        given('l', 'length of the bearing', length, 'length'),
        given('b', 'width of the bearing', width, 'length'),
        given('C_b', 'bearing area factor', reach, 'ratio'),
        given('C_M', 'wet service', moisture, 'ratio'),
        given('level', 'allowable to factored loads', levelOf(basis), 'ratio'),
      ],
      value: force,
      kind: 'force',
      source: 'nds:3.10',
    },
  };
}

/** Length the fibres beside a bearing lend it at each end, m, and the factor for single supports: EN 1995-1-1, 6.1.5. */
const lent = 0.03;
const singleSupport = 1.5;

/**
 * Solid softwood pressed across the grain by EN 1995-1-1, 6.1.5: F = k_c,90 f_c,90,d A_ef, the bearing lengthened by
 * 30 mm, but not more than itself, on both sides; k_c,90 = 1.5 for single supports. `strength` is the characteristic
 * f_c,90,k in Pa; length along the grain and width in m. Away from ends by 30 mm and from other loads by twice the depth.
 */
export function woodBearingEn(
  strength: number,
  length: number,
  width: number,
  duration: Duration,
  wet: boolean,
): Bearing {
  const kmod = EN_KMOD[duration][wet ? 1 : 0];
  const effective = length + 2 * Math.min(lent, length);
  const force = (singleSupport * kmod * strength * effective * width) / 1.3;
  return {
    force,
    step: {
      symbol: 'F_90,d',
      meaning: 'bearing across the grain',
      formula: 'F = k_c,90 k_mod f_c,90,k / γ_M · (l + 2 min(l, l_e)) b',
      inputs: [
        given('f_c,90,k', 'strength across the grain', strength, 'stress'),
        given('l', 'length of the bearing', length, 'length'),
        given('b', 'width of the bearing', width, 'length'),
        given('l_e', 'length the fibres lend it at each end', lent, 'length'),
        given('k_c,90', 'single support of softwood', singleSupport, 'ratio'),
        given('k_mod', 'duration and moisture', kmod, 'ratio'),
        given('γ_M', 'solid timber', 1.3, 'ratio'),
      ],
      value: force,
      kind: 'force',
      source: 'en1995-1-1:6.1.5',
    },
  };
}

/**
 * A tube pressed flat from above over a length of contact along it: F = 5 f t² (1 + 0.25 η), η = length over outside
 * diameter, at most 4 (EN 1993-1-8 table 7.3, a plate lying along a round hollow section; its thrust reduction k_p
 * left at 1). `stress` is what the wall may have, Pa; lengths in m, 0 where two round members cross.
 */
export function tubeCrushing(stress: number, outside: number, wall: number, length: number): Bearing {
  const eta = Math.min(4, length / outside);
  const force = 5 * stress * wall ** 2 * (1 + 0.25 * eta);
  return {
    force,
    step: {
      symbol: 'F_c',
      meaning: 'force that presses the tube flat',
      formula: 'F = 5 f t² (1 + 0.25 η), η = min(4, l / d)',
      inputs: [
        given('f', 'stress the wall may have', stress, 'stress'),
        given('t', 'wall', wall, 'thickness'),
        given('d', 'outside diameter', outside, 'length'),
        given('l', 'length of contact along the tube', length, 'length'),
      ],
      value: force,
      kind: 'force',
      source: 'en1993-1-8:7.3',
    },
  };
}

/**
 * A bolt through thin steel, washers under head and nut: R_n = C d t F_u (AISI S100 J3.3.1), C = 3 up to d/t = 10,
 * 4 - 0.1 d/t up to 22, 1.8 beyond, Ω = 2.5, φ = 0.6;
 * EN 1993-1-8: 2.5 α_b d t f_u / 1.25 with α_b taken 0.6 for edge distances of 1.8 d. Lengths in m, stress in Pa.
 */
export function boltBearing(diameter: number, thickness: number, ultimate: number, basis: Basis): Bearing {
  const ratio = diameter / thickness;
  const c = ratio < 10 ? 3 : ratio <= 22 ? 4 - 0.1 * ratio : 1.8;
  const nominal = c * diameter * thickness * ultimate;
  const force =
    basis === 'eurocode'
      ? (2.5 * 0.6 * diameter * thickness * ultimate) / 1.25
      : basis === 'asce7-asd'
        ? nominal / 2.5
        : nominal * 0.6;
  return {
    force,
    step: {
      symbol: 'P_b',
      meaning: 'bearing of the bolt on one wall',
      formula:
        basis === 'eurocode'
          ? 'F_b = 2.5 α_b d t F_u / γ_M2'
          : basis === 'asce7-asd'
            ? 'P = C d t F_u / Ω'
            : 'P = φ C d t F_u',
      inputs: [
        given('d', 'bolt', diameter, 'thickness'),
        given('t', 'wall', thickness, 'thickness'),
        given('F_u', 'tensile strength', ultimate, 'stress'),
        ...(basis === 'eurocode'
          ? [
              given('α_b', 'edge distance of 1.8 d', 0.6, 'ratio'),
              given('γ_M2', 'connections', 1.25, 'ratio'),
            ]
          : [
              given('C', 'bearing factor', c, 'ratio'),
              basis === 'asce7-asd'
                ? given('Ω', 'bearing', 2.5, 'ratio')
                : given('φ', 'bearing', 0.6, 'ratio'),
            ]),
      ],
      value: force,
      kind: 'force',
      source: basis === 'eurocode' ? 'en1993-1-8:3.6' : 'aisi-s100:j3.3',
    },
  };
}
