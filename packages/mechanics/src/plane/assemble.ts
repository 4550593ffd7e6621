import type { LoadSet } from './loads.ts';
import { BEAM, CABLE, type PlaneSystem, place, SLACK } from './system.ts';

/** What one pass over the frame leaves behind: unbalanced forces, tangent (in the system's matrix), element states. */
export interface Pass {
  /** internal minus external force of every dof; on a prescribed dof this is the support's reaction */
  readonly unbalance: Float64Array;
  /** ten numbers an element: N, Mi, Mj, length, cos, sin, a, b, across (load to the left, N/m), along (N/m) */
  readonly element: Float64Array;
  /** force of each spring and contact on the frame */
  readonly springForce: Float64Array;
  readonly contactForce: Float64Array;
  /** largest force at work, N: what an unbalance is measured against */
  largest: number;
}

export const STRIDE = 10;

export const emptyPass = (system: PlaneSystem): Pass => ({
  unbalance: new Float64Array(system.dofs),
  element: new Float64Array(STRIDE * system.elements),
  springForce: new Float64Array(system.springs.length),
  contactForce: new Float64Array(system.contacts.length),
  largest: 0,
});

/**
 * Unbalanced forces and consistent tangent of the frame displaced by `u`.
 *
 * Beam: corotational, with the bowing term in the mean axial strain
 * e = l/L - 1 + (2a² - ab + 2b²)/30 of the end rotations a, b against the chord, U = EA·L·e²/2 + bending.
 * Source: Crisfield, Non-linear Finite Element Analysis of Solids and Structures 1, ch. 7, and Oran (1973)
 * for the bowing term (both from memory); derived from U, checked in the tests by differences.
 * Line loads act on the cubic shape (consistent). A follower pressure has the potential -p·(area swept);
 * the part of its tangent that is not symmetric is left out: it cancels between equally loaded neighbours.
 */
