import { vectorOf } from './rotation.ts';
import type { Member, Plane, SpaceSystem } from './system.ts';

const SLACK = 1e-9;

/** What a member feels: filled by `assemble`, read by the result. */
export interface MemberState {
  N: number;
  torque: number;
  /** end actions about z and y with the load between the ends taken off */
  MzI: number;
  MzJ: number;
  MyI: number;
  MyJ: number;
  length: number;
  /** load across, N/m, along local y and z */
  qy: number;
  qz: number;
  /** bow of the member's cubic halfway, m, along local y and z */
  bowY: number;
  bowZ: number;
}

export interface SpacePass {
  readonly unbalance: Float64Array;
  readonly members: MemberState[];
  largest: number;
}

export const emptySpacePass = (system: SpaceSystem): SpacePass => ({
  unbalance: new Float64Array(6 * system.nodes),
  members: system.members.map(() => ({
    N: 0,
    torque: 0,
    MzI: 0,
    MzJ: 0,
    MyI: 0,
    MyJ: 0,
    length: 0,
    qy: 0,
    qz: 0,
    bowY: 0,
    bowZ: 0,
  })),
  largest: 0,
});

export interface SpaceShape {
  readonly shifts: Float64Array;
  readonly rotations: Float64Array;
}

/** Nodal loads (6 a node) and line loads (3 a member). */
export interface SpaceLoadSet {
  readonly nodal: Float64Array;
  readonly line: Float64Array;
}

/** 12x12 in local axes: filled and emptied for each member. */
const local = new Float64Array(144);
const turned = new Float64Array(144);
const force = new Float64Array(12);

/**
 * Unbalanced forces and tangent of the frame in space.
 *
 * Each member is described in axes that ride on its chord, with the mean of its ends' twist (corotational);
 * bowing in both planes shortens it, as in the plane frame. The unbalance is exact in equilibrium; the tangent is
 * the beam-column's in the riding axes with the turning of its end forces, made symmetric.
 * Source: Crisfield, Non-linear Finite Element Analysis 2, ch. 17 (from memory).
 */
export function assembleSpace(
  system: SpaceSystem,
  shape: SpaceShape,
  loads: SpaceLoadSet,
  pass: SpacePass,
  tangent: boolean,
): void {
  const g = pass.unbalance;
  const K = system.matrix.values;
  if (tangent) K.fill(0);
  let largest = 0;
  for (let d = 0; d < g.length; d++) {
    g[d] = -loads.nodal[d]!;
    largest = Math.max(largest, Math.abs(g[d]!) / (d % 6 > 2 ? system.scale : 1));
  }
  for (const [k, member] of system.members.entries()) {
    const state = pass.members[k]!;
    const axes = ride(system, shape, member, state);
    const [wx, wy, wz] = [loads.line[3 * k]!, loads.line[3 * k + 1]!, loads.line[3 * k + 2]!];
    respond(system, shape, member, state, axes, [wx, wy, wz], tangent);
    largest = Math.max(
      largest,
      Math.abs(state.N),
      (Math.abs(wx) + Math.abs(wy) + Math.abs(wz)) * member.rest,
    );
    largest = Math.max(
      largest,
      (Math.abs(state.MzI) + Math.abs(state.MyI) + Math.abs(state.torque)) / state.length,
    );
    for (let block = 0; block < 4; block++)
      for (let row = 0; row < 3; row++) {
        let sum = 0;
        for (let c = 0; c < 3; c++) sum += axes[3 * row + c]! * force[3 * block + c]!;
        const load = block % 2 === 0 ? ([wx, wy, wz][row]! * member.rest) / 2 : 0;
        g[member.dofs[3 * block + row]!]! += sum - load;
      }
    if (tangent) addTurned(member, axes, K);
  }
  pass.largest = largest;
  hold(system, shape, pass, tangent);
}

