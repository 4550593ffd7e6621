import { factor, solve } from '../skyline.ts';
import { assemble, emptyPass, STRIDE } from './assemble.ts';
import { linearAnswer, moveElements } from './linear.ts';
import { type LoadSet, layLoads } from './loads.ts';
import type { PlaneLoads, PlaneModel, PlaneState } from './model.ts';
import { openRun } from './run.ts';
import { BEAM, type PlaneSystem, planeSystem } from './system.ts';

export interface BucklingResult {
  readonly status: 'found' | 'none-below-cap' | 'mechanism' | 'unstable-start' | 'invalid';
  readonly reason?: string;
  /** smallest factor on the added load at which K + factor·Kσ is singular; null when none is below the cap */
  readonly factor: number | null;
  /** shape of that mode, largest entry 1: dx, dy, dr of every node */
  readonly mode?: Float64Array;
}

/**
 * Linear eigenvalue buckling by stress stiffness and Sturm counts, about a starting state (default: as drawn,
 * unloaded). Screening only: where cables go slack or the frame softens, `criticalLoadPath` decides.
 * The stress stiffness is that of the linear solution under the added loads; a follower pressure adds its own
 * load stiffness.
 */
export function bucklingFactor(
  model: PlaneModel,
  loads: PlaneLoads,
  options: { readonly start?: PlaneState | undefined; readonly cap?: number | undefined } = {},
): BucklingResult {
  const cap = options.cap ?? 1e6;
  const system = planeSystem(model);
  if (typeof system === 'string') return { status: 'invalid', reason: system, factor: null };
  const run = openRun(system, loads, options.start, 1);
  if (typeof run === 'string') return { status: 'invalid', reason: run, factor: null };
  const answer = linearAnswer(system, run, loads);
  if (typeof answer === 'number') return { status: 'mechanism', factor: null };
  const before = layLoads(system, options.start?.loads ?? {}) as LoadSet;
  const pass = emptyPass(system);
  assemble(system, run.u, before, pass, true);
  const material = system.matrix.values.slice();
  const du = new Float64Array(system.dofs);
  for (let d = 0; d < du.length; d++)
    du[d] =
      (d < 3 * system.nodes
        ? answer.state.displacements[d]!
        : answer.state.endRotations[d - 3 * system.nodes]!) - run.u[d]!;
  const stressed = emptyPass(system);
  stressed.element.set(pass.element);
  moveElements(system, stressed, du);
  const after = layLoads(system, loads) as LoadSet;
  const stress = stressStiffness(system, pass.element, stressed.element, before, after);
  const K = system.matrix.values;
  const negatives = (mu: number): number => {
    for (let k = 0; k < K.length; k++) K[k] = material[k]! + mu * stress[k]!;
    return factor(system.matrix).negative;
  };
  if (negatives(0) > 0) return { status: 'unstable-start', factor: null };
  let low = 0;
  let high = 1e-6;
  while (negatives(high) === 0) {
    low = high;
    high *= 2;
    if (high > cap) return { status: 'none-below-cap', factor: null };
  }
  while (high - low > 1e-9 * high) {
    const middle = (low + high) / 2;
    if (negatives(middle) === 0) low = middle;
    else high = middle;
  }
  return { status: 'found', factor: (low + high) / 2, mode: modeAt(system, negatives, low) };
}

/** Inverse iteration with the matrix just below its singular factor. */
function modeAt(system: PlaneSystem, negatives: (mu: number) => number, mu: number): Float64Array {
  negatives(mu);
  const v = Float64Array.from({ length: system.matrix.size }, (_, q) => Math.sin(1.7 * q + 0.4));
  for (let n = 0; n < 4; n++) {
    solve(system.matrix, v);
    const most = v.reduce((m, value) => Math.max(m, Math.abs(value)), 0);
    for (let q = 0; q < v.length; q++) v[q] = v[q]! / most;
  }
  const mode = new Float64Array(3 * system.nodes);
  for (let d = 0; d < mode.length; d++) if (system.equation[d]! >= 0) mode[d] = v[system.equation[d]!]!;
  let most = 0;
  for (const value of mode) if (Math.abs(value) > Math.abs(most)) most = value;
  return mode.map((value) => (most === 0 ? 0 : value / most));
}

/** Stiffness that comes with a change of stress and load: the geometric terms of the tangent, no others. */
function stressStiffness(
  system: PlaneSystem,
  from: Float64Array,
  to: Float64Array,
  before: LoadSet,
  after: LoadSet,
): Float64Array {
  const out = new Float64Array(system.matrix.values.length);
  for (let e = 0; e < system.elements; e++) {
    const o = STRIDE * e;
    const [N, Mi, Mj] = [0, 1, 2].map((k) => to[o + k]! - from[o + k]!) as [number, number, number];
    const [l, c, s] = [from[o + 3]!, from[o + 4]!, from[o + 5]!];
    const L = system.rest[e]!;
    const p = after.follower[e]! - before.follower[e]!;
    const beam = system.kind[e] === BEAM;
    // load stiffness of the parts of the load that act on the cubic shape, as in `assemble`
    const bend = from[o + 6]! - from[o + 7]!;
    const [wx, wy] = [after.wx[e]! - before.wx[e]!, after.wy[e]! - before.wy[e]!];
    const C = beam ? (L * L) / 12 : 0;
    const along = C * (c * wx + s * wy);
    const across = C * (c * wy - s * wx);
    const rr = beam ? (-p / 6) * bend : 0;
    const kaa = beam ? (4 * N * L) / 30 : 0;
    const kab = beam ? (-N * L) / 30 : 0;
    const zz = (2 * kaa + 2 * kab + across * bend) / (l * l) + N / l + rr;
    const rz = (Mi + Mj - along * bend) / (l * l);
    const zi = (along - kaa - kab) / l;
    const zj = (-along - kaa - kab) / l;
    const P = beam ? (p * l) / 6 : 0;
    const txx = rr * c * c - 2 * rz * c * s + zz * s * s;
    const txy = rr * c * s + rz * (c * c - s * s) - zz * c * s;
    const tyy = rr * s * s + 2 * rz * c * s + zz * c * c;
    const [hxi, hyi] = [c * P + s * zi, s * P - c * zi];
    const [hxj, hyj] = [-c * P + s * zj, -s * P - c * zj];
    const entries = [
      ...[txx, txy, hxi, -txx, -txy + p / 2, hxj, tyy, hyi, -txy - p / 2, -tyy, hyj],
      ...[kaa, -hxi, -hyi, kab, txx, txy, -hxj, tyy, -hyj, kaa],
    ];
    for (const [n, value] of entries.entries()) {
      const at = system.places[21 * e + n]!;
      if (at >= 0) out[at]! += value;
    }
  }
  return out;
}
