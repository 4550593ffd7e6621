/** Bearing of one member on another, and of bolts in tube and wood. */
import type { Basis } from '../combinations.ts';
import { given, type Step } from '../step.ts';
import { levelOf } from './duration.ts';

export interface Bearing {
  /** Force it may carry, N. */
  readonly force: number;
  readonly step: Step;
}

/**
 * Wood pressed across the grain: F = F_c⊥ A C_b, C_b = (l + 9.5 mm)/l for bearings under 150 mm
 * (NDS 3.10.4); two thirds of it when wet. `strength` is the allowable F_c⊥ in Pa; length along the
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
      ],
      value: force,
      kind: 'force',
      source: 'nds:3.10',
    },
  };
}

/**
 * A bolt through thin steel: R_n = C d t F_u with C = 3 up to d/t = 10 (AISI S100 J3.3.1), Ω = 2.5, φ = 0.6;
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
      formula: basis === 'eurocode' ? 'F_b = 2.5 α_b d t f_u / γ_M2' : 'P = C d t F_u / Ω',
      inputs: [
        given('d', 'bolt', diameter, 'thickness'),
        given('t', 'wall', thickness, 'thickness'),
        given('F_u', 'tensile strength', ultimate, 'stress'),
      ],
      value: force,
      kind: 'force',
      source: basis === 'eurocode' ? 'en1993-1-8:3.6' : 'aisi-s100:j3.3',
    },
  };
}
