/** Stress at which a straight member buckles, by family and basis, and bending with thrust. */
import type { Basis } from '../combinations.ts';
import { given, type Step } from '../step.ts';
import type { Family } from './member-input.ts';

export interface ColumnInput {
  readonly family: Family;
  readonly basis: Basis;
  /** Effective length over radius of gyration, K L / r. */
  readonly slenderness: number;
  /** Modulus under this load and heat, Pa. */
  readonly modulus: number;
  /** Metal: yield stress. Wood, bamboo, plastic: allowable or design stress of the short column, Pa. */
  readonly shortColumn: number;
  /** Compressive strength of the material before duration, heat and safety, Pa (`MemberResistance.crushing`). */
  readonly crushing: number;
}

export interface ColumnStress {
  /** Allowable or design axial stress, Pa. */
  readonly stress: number;
  readonly steps: readonly Step[];
  readonly source: string;
  /** Too short to buckle by the rule that was used (EN 1995-1-1: λ_rel ≤ 0.3). */
  readonly stocky: boolean;
}

/** Euler stress π² E / (KL/r)², Pa. */
export function eulerStress(modulus: number, slenderness: number): number {
  return (Math.PI ** 2 * modulus) / slenderness ** 2;
}

/** F_cr of AISC 360 E3 (also AISI S100 E2 in the same form): 0.658^(F_y/F_e) F_y or 0.877 F_e, Pa. */
export function steelColumn(yieldStress: number, modulus: number, slenderness: number): number {
  const euler = eulerStress(modulus, slenderness);
  return yieldStress <= 2.25 * euler ? 0.658 ** (yieldStress / euler) * yieldStress : 0.877 * euler;
}

/** χ of EN 1993-1-1 6.3.1.2 by relative slenderness and imperfection α (0.49 is curve c, cold-formed tube). */
export function bucklingReduction(relative: number, imperfection: number): number {
  if (relative <= 0.2) return 1;
  const phi = 0.5 * (1 + imperfection * (relative - 0.2) + relative ** 2);
  return Math.min(1, 1 / (phi + Math.sqrt(phi * phi - relative * relative)));
}

/** C_P of NDS 3.7.1 from the ratio F_cE/F_c*, c = 0.8 sawn, 0.85 round poles, 0.9 glued; also ISO 22156 9.3, c = 0.8. */
export function timberColumnFactor(ratio: number, c: number): number {
  const a = (1 + ratio) / (2 * c);
  return a - Math.sqrt(a * a - ratio / c);
}

/** E_0,05 over the mean modulus of softwood: EN 338, 7.4 over 11 kN/mm² in class C24. */
const FIFTH_PERCENTILE = 0.67;

/** k_c of EN 1995-1-1 6.3.2 (eq. 6.25 to 6.29) by relative slenderness, β_c = 0.2 of solid timber. */
export function timberInstability(relative: number): number {
  if (relative <= 0.3) return 1;
  const k = 0.5 * (1 + 0.2 * (relative - 0.3) + relative ** 2);
  return 1 / (k + Math.sqrt(k * k - relative * relative));
}

/**
 * C_bow of ISO 22156:2021, 1 - b_o/0.02 for a culm bowed by the share b_o of its length (from memory): the half of one
 * that is a hundredth out of straight, which a builder lets pass. Own choice of the hundredth.
 */
const BAMBOO_BOW = 1 - 0.01 / 0.02;

/** Axial stress a member may have, with every step. Throws a RangeError for a slenderness not above zero. */
export function columnStress(input: ColumnInput): ColumnStress {
  if (!(input.slenderness > 0)) throw new RangeError('a column needs a slenderness above zero');
  const euler = eulerStress(input.modulus, input.slenderness);
  const rule = columnRule(input, euler);
  return {
    stress: rule.stress,
    source: rule.source,
    stocky: rule.stocky === true,
    steps: [
      {
        symbol: 'F_e',
        meaning: 'Euler stress',
        formula: 'F_e = π² E / (K L / r)²',
        inputs: [
          given('E', 'modulus', input.modulus, 'stress'),
          given('K L / r', 'slenderness', input.slenderness, 'ratio'),
        ],
        value: euler,
        kind: 'stress',
        source: 'euler',
      },
      {
        symbol: rule.symbol,
        meaning: 'axial stress it may have',
        formula: rule.formula,
        inputs: [
          ...(rule.inputs ?? []),
          given('F', 'short column', input.shortColumn, 'stress'),
          given('F_e', 'Euler stress', euler, 'stress'),
        ],
        value: rule.stress,
        kind: 'stress',
        source: rule.source,
      },
    ],
  };
}

