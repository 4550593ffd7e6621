/** Metal tube and rod: AISI S100 and AISC 360 (US), EN 1993-1-1, aluminium by its own safety factors. */
import { given, type Step } from '../step.ts';
import type { MemberInput } from './member-input.ts';

export interface MetalRule {
  readonly bending: number;
  readonly compression: number;
  readonly tension: number;
  readonly shear: number;
  readonly formula: string;
  readonly inputs: Step['inputs'];
  /** Where a way of giving way has another formula than bending. */
  readonly ways?: Partial<Record<'compression' | 'tension' | 'shear', Pick<Step, 'formula' | 'inputs'>>>;
  readonly source: string;
}

/** Plastic over elastic section modulus of a round tube, or of a solid rod when `wall` is half the outside. */
export function plasticRatio(outside: number, wall: number): number {
  const inside = Math.max(0, outside - 2 * wall);
  const plastic = (outside ** 3 - inside ** 3) / 6;
  const elastic = (Math.PI * (outside ** 4 - inside ** 4)) / (32 * outside);
  return plastic / elastic;
}

/**
 * Bending stress of a round tube over its yield stress: AISI S100 F2.3 (cylindrical tubes).
 * F_c/F_y = 1.25 up to D/t = 0.0714 E/F_y, 0.970 + 0.020 (E/F_y)/(D/t) up to 0.318, 0.328 (E/F_y)/(D/t) up to 0.441.
 */
export function tubeBendingRatio(
  outside: number,
  wall: number,
  yieldStress: number,
  modulus: number,
): number {
  const slender = outside / wall;
  const e = modulus / yieldStress;
  if (slender <= 0.0714 * e) return 1.25;
  if (slender <= 0.318 * e) return 0.97 + (0.02 * e) / slender;
  return (0.328 * e) / slender;
}

/** Factors on the yield stress. Bending is on the elastic section modulus. */
export function metalBending(input: MemberInput): MetalRule {
  const tube = input.outside !== undefined && input.wall !== undefined;
  if (input.family === 'aluminium') return aluminium(input);
  if (input.basis === 'eurocode') return eurocodeSteel(input);
  const asd = input.basis === 'asce7-asd';
  // A solid rod: F11 of AISC 360, M_p but at most 1.6 M_y.
  const ratio = tube
    ? tubeBendingRatio(input.outside!, input.wall!, input.bendingStrength, input.modulus)
    : 1.6;
  const bending = tube ? (asd ? 1 / 1.67 : 0.95) : asd ? 1 / 1.67 : 0.9;
  const compression = tube ? (asd ? 1 / 1.8 : 0.85) : asd ? 1 / 1.67 : 0.9;
  return {
    bending: ratio * bending,
    compression,
    tension: asd ? 1 / 1.67 : 0.9,
    shear: asd ? 1 / 1.67 : 0.9,
    formula: asd ? 'F_b = (F_c/F_y) f / Ω' : 'F_b = φ (F_c/F_y) f',
    inputs: [
      given(
        'F_c/F_y',
        tube ? 'bending stress of the tube over yield' : 'plastic reserve of the rod',
        ratio,
        'ratio',
      ),
      given(asd ? 'Ω' : 'φ', 'resistance', asd ? 1.67 : tube ? 0.95 : 0.9, 'ratio'),
    ],
    ways: {
      compression: plain(asd, tube ? (asd ? 1.8 : 0.85) : asd ? 1.67 : 0.9),
      tension: plain(asd, asd ? 1.67 : 0.9),
      shear: plain(asd, asd ? 1.67 : 0.9),
    },
    source: tube ? 'aisi-s100:f2.3' : 'aisc360:f11',
  };
}

/** A yield stress over its safety factor, or times its resistance factor. */
const plain = (asd: boolean, factor: number): Pick<Step, 'formula' | 'inputs'> => ({
  formula: asd ? 'F_a = f / Ω' : 'F_a = φ f',
  inputs: [given(asd ? 'Ω' : 'φ', 'resistance', factor, 'ratio')],
});

function eurocodeSteel(input: MemberInput): MetalRule {
  const tube = input.outside !== undefined && input.wall !== undefined;
  const outside = input.outside ?? 1;
  const wall = input.wall ?? outside / 2;
  const epsilon2 = 235e6 / input.bendingStrength;
  const slender = outside / wall;
  const ratio = slender <= 70 * epsilon2 ? plasticRatio(outside, wall) : 1;
  const capped = tube ? ratio : Math.min(1.6, ratio);
  const local = slender <= 90 * epsilon2 ? 1 : (90 * epsilon2) / slender;
  return {
    bending: capped * local,
    compression: local,
    tension: 1,
    shear: 1,
    ways: {
      compression: {
        formula: 'f_d = k f / γ_M0',
        inputs: [
          given('k', 'class 4: 90 ε² t/d, in place of EN 1993-1-6', local, 'ratio'),
          given('γ_M0', 'partial factor', 1, 'ratio'),
        ],
      },
      tension: { formula: 'f_d = f / γ_M0', inputs: [given('γ_M0', 'partial factor', 1, 'ratio')] },
      shear: { formula: 'f_d = f / γ_M0', inputs: [given('γ_M0', 'partial factor', 1, 'ratio')] },
    },
    formula: 'f_d = (W_pl/W_el) k f / γ_M0',
    inputs: [
      given('W_pl/W_el', 'classes 1 and 2: plastic', capped, 'ratio'),
      given('k', 'class 4: 90 ε² t/d, in place of EN 1993-1-6', local, 'ratio'),
      given('γ_M0', 'partial factor', 1, 'ratio'),
    ],
    source: 'en1993-1-1:5.5',
  };
}

function aluminium(input: MemberInput): MetalRule {
  const factor = input.basis === 'asce7-asd' ? 1 / 1.65 : input.basis === 'asce7-strength' ? 0.9 : 1 / 1.1;
  return {
    bending: factor,
    compression: factor,
    tension: factor,
    shear: factor,
    formula: 'f = f_o · factor',
    inputs: [given('factor', 'on yield: 1/1.65, φ = 0.9 or 1/1.1', factor, 'ratio')],
    source: input.basis === 'eurocode' ? 'en1999-1-1:6.1' : 'adm:f',
  };
}