export function assemble(
  system: PlaneSystem,
  u: Float64Array,
  loads: LoadSet,
  pass: Pass,
  tangent: boolean,
): void {
  const { ends, kind, places, x, EA, EI, rest, chordX, chordY, startA, startB, restA, restB } = system;
  const K = system.matrix.values;
  const g = pass.unbalance;
  const out = pass.element;
  if (tangent) K.fill(0);
  let largest = 0;
  for (let d = 0; d < g.length; d++) {
    g[d] = -loads.nodal[d]!;
    const force = d < 3 * system.nodes && d % 3 < 2 ? Math.abs(g[d]!) : Math.abs(g[d]!) / system.scale;
    if (force > largest) largest = force;
  }
  for (let e = 0; e < system.elements; e++) {
    const b6 = 6 * e;
    const ix = ends[b6]!;
    const jx = ends[b6 + 3]!;
    const ir = ends[b6 + 2]!;
    const jr = ends[b6 + 5]!;
    const L = rest[e]!;
    const nodeI = (2 * ix) / 3;
    const nodeJ = (2 * jx) / 3;
    const dx = x[nodeJ]! - x[nodeI]! + (u[jx]! - u[ix]!);
    const dy = x[nodeJ + 1]! - x[nodeI + 1]! + (u[jx + 1]! - u[ix + 1]!);
    const l = Math.sqrt(dx * dx + dy * dy);
    const c = dx / l;
    const s = dy / l;
    let a = 0;
    let b = 0;
    let N: number;
    let Mi = 0;
    let Mj = 0;
    let kll = EA[e]! / L;
    let kla = 0;
    let klb = 0;
    let kaa = 0;
    let kab = 0;
    let kbb = 0;
    const wx = loads.wx[e]!;
    const wy = loads.wy[e]!;
    const p = loads.follower[e]!;
    const along = c * wx + s * wy;
    const across = c * wy - s * wx;
    if (kind[e] === BEAM) {
      const ux = chordX[e]!;
      const uy = chordY[e]!;
      let turn = Math.atan2(ux * dy - uy * dx, ux * dx + uy * dy);
      const free = u[ir]! - turn;
      if (free > Math.PI || free < -Math.PI) turn += 2 * Math.PI * Math.round(free / (2 * Math.PI));
      a = startA[e]! + u[ir]! - turn;
      b = startB[e]! + u[jr]! - turn;
      N = EA[e]! * (l / L - 1 + (2 * a * a - a * b + 2 * b * b) / 30);
      const ga = (4 * a - b) / 30;
      const gb = (4 * b - a) / 30;
      const stiff = (2 * EI[e]!) / L;
      const da = a - restA[e]!;
      const db = b - restB[e]!;
      Mi = N * L * ga + stiff * (2 * da + db);
      Mj = N * L * gb + stiff * (da + 2 * db);
      const EAL = EA[e]! * L;
      kla = EA[e]! * ga;
      klb = EA[e]! * gb;
      kaa = EAL * ga * ga + (4 * N * L) / 30 + 2 * stiff;
      kbb = EAL * gb * gb + (4 * N * L) / 30 + 2 * stiff;
      kab = EAL * ga * gb - (N * L) / 30 + stiff;
    } else {
      N = EA[e]! * (l / L - 1);
      if (kind[e] === CABLE && N < 0) {
        N *= SLACK;
        kll *= SLACK;
      }
    }
    const o = STRIDE * e;
    out[o] = N;
    out[o + 1] = Mi;
    out[o + 2] = Mj;
    out[o + 3] = l;
    out[o + 4] = c;
    out[o + 5] = s;
    out[o + 6] = a;
    out[o + 7] = b;
    out[o + 8] = across + (p * l) / L;
    out[o + 9] = along;
    // internal forces: along the chord N, across it from the end moments
    let Q = (Mi + Mj) / l;
    let axial = N;
    const bend = a - b;
    let fixing = 0;
    if (wx !== 0 || wy !== 0 || p !== 0) {
      // the load's work on the cubic: C·across·(a - b), and p·l²/12·(a - b) of the follower
      const C = kind[e] === BEAM ? (L * L) / 12 : 0;
      const P = kind[e] === BEAM ? (p * l) / 6 : 0;
      fixing = C * across + (P * l) / 2;
      Q -= (C * along * bend) / l;
      axial -= P * bend;
      const fx = (wx * L - p * dy) / 2;
      const fy = (wy * L + p * dx) / 2;
      g[ix]! -= fx;
      g[ix + 1]! -= fy;
      g[jx]! -= fx;
      g[jx + 1]! -= fy;
      const push = Math.abs(fx) + Math.abs(fy);
      if (push > largest) largest = push;
    }
    const fxi = -axial * c - Q * s;
    const fyi = -axial * s + Q * c;
    g[ix]! += fxi;
    g[ix + 1]! += fyi;
    g[jx]! -= fxi;
    g[jx + 1]! -= fyi;
    if (kind[e] === BEAM) {
      g[ir]! += Mi - fixing;
      g[jr]! += Mj + fixing;
    }
    const size = Math.max(Math.abs(N), Math.abs(Q), (Math.abs(Mi) + Math.abs(Mj)) / l);
    if (size > largest) largest = size;
    if (!tangent) continue;
    // i-part of the chord's direction r = (-c, -s) and of its turning z = (s, -c)
    const il = 1 / l;
    const ksum = (kla + klb) * il;
    let rr = kll;
    let rz = -ksum + (Mi + Mj) * il * il;
    let zz = (kaa + 2 * kab + kbb) * il * il + N * il;
    let iaR = kla;
    let iaZ = -(kaa + kab) * il;
    let ibR = klb;
    let ibZ = -(kab + kbb) * il;
    if (wx !== 0 || wy !== 0 || p !== 0) {
      const C = kind[e] === BEAM ? (L * L) / 12 : 0;
      const P = kind[e] === BEAM ? p / 6 : 0;
      zz += C * across * bend * il * il - P * bend;
      rz += -C * along * bend * il * il;
      rr -= P * bend;
      iaZ += C * along * il;
      ibZ -= C * along * il;
      iaR -= P * l;
      ibR += P * l;
    }
    const txx = rr * c * c - 2 * rz * c * s + zz * s * s;
    const txy = rr * c * s + rz * (c * c - s * s) - zz * c * s;
    const tyy = rr * s * s + 2 * rz * c * s + zz * c * c;
    const hxi = -c * iaR + s * iaZ;
    const hyi = -s * iaR - c * iaZ;
    const hxj = -c * ibR + s * ibZ;
    const hyj = -s * ibR - c * ibZ;
    let at = 21 * e;
    K[places[at++]!]! += txx;
    K[places[at++]!]! += txy;
    K[places[at++]!]! += hxi;
    K[places[at++]!]! += -txx;
    K[places[at++]!]! += -txy + p / 2;
    K[places[at++]!]! += hxj;
    K[places[at++]!]! += tyy;
    K[places[at++]!]! += hyi;
    K[places[at++]!]! += -txy - p / 2;
    K[places[at++]!]! += -tyy;
    K[places[at++]!]! += hyj;
    K[places[at++]!]! += kaa;
    K[places[at++]!]! += -hxi;
    K[places[at++]!]! += -hyi;
    K[places[at++]!]! += kab;
    K[places[at++]!]! += txx;
    K[places[at++]!]! += txy;
    K[places[at++]!]! += -hxj;
    K[places[at++]!]! += tyy;
    K[places[at++]!]! += -hyj;
    K[places[at++]!]! += kbb;
  }
  largest = holdBySprings(system, u, pass, tangent, largest);
  pass.largest = largest;
}

function holdBySprings(
  system: PlaneSystem,
  u: Float64Array,
  pass: Pass,
  tangent: boolean,
  size: number,
): number {
  const g = pass.unbalance;
  const { springs, contacts } = system;
  let largest = size;
  for (let n = 0; n < springs.length; n++) {
    const { a, b, stiffness, rest } = springs[n]!;
    const force = stiffness * ((b < 0 ? rest : u[b]!) - u[a]!);
    pass.springForce[n] = force;
    g[a]! -= force;
    const scaled = a < 3 * system.nodes && a % 3 < 2 ? Math.abs(force) : Math.abs(force) / system.scale;
    if (scaled > largest) largest = scaled;
    if (b >= 0) g[b]! += force;
    if (!tangent) continue;
    stiffen(system, a, a, stiffness);
    if (b >= 0) {
      stiffen(system, a, b, -stiffness);
      stiffen(system, b, b, stiffness);
    }
  }
  for (let n = 0; n < contacts.length; n++) {
    const contact = contacts[n]!;
    const depth = -contact.direction * u[contact.dof]! - contact.gap;
    const force = depth > 0 ? contact.direction * contact.stiffness * depth : 0;
    pass.contactForce[n] = force;
    g[contact.dof]! -= force;
    const scaled = contact.dof % 3 < 2 ? Math.abs(force) : Math.abs(force) / system.scale;
    if (scaled > largest) largest = scaled;
    if (tangent && depth > 0) stiffen(system, contact.dof, contact.dof, contact.stiffness);
  }
  return largest;
}

function stiffen({ matrix, equation }: PlaneSystem, p: number, q: number, k: number): void {
  const position = place(matrix, equation[p]!, equation[q]!);
  if (position >= 0) matrix.values[position]! += k;
}