interface ColumnRule {
  readonly inputs?: Step['inputs'];
  readonly stress: number;
  readonly symbol: string;
  readonly formula: string;
  readonly source: string;
  readonly stocky?: boolean;
}

function columnRule(input: ColumnInput, euler: number): ColumnRule {
  const { family, basis, shortColumn } = input;
  if (family === 'steel' || family === 'aluminium') {
    if (basis === 'eurocode') {
      const chi = bucklingReduction(Math.sqrt(shortColumn / euler), 0.49);
      return {
        stress: chi * shortColumn,
        symbol: 'χ f_y',
        formula:
          'f_a = χ F, χ = min(1, 1 / (Φ + √(Φ² - λ²))), Φ = 0.5 (1 + α (λ - 0.2) + λ²), λ = max(0.2, √(F / F_e))',
        inputs: [given('α', 'imperfection of curve c', 0.49, 'ratio')],
        source: 'en1993-1-1:6.3.1',
      };
    }
    const critical = steelColumn(shortColumn, input.modulus, input.slenderness);
    const factor = basis === 'asce7-asd' ? 1 / 1.8 : 0.85;
    return {
      stress: critical * factor,
      symbol: 'F_n',
      formula: shortColumn <= 2.25 * euler ? 'F_n = φ 0.658^(F / F_e) F' : 'F_n = φ 0.877 F_e',
      inputs: [given('φ', basis === 'asce7-asd' ? 'resistance, 1 / 1.80' : 'resistance', factor, 'ratio')],
      source: 'aisi-s100:e2',
    };
  }
  if (family === 'bamboo') {
    // What duration, heat and safety leave of the strength, they leave of the Euler load.
    const factor = timberColumnFactor((BAMBOO_BOW * euler) / input.crushing, 0.8);
    return {
      stress: factor * shortColumn,
      symbol: 'F_c',
      formula: 'F_c = F (a - √(a² - r / 0.8)), a = (1 + r) / 1.6, r = C_bow F_e / F_0',
      inputs: [
        given('C_bow', 'bow of the culm, 1 in 100', BAMBOO_BOW, 'ratio'),
        given('F_0', 'strength before duration, heat and safety', input.crushing, 'stress'),
      ],
      source: 'iso22156:column',
    };
  }
  if ((family === 'timber' || family === 'green-wood') && basis === 'eurocode') {
    const relative = Math.sqrt(input.crushing / (FIFTH_PERCENTILE * euler));
    return {
      stress: timberInstability(relative) * shortColumn,
      stocky: relative <= 0.3,
      symbol: 'k_c f_c',
      formula:
        relative <= 0.3
          ? 'f_c = F'
          : 'f_c = F / (k + √(k² - λ²)), k = 0.5 (1 + 0.2 (λ - 0.3) + λ²), λ = √(f_k / (s F_e))',
      inputs: [
        given('f_k', 'characteristic strength', input.crushing, 'stress'),
        given('s', 'modulus at the fifth percentile over the mean', FIFTH_PERCENTILE, 'ratio'),
      ],
      source: 'en1995-1-1:6.3.2',
    };
  }
  if (family === 'timber' || family === 'green-wood') {
    const green = family === 'green-wood';
    const asd = basis === 'asce7-asd';
    const c = green ? 0.85 : 0.8;
    // 0.822 E'min = 0.822 · 1.03 E (1 - 1.645 COV)/1.66 with COV = 0.25: 0.365 of π²E/(KL/r)² once in r, not d.
    const reliable = (euler * 1.03 * (1 - 1.645 * 0.25)) / (asd ? 1.66 : 1.66 / 1.5);
    const factor = timberColumnFactor(reliable / shortColumn, c);
    return {
      stress: factor * shortColumn,
      symbol: "F_c'",
      formula: "F_c' = F (a - √(a² - r / c)), a = (1 + r) / (2 c), r = s F_e / F",
      inputs: [
        given('c', green ? 'round poles' : 'sawn timber', c, 'ratio'),
        given(
          's',
          `least modulus over the mean, 1.03 (1 - 1.645 · 0.25) / ${asd ? '1.66' : '1.66 · 1.5'}`,
          reliable / euler,
          'ratio',
        ),
      ],
      source: 'nds:3.7',
    };
  }
  const factor = basis === 'asce7-asd' ? 3 : 2;
  return {
    stress: Math.min(shortColumn, euler / factor),
    symbol: 'F_a',
    formula: `F_a = min(F, F_e / ${factor})`,
    source: 'practice:plastic-euler',
  };
}

