import { factor, multiply, solve } from '../skyline.ts';
import { assemble, emptyPass, type Pass, STRIDE } from './assemble.ts';
import { type LoadSet, layLoads } from './loads.ts';
import type { PlaneLoads, PlaneResult } from './model.ts';
import { forcesOf, nodeShifts, reactionsOf } from './result.ts';
import type { Run } from './run.ts';
import { BEAM, CABLE, type PlaneSystem, SLACK, unheld } from './system.ts';

/**
 * One linear solution about the starting state: tangent there (with its stress), loads and imposed
 * displacements on at once. Cables and contacts count as they stand at the start. Returns the equation of a
 * mechanism when there is one.
 */
export function linearAnswer(system: PlaneSystem, run: Run, loads: PlaneLoads): PlaneResult | number {
  const set = layLoads(system, loads) as LoadSet;
  const free = unheld(system);
  const pass = emptyPass(system);
  // tangent under the starting loads (else answers would not add up), no support held: its product with the movement gives every reaction
  const before = layLoads(system, run.loadsAt(0)) as LoadSet;
  assemble(free, run.u, before, pass, true);
  const whole = { ...free.matrix, values: free.matrix.values.slice() };
  const spread = (du: Float64Array): Float64Array => {
    const v = new Float64Array(whole.size);
    for (let d = 0; d < system.dofs; d++) if (free.equation[d]! >= 0) v[free.equation[d]!] = du[d]!;
    const product = multiply(whole, v);
    const out = new Float64Array(system.dofs);
    for (let d = 0; d < system.dofs; d++) if (free.equation[d]! >= 0) out[d] = product[free.equation[d]!]!;
    return out;
  };
  const du = new Float64Array(system.dofs);
  for (const p of system.prescribed) du[p.dof] = p.value - run.u[p.dof]!;
  const imposed = spread(du);
  assemble(system, run.u, before, pass, true);
  const pivots = factor(system.matrix);
  if (pivots.vanished >= 0) return pivots.vanished;
  assemble(system, run.u, set, pass, false);
  const right = new Float64Array(system.matrix.size);
  for (let d = 0; d < system.dofs; d++)
    if (system.equation[d]! >= 0) right[system.equation[d]!] = -pass.unbalance[d]! - imposed[d]!;
  solve(system.matrix, right);
  for (let d = 0; d < system.dofs; d++) if (system.equation[d]! >= 0) du[d] = right[system.equation[d]!]!;
  const moved = spread(du);
  for (let d = 0; d < system.dofs; d++) pass.unbalance[d]! += moved[d]!;
  moveElements(system, pass, du);
  for (const [n, s] of system.springs.entries())
    pass.springForce[n]! += s.stiffness * ((s.b < 0 ? 0 : du[s.b]!) - du[s.a]!);
  for (const [n, c] of system.contacts.entries())
    if (pass.contactForce[n] !== 0) pass.contactForce[n]! -= c.stiffness * du[c.dof]!;
  let worst = 0;
  for (let d = 0; d < system.dofs; d++)
    if (system.equation[d]! >= 0) worst = Math.max(worst, Math.abs(pass.unbalance[d]!));
  const u = run.u.map((value, d) => value + du[d]!);
  return {
    status: pivots.negative > 0 ? 'unstable' : 'converged',
    ...(pivots.negative > 0 ? { reason: 'the starting state is not stable' } : {}),
    loadFactor: 1,
    iterations: 1,
    negativePivots: pivots.negative,
    state: {
      displacements: u.slice(0, 3 * system.nodes),
      endRotations: u.slice(3 * system.nodes),
      loads,
    },
    displacements: nodeShifts(u, system.nodes),
    elementForces: forcesOf(system, pass, set),
    reactions: reactionsOf(system, pass),
    residual: worst / (pass.largest || 1),
  };
}

/** Adds the linear change of N, Mi, Mj, a and b that a small movement makes to the element states of a pass. */
export function moveElements(system: PlaneSystem, pass: Pass, du: Float64Array): void {
  for (let e = 0; e < system.elements; e++) {
    const o = STRIDE * e;
    const at = pass.element;
    const end = (k: number) => du[system.ends[6 * e + k]!]!;
    const [c, s, l, L] = [at[o + 4]!, at[o + 5]!, at[o + 3]!, system.rest[e]!];
    const stretch = c * (end(3) - end(0)) + s * (end(4) - end(1));
    const EA = system.EA[e]!;
    if (system.kind[e] !== BEAM) {
      const soft = system.kind[e] === CABLE && at[o]! < 0 ? SLACK : 1;
      at[o]! += (soft * EA * stretch) / L;
      continue;
    }
    const turn = (c * (end(4) - end(1)) - s * (end(3) - end(0))) / l;
    const da = end(2) - turn;
    const db = end(5) - turn;
    const [N, a, b] = [at[o]!, at[o + 6]!, at[o + 7]!];
    const ga = (4 * a - b) / 30;
    const gb = (4 * b - a) / 30;
    const dN = EA * (stretch / L + ga * da + gb * db);
    const stiff = (2 * system.EI[e]!) / L;
    at[o]! += dN;
    at[o + 1]! += dN * L * ga + (N * L * (4 * da - db)) / 30 + stiff * (2 * da + db);
    at[o + 2]! += dN * L * gb + (N * L * (4 * db - da)) / 30 + stiff * (da + 2 * db);
    at[o + 6]! += da;
    at[o + 7]! += db;
  }
}
