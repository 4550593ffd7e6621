import { type Pass, STRIDE } from './assemble.ts';
import type { LoadSet } from './loads.ts';
import type { PlaneElementForces, PlaneResult } from './model.ts';
import { BEAM, CABLE, type PlaneSystem } from './system.ts';

/** Movements of nodes (m, rad) out of a vector that has three numbers for each, one node after the other. */
export function nodeShifts(u: Float64Array, nodes: number): PlaneResult['displacements'] {
  const moved: { dx: number; dy: number; dr: number }[] = [];
  for (let n = 0; n < 3 * nodes; n += 3) moved.push({ dx: u[n]!, dy: u[n + 1]!, dr: u[n + 2]! });
  return moved;
}

/** Element forces from the last pass, with the load between the ends taken into moments and shears. */
export function forcesOf(system: PlaneSystem, pass: Pass, loads: LoadSet): PlaneElementForces[] {
  const forces: PlaneElementForces[] = new Array(system.elements);
  for (let e = 0; e < system.elements; e++) forces[e] = forcesAt(system, pass.element, loads, e);
  return forces;
}

function forcesAt(system: PlaneSystem, at: Float64Array, loads: LoadSet, e: number): PlaneElementForces {
  const o = STRIDE * e;
  const L = system.rest[e]!;
  const axial = at[o]!;
  const across = at[o + 8]!;
  const half = (at[o + 9]! * L) / 2;
  const share = (across * L) / 2;
  const beam = system.kind[e] === BEAM;
  const l = at[o + 3]!;
  // the follower acts on the true length, a line load on the unstressed one
  const p = loads.follower[e]!;
  const fixing = beam ? ((across - (p * l) / L) * L * L + p * l * l) / 12 : 0;
  const momentI = beam ? fixing - at[o + 1]! : 0;
  const momentJ = beam ? fixing + at[o + 2]! : 0;
  const lateral = beam ? (at[o + 1]! + at[o + 2]!) / l : 0;
  // by statics: end moments, the load between, and the thrust times the bow of the cubic at its middle
  const bow = beam ? ((at[o + 6]! - at[o + 7]!) * L) / 8 : 0;
  return {
    axial,
    axialI: axial + half,
    axialJ: axial - half,
    momentI,
    momentJ,
    momentMid: (momentI + momentJ) / 2 - (share * L) / 4 + axial * bow,
    shearI: lateral - share,
    shearJ: lateral + share,
    slack: system.kind[e] === CABLE && axial <= 0,
  };
}

/** Force of each support on the frame, in the model's order. */
export function reactionsOf(system: PlaneSystem, pass: Pass): number[] {
  const out = system.model.supports.map(() => 0);
  for (const p of system.prescribed) out[p.support] = pass.unbalance[p.dof]!;
  for (const [n, s] of system.springs.entries()) if (s.support >= 0) out[s.support] = pass.springForce[n]!;
  for (const [n, c] of system.contacts.entries()) out[c.support] = pass.contactForce[n]!;
  return out;
}