/** Axes riding on the chord: first along it, second nearest the mean of both ends' second axes. */
function ride(system: SpaceSystem, shape: SpaceShape, member: Member, state: MemberState): Float64Array {
  const i = member.dofs[0]! / 6;
  const j = member.dofs[6]! / 6;
  const { x } = system;
  const { shifts, rotations } = shape;
  const dx = x[3 * j]! + shifts[3 * j]! - x[3 * i]! - shifts[3 * i]!;
  const dy = x[3 * j + 1]! + shifts[3 * j + 1]! - x[3 * i + 1]! - shifts[3 * i + 1]!;
  const dz = x[3 * j + 2]! + shifts[3 * j + 2]! - x[3 * i + 2]! - shifts[3 * i + 2]!;
  const l = Math.hypot(dx, dy, dz);
  state.length = l;
  const a = dx / l;
  const b = dy / l;
  const c = dz / l;
  const second = (at: number) =>
    rotations[at]! * member.axes[1]! +
    rotations[at + 1]! * member.axes[4]! +
    rotations[at + 2]! * member.axes[7]!;
  const mx = second(9 * i) + second(9 * j);
  const my = second(9 * i + 3) + second(9 * j + 3);
  const mz = second(9 * i + 6) + second(9 * j + 6);
  let p = b * mz - c * my;
  let q = c * mx - a * mz;
  let r = a * my - b * mx;
  const size = Math.sqrt(p * p + q * q + r * r) || 1;
  p /= size;
  q /= size;
  r /= size;
  riding.set([a, q * c - r * b, p, b, r * a - p * c, q, c, p * b - q * a, r]);
  return riding;
}

/** The riding axes of the member in hand, as columns, row by row. */
const riding = new Float64Array(9);

/** Rotation of a node against the riding axes, as a vector in them. */
function leanOf(
  shape: SpaceShape,
  member: Member,
  axes: Float64Array,
  node: number,
): [number, number, number] {
  const R = shape.rotations;
  const T = member.axes;
  const out = new Float64Array(9);
  for (let a = 0; a < 3; a++)
    for (let c = 0; c < 3; c++) {
      let sum = 0;
      for (let p = 0; p < 3; p++) {
        let rt = 0;
        for (let k = 0; k < 3; k++) rt += R[9 * node + 3 * p + k]! * T[3 * k + c]!;
        sum += axes[3 * p + a]! * rt;
      }
      out[3 * a + c] = sum;
    }
  return vectorOf(out);
}

interface Bend {
  /** member's own end rotations */
  readonly own: Float64Array;
  /** slope of the bowing against the node rotations */
  readonly slope: Float64Array;
  readonly moment: Float64Array;
}

const bend = (): Bend => ({
  own: new Float64Array(2),
  slope: new Float64Array(2),
  moment: new Float64Array(2),
});

/** Filled for each member in turn. */
const bendZ = bend();
const bendY = bend();

function bendOf(plane: Plane, thetaI: number, thetaJ: number, out: Bend): Bend {
  const dI = plane.startI + thetaI - plane.restI;
  const dJ = plane.startJ + thetaJ - plane.restJ;
  const a = plane.restI + plane.sii * dI + plane.sij * dJ;
  const b = plane.restJ + plane.sji * dI + plane.sjj * dJ;
  const ga = (4 * a - b) / 30;
  const gb = (4 * b - a) / 30;
  out.own[0] = a;
  out.own[1] = b;
  out.slope[0] = plane.sii * ga + plane.sji * gb;
  out.slope[1] = plane.sij * ga + plane.sjj * gb;
  out.moment[0] = plane.kii * dI + plane.kij * dJ;
  out.moment[1] = plane.kij * dI + plane.kjj * dJ;
  return out;
}

const bow = ({ own }: Bend) => {
  const a = own[0]!;
  const b = own[1]!;
  return (2 * a * a - a * b + 2 * b * b) / 30;
};

function respond(
  _system: SpaceSystem,
  shape: SpaceShape,
  member: Member,
  state: MemberState,
  axes: Float64Array,
  w: readonly [number, number, number],
  tangent: boolean,
): void {
  const { EA, GJ, rest: L } = member;
  const l = state.length;
  force.fill(0);
  if (tangent) local.fill(0);
  state.qy = axes[1]! * w[0] + axes[4]! * w[1] + axes[7]! * w[2];
  state.qz = axes[2]! * w[0] + axes[5]! * w[1] + axes[8]! * w[2];
  if (member.truss) {
    let N = EA * (l / L - 1);
    let k = EA / L;
    if (member.cable && N < 0) {
      N *= SLACK;
      k *= SLACK;
    }
    state.N = N;
    force[0] = -N;
    force[6] = N;
    if (tangent) string(k, N / l);
    return;
  }
  const leanI = leanOf(shape, member, axes, member.dofs[0]! / 6);
  const leanJ = leanOf(shape, member, axes, member.dofs[6]! / 6);
  const z = bendOf(member.z, leanI[2], leanJ[2], bendZ);
  const y = bendOf(member.y, leanI[1], leanJ[1], bendY);
  const N = EA * (l / L - 1 + bow(z) + bow(y));
  const torque = (GJ * (leanJ[0] - leanI[0])) / L;
  const fixZ = (state.qy * L * L) / 12;
  const fixY = (-state.qz * L * L) / 12;
  state.N = N;
  state.torque = torque;
  state.MzI = z.moment[0]! + N * L * z.slope[0]! - fixZ * (member.z.sii - member.z.sji);
  state.MzJ = z.moment[1]! + N * L * z.slope[1]! - fixZ * (member.z.sij - member.z.sjj);
  state.MyI = y.moment[0]! + N * L * y.slope[0]! - fixY * (member.y.sii - member.y.sji);
  state.MyJ = y.moment[1]! + N * L * y.slope[1]! - fixY * (member.y.sij - member.y.sjj);
  state.bowY = ((z.own[0]! - z.own[1]!) * L) / 8;
  state.bowZ = ((y.own[1]! - y.own[0]!) * L) / 8;
  const Qy = (state.MzI + state.MzJ) / l;
  const Qz = -(state.MyI + state.MyJ) / l;
  force.set([-N, Qy, Qz, -torque, state.MyI, state.MzI, N, -Qy, -Qz, torque, state.MyJ, state.MzJ]);
  if (tangent) stiffen(member, N, l, z, y, state);
}

