import { type Pass, STRIDE } from './assemble.ts';
import type { LoadSet } from './loads.ts';
import type { PlaneElementForces } from './model.ts';
import { BEAM, CABLE, type PlaneSystem } from './system.ts';

/** Element forces from the last pass, with the load between the ends taken into moments and shears. */
export function forcesOf(system: PlaneSystem, pass: Pass, loads: LoadSet): PlaneElementForces[] {
  const forces: PlaneElementForces[] = [];
  for (let e = 0; e < system.elements; e++) {
    const o = STRIDE * e;
    const at = (k: number) => pass.element[o + k]!;
    const L = system.rest[e]!;
    const N = at(0);
    const along = at(9);
    const across = at(8);
    const half = (along * L) / 2;
    const pull = { axial: N, axialI: N + half, axialJ: N - half };
    const slack = system.kind[e] === CABLE && N <= 0;
    if (system.kind[e] !== BEAM) {
      forces.push({
        ...pull,
        momentI: 0,
        momentJ: 0,
        momentMid: 0,
        shearI: (-across * L) / 2,
        shearJ: (across * L) / 2,
        slack,
      });
      continue;
    }
    const l = at(3);
    // the follower acts on the true length, a line load on the unstressed one
    const fixing = ((across - (loads.follower[e]! * l) / L) * L * L + loads.follower[e]! * l * l) / 12;
    const momentI = -(at(1) - fixing);
    const momentJ = at(2) + fixing;
    const lateral = (at(1) + at(2)) / l;
    const share = (across * L) / 2;
    // by statics: end moments, the load between, and the thrust times the bow of the cubic at its middle
    const middle = (momentI + momentJ) / 2 - (across * L * L) / 8 + (N * (at(6) - at(7)) * L) / 8;
    forces.push({
      ...pull,
      momentI,
      momentJ,
      momentMid: middle,
      shearI: lateral - share,
      shearJ: lateral + share,
      slack,
    });
  }
  return forces;
}

/** Force of each support on the frame, in the model's order. */
export function reactionsOf(system: PlaneSystem, pass: Pass): number[] {
  const out = system.model.supports.map(() => 0);
  for (const p of system.prescribed) out[p.support] = pass.unbalance[p.dof]!;
  for (const [n, s] of system.springs.entries()) if (s.support >= 0) out[s.support] = pass.springForce[n]!;
  for (const [n, c] of system.contacts.entries()) out[c.support] = pass.contactForce[n]!;
  return out;
}
