/** Sinking: bearing capacity under posts, pads and poles. */
import { GRAVITY } from '../rain.ts';
import { given, type Step } from '../step.ts';
import { type GroundResult, groundResult, needPositive } from './ground-result.ts';
import { passiveCoefficient, type SoilClass, soilOf, stateSteps } from './soil.ts';

export interface BearingFactors {
  readonly c: number;
  readonly q: number;
  readonly gamma: number;
}

/** Meyerhof 1963: N_q = e^(π tan φ) K_p, N_c = (N_q - 1) cot φ, N_γ = (N_q - 1) tan 1.4 φ. φ in rad. */
export function meyerhofFactors(friction: number): BearingFactors {
  if (friction <= 0) return { c: 2 + Math.PI, q: 1, gamma: 0 };
  const q = Math.exp(Math.PI * Math.tan(friction)) * passiveCoefficient(friction);
  return { c: (q - 1) / Math.tan(friction), q, gamma: (q - 1) * Math.tan(1.4 * friction) };
}

/** Terzaghi 1943: N_q = e^((3π/2 - φ) tan φ) / (2 cos²(45° + φ/2)), N_c = (N_q - 1) cot φ. φ in rad. */
export function terzaghiFactors(friction: number): { readonly c: number; readonly q: number } {
  if (friction <= 0) return { c: 1.5 * Math.PI + 1, q: 1 };
  const q =
    Math.exp((1.5 * Math.PI - friction) * Math.tan(friction)) /
    (2 * Math.cos(Math.PI / 4 + friction / 2) ** 2);
  return { c: (q - 1) / Math.tan(friction), q };
}

export interface BearingInput {
  readonly soil: SoilClass;
  readonly breadth: number;
  readonly length: number;
  /** Depth of the underside, m. */
  readonly depth: number;
  readonly waterlogged?: boolean | undefined;
}

/**
 * Upright load a footing takes, N: Meyerhof with shape and depth factors, safety 3, and never more than the
 * presumptive pressure of IBC table 1806.2.
 */
export function bearingCapacity(input: BearingInput): GroundResult {
  needPositive({ breadth: input.breadth, length: input.length });
  const soil = soilOf(input.soil, input);
  const b = Math.min(input.breadth, input.length);
  const l = Math.max(input.breadth, input.length);
  const n = meyerhofFactors(soil.friction);
  const kp = passiveCoefficient(soil.friction);
  const granular = soil.friction > 0;
  const shapeC = 1 + (0.2 * kp * b) / l;
  const shapeQ = granular ? 1 + (0.1 * kp * b) / l : 1;
  const depth = Math.min(input.depth, b);
  const depthC = 1 + (0.2 * Math.sqrt(kp) * depth) / b;
  const depthQ = granular ? 1 + (0.1 * Math.sqrt(kp) * depth) / b : 1;
  const pressure =
    soil.shear * n.c * shapeC * depthC +
    soil.unitWeight * input.depth * n.q * shapeQ * depthQ +
    0.5 * soil.unitWeight * b * n.gamma * shapeQ * depthQ;
  const area = b * l;
  const capacity = pressure * area;
  const allowable = Math.min(capacity / 3, soil.bearing * area);
  const presumptive: Step = {
    symbol: 'q_a',
    meaning: 'presumptive bearing pressure',
    formula: 'from the table',
    prose: true,
    inputs: [],
    value: soil.bearing,
    kind: 'stress',
    source: soil.source,
  };
  return groundResult(
    {
      symbol: 'Q_u',
      meaning: 'load at which the footing sinks (in service at most the presumptive pressure)',
      formula: 'Q_u = A (c N_c s_c d_c + ρ g D N_q s_q d_q + ½ ρ g B N_γ s_γ d_γ)',
      inputs: [
        given('A', 'area', area, 'area'),
        given('D', 'depth', input.depth, 'length'),
        given('c', 'shear strength', soil.shear, 'stress'),
        given('ρ', 'density of the soil', soil.unitWeight / GRAVITY, 'density'),
        given('g', 'gravity, N/kg', GRAVITY, 'ratio'),
        given('B', 'width', b, 'length'),
        given('s_c', 'shape factor', shapeC, 'ratio'),
        given('d_c', 'depth factor', depthC, 'ratio'),
        given('s_q', 'shape factor', shapeQ, 'ratio'),
        given('d_q', 'depth factor', depthQ, 'ratio'),
        given('s_γ', 'shape factor', shapeQ, 'ratio'),
        given('d_γ', 'depth factor', depthQ, 'ratio'),
        given('N_c', 'bearing factor', n.c, 'ratio'),
        given('N_q', 'bearing factor', n.q, 'ratio'),
        given('N_γ', 'bearing factor', n.gamma, 'ratio'),
      ],
      value: capacity,
      source: 'meyerhof:1963',
    },
    capacity / allowable,
    input.soil,
    [...stateSteps(input.soil, input), presumptive],
  );
}