function string(k: number, cross: number): void {
  for (const [a, b, sign] of [
    [0, 0, 1],
    [0, 6, -1],
    [6, 0, -1],
    [6, 6, 1],
  ] as const) {
    local[12 * a + b] = sign * k;
    local[12 * (a + 1) + b + 1] = sign * cross;
    local[12 * (a + 2) + b + 2] = sign * cross;
  }
}

/** A linear form of the 12 local dofs: which, and how much of each. */
interface Row {
  readonly dofs: readonly number[];
  readonly parts: Float64Array;
}

const row = (dofs: readonly number[], parts: readonly number[]): Row => ({
  dofs,
  parts: Float64Array.from(parts),
});

/** Stretch, twist, and the end rotations z at i, z at j, y at i, y at j against the chord (unit chord). */
const STRAINS = [
  row([0, 6], [-1, 1]),
  row([3, 9], [-1, 1]),
  row([5, 1, 7], [1, 1, -1]),
  row([11, 1, 7], [1, 1, -1]),
  row([4, 2, 8], [1, -1, 1]),
  row([10, 2, 8], [1, -1, 1]),
] as const;
const STRETCH = STRAINS[0];
/** Spin of the riding axes about x, y, z (unit chord). */
const SPIN_X = row([3, 9], [0.5, 0.5]);
const SPIN_Y = row([2, 8], [1, -1]);
const SPIN_Z = row([1, 7], [-1, 1]);
const ACROSS_Y = row([1, 7], [-1, 1]);
const ACROSS_Z = row([2, 8], [-1, 1]);
const ONLY = Array.from({ length: 12 }, (_, k) => row([k], [1]));

function forChord(l: number): void {
  for (let k = 2; k < 4; k++) {
    STRAINS[k]!.parts[1] = 1 / l;
    STRAINS[k]!.parts[2] = -1 / l;
    STRAINS[k + 2]!.parts[1] = -1 / l;
    STRAINS[k + 2]!.parts[2] = 1 / l;
  }
  SPIN_Y.parts[0] = 1 / l;
  SPIN_Y.parts[1] = -1 / l;
  SPIN_Z.parts[0] = -1 / l;
  SPIN_Z.parts[1] = 1 / l;
}

function outer(p: Row, q: Row, times: number): void {
  if (times === 0) return;
  for (let a = 0; a < p.dofs.length; a++) {
    const at = 12 * p.dofs[a]!;
    const part = times * p.parts[a]!;
    for (let b = 0; b < q.dofs.length; b++) local[at + q.dofs[b]!]! += part * q.parts[b]!;
  }
}

const gradient = new Float64Array(6);

function stiffen(member: Member, N: number, l: number, z: Bend, y: Bend, state: MemberState): void {
  const { EA, GJ, rest: L } = member;
  forChord(l);
  gradient.set([1 / L, 0, z.slope[0]!, z.slope[1]!, y.slope[0]!, y.slope[1]!]);
  for (let p = 0; p < 6; p++)
    for (let q = 0; q < 6; q++) outer(STRAINS[p]!, STRAINS[q]!, EA * L * gradient[p]! * gradient[q]!);
  outer(STRAINS[1], STRAINS[1], GJ / L);
  bendStiffness(member.z, STRAINS[2], STRAINS[3], N * L);
  bendStiffness(member.y, STRAINS[4], STRAINS[5], N * L);
  rideAlong(l, state);
}