export interface ThrustAndBending {
  /** Axial stress demand over allowable, >= 0. */
  readonly axial: number;
  /** Bending stress demand over allowable, both planes added by the caller where both act. */
  readonly bending: number;
  readonly family: Family;
  readonly basis: Basis;
  /** Too short to buckle (EN 1995-1-1 6.3.2: λ_rel ≤ 0.3), so that bending and thrust add as the squares let them. */
  readonly stocky?: boolean;
}

export interface BothUse {
  /** Share of what it may carry at this ratio of thrust to bending: the load may grow by its inverse. */
  readonly utilisation: number;
  /** The sum as the clause writes it: the same side of 1, but squared terms make it no share. */
  readonly clause: number;
  readonly step: Step;
}

/**
 * Utilisation of a member under thrust and bending at once. The bending is expected to come from a
 * second-order analysis, so nothing is magnified here.
 * Steel, US: AISC H1-1. Wood: NDS 3.9.2, (axial)² + bending, with the P-Δ already in; EN 1995-1-1 6.19 with squares
 * for stocky members, 6.23 and 6.24 straight for slender ones. Others: straight sum.
 */
export function thrustAndBending(input: ThrustAndBending): BothUse {
  const { axial, bending } = input;
  const { utilisation, clause, formula, source } = bothRule(input);
  return {
    utilisation,
    clause,
    step: {
      symbol: 'U',
      meaning: 'thrust and bending together: share of the load that brings the member to its limit',
      formula,
      inputs: [
        given('a', 'axial share f_c/F_c', axial, 'ratio'),
        given('b', 'bending share f_b/F_b', bending, 'ratio'),
      ],
      value: utilisation,
      kind: 'percent',
      source,
    },
  };
}

function bothRule({ axial: a, bending: b, family, basis, stocky }: ThrustAndBending): Omit<
  BothUse,
  'step'
> & {
  readonly formula: string;
  readonly source: string;
} {
  if (family === 'steel' && basis !== 'eurocode') {
    const utilisation = Math.max(a + (8 / 9) * b, a / 2 + b);
    return { utilisation, clause: utilisation, formula: 'U = max(a + 8/9 b, a/2 + b)', source: 'aisc360:h1' };
  }
  const wood = family === 'timber' || family === 'green-wood';
  if (wood && (basis !== 'eurocode' || stocky === true))
    return {
      // The U for which (a/U)² + b/U = 1.
      utilisation: (b + Math.sqrt(b * b + 4 * a * a)) / 2,
      clause: a * a + b,
      formula: 'U = (b + √(b² + 4 a²)) / 2',
      source: basis === 'eurocode' ? 'en1995-1-1:6.2.4' : 'nds:3.9',
    };
  return {
    utilisation: a + b,
    clause: a + b,
    formula: 'U = a + b',
    source: basis === 'eurocode' ? (wood ? 'en1995-1-1:6.3.2' : 'en1993-1-1:6.2.1') : 'linear-interaction',
  };
}

/** Peak over average shear stress: thin tube 2 (AISC G5), solid round 4/3, rectangle 3/2. */
export function peakShear(shape: 'round-hollow' | 'round-solid' | 'rectangle'): number {
  return shape === 'round-hollow' ? 2 : shape === 'round-solid' ? 4 / 3 : 1.5;
}