/** Bending, and the second derivative of the bowing through the springs. */
function bendStiffness(plane: Plane, i: Row, j: Row, NL: number): void {
  const { sii, sij, sji, sjj } = plane;
  const ii = plane.kii + (NL * (4 * sii * sii - 2 * sii * sji + 4 * sji * sji)) / 30;
  const ij = plane.kij + (NL * (4 * sii * sij - sii * sjj - sji * sij + 4 * sji * sjj)) / 30;
  const jj = plane.kjj + (NL * (4 * sij * sij - 2 * sij * sjj + 4 * sjj * sjj)) / 30;
  outer(i, i, ii);
  outer(i, j, ij);
  outer(j, i, ij);
  outer(j, j, jj);
}

/**
 * End forces and moments turn with the riding axes (their spin times each of them), and the end shears change as
 * the chord grows; made symmetric, what is lost vanishes where the nodes' moments are in balance.
 */
function rideAlong(l: number, state: MemberState): void {
  for (let at = 0; at < 12; at += 3) {
    const px = force[at]!;
    const py = force[at + 1]!;
    const pz = force[at + 2]!;
    outer(ONLY[at]!, SPIN_Y, pz);
    outer(ONLY[at]!, SPIN_Z, -py);
    outer(ONLY[at + 1]!, SPIN_Z, px);
    outer(ONLY[at + 1]!, SPIN_X, -pz);
    outer(ONLY[at + 2]!, SPIN_X, py);
    outer(ONLY[at + 2]!, SPIN_Y, -px);
  }
  outer(ACROSS_Y, STRETCH, (state.MzI + state.MzJ) / (l * l));
  outer(ACROSS_Z, STRETCH, -(state.MyI + state.MyJ) / (l * l));
  for (let r = 0; r < 12; r++)
    for (let c = r + 1; c < 12; c++) {
      const mean = (local[12 * r + c]! + local[12 * c + r]!) / 2;
      local[12 * r + c] = mean;
      local[12 * c + r] = mean;
    }
}

/** Adds the local 12x12, turned into global axes, to the matrix. */
function addTurned(member: Member, axes: Float64Array, K: Float64Array): void {
  for (let r = 0; r < 12; r++)
    for (let block = 0; block < 4; block++)
      for (let c = 0; c < 3; c++) {
        let sum = 0;
        for (let k = 0; k < 3; k++) sum += local[12 * r + 3 * block + k]! * axes[3 * c + k]!;
        turned[12 * r + 3 * block + c] = sum;
      }
  for (let p = 0, at = 0; p < 12; p++) {
    const from = p - (p % 3);
    const row = p % 3;
    for (let q = p; q < 12; q++, at++) {
      const position = member.places[at]!;
      if (position < 0) continue;
      K[position]! +=
        axes[3 * row]! * turned[12 * from + q]! +
        axes[3 * row + 1]! * turned[12 * (from + 1) + q]! +
        axes[3 * row + 2]! * turned[12 * (from + 2) + q]!;
    }
  }
}

/** Springs to ground and contacts. */
function hold(system: SpaceSystem, shape: SpaceShape, pass: SpacePass, tangent: boolean): void {
  const { matrix, equation } = system;
  for (const s of system.model.supports) {
    if (s.kind === 'fixed') continue;
    const { dof, force: push, stiffness } = holdForce(s, shape);
    pass.unbalance[dof]! -= push;
    pass.largest = Math.max(pass.largest, Math.abs(push) / (dof % 6 > 2 ? system.scale : 1));
    const q = equation[dof]!;
    if (tangent && q >= 0) matrix.values[matrix.starts[q + 1]! - 1]! += stiffness;
  }
}

const AXES = { x: 0, y: 1, z: 2, rx: 3, ry: 4, rz: 5 } as const;

export function holdForce(s: SpaceSystem['model']['supports'][number], shape: SpaceShape) {
  const axis = AXES[s.dof];
  const dof = 6 * s.node + axis;
  const moved =
    axis < 3 ? shape.shifts[3 * s.node + axis]! : vectorOf(shape.rotations, 9 * s.node)[axis - 3]!;
  if (s.kind === 'spring') return { dof, force: -s.stiffness! * moved, stiffness: s.stiffness! };
  const direction = s.direction ?? 1;
  const k = s.stiffness ?? 1e7;
  const depth = -direction * moved - (s.gap ?? 0);
  return depth > 0 ? { dof, force: direction * k * depth, stiffness: k } : { dof, force: 0, stiffness: 0 };
}

export const still = (nodes: number): SpaceShape => ({
  shifts: new Float64Array(3 * nodes),
  rotations: Float64Array.from({ length: 9 * nodes }, (_, k) =>
    k % 9 === 0 || k % 9 === 4 || k % 9 === 8 ? 1 : 0,
  ),
});
