import { factorSparse, solveSparse } from '../sparse-ldl.ts';
import {
  assembleSpace,
  emptySpacePass,
  holdForce,
  type SpaceLoadSet,
  type SpacePass,
  type SpaceShape,
  still,
} from './assemble.ts';
import type {
  SpaceElementForces,
  SpaceLoads,
  SpaceModel,
  SpaceOptions,
  SpaceResult,
  SpaceState,
} from './model.ts';
import { rotationOf, turnBy, vectorOf } from './rotation.ts';
import { SPACE_DOF, type SpaceSystem, spaceSystem } from './system.ts';

const BALANCE = 1e-8;
const CORRECTIONS = 40;
const LEAST_STEP = 1 / 256;

/**
 * Equilibrium of a frame in space under `loads`, large movements included. Same rules as the plane frame: every
 * accepted state is in balance and has no negative pivot; what fails is said in the status, nothing is thrown.
 */
export function solveSpaceFrame(
  model: SpaceModel,
  loads: SpaceLoads,
  options: SpaceOptions = {},
): SpaceResult {
  const system = spaceSystem(model);
  if (typeof system === 'string') return refused(model, loads, system);
  const target = layLoads(system, loads);
  const before = layLoads(system, options.start?.loads ?? {});
  if (typeof target === 'string') return refused(model, loads, target);
  if (typeof before === 'string') return refused(model, loads, before);
  const start = options.start;
  if (start && start.shifts.length !== 3 * system.nodes)
    return refused(model, loads, 'the starting state belongs to another frame');
  let shape: SpaceShape = start ?? still(system.nodes);
  const pass = emptySpacePass(system);
  assembleSpace(system, shape, before, pass, false);
  const imbalance = pass.unbalance.slice();
  const most = options.maxIterations ?? 400;
  let step = 1 / Math.max(1, options.steps ?? 1);
  const largest = step;
  let t = 0;
  let iterations = 0;
  let residual = 0;
  let status: SpaceResult['status'] = 'converged';
  let reason = '';
  let negative = 0;
  while (t < 1) {
    if (options.cancelled?.()) {
      status = 'cancelled';
      reason = 'cancelled before the full load was on';
      break;
    }
    const next = t + step > 1 - 1e-9 ? 1 : t + step;
    const tried = walk(system, shape, blend(before, target, next), imbalance, next, pass, most - iterations);
    iterations += tried.iterations;
    if (tried.shape && tried.negative === 0) {
      shape = tried.shape;
      residual = tried.residual;
      t = next;
      step = Math.min(largest, 2 * step);
      continue;
    }
    negative = tried.negative;
    if (step <= LEAST_STEP || iterations >= most || (tried.vanished >= 0 && t === 0)) {
      status = tried.vanished >= 0 ? 'mechanism' : negative > 0 ? 'unstable' : 'diverged';
      reason = explain(system, status, tried.vanished, t);
      break;
    }
    step /= 2;
  }
  const set = t >= 1 ? target : blend(before, target, t);
  assembleSpace(system, shape, set, pass, false);
  const state: SpaceState = { ...shape, loads: t >= 1 ? loads : asLoads(system, set) };
  return {
    status,
    ...(reason ? { reason } : {}),
    loadFactor: t,
    iterations,
    negativePivots: status === 'converged' ? 0 : negative,
    state,
    displacements: Array.from({ length: system.nodes }, (_, n) => {
      const [rx, ry, rz] = vectorOf(shape.rotations, 9 * n);
      return {
        dx: shape.shifts[3 * n]!,
        dy: shape.shifts[3 * n + 1]!,
        dz: shape.shifts[3 * n + 2]!,
        rx,
        ry,
        rz,
      };
    }),
    elementForces: forces(system, pass),
    reactions: model.supports.map((s) =>
      s.kind === 'fixed' ? pass.unbalance[6 * s.node + SPACE_DOF[s.dof]]! : holdForce(s, shape).force,
    ),
    residual,
    unknowns: system.matrix.size,
    entries: system.matrix.entries,
  };
}

interface Walked {
  readonly shape: SpaceShape | undefined;
  readonly iterations: number;
  readonly negative: number;
  readonly vanished: number;
  readonly residual: number;
}

/** Newton's method for one load step. */
function walk(
  system: SpaceSystem,
  from: SpaceShape,
  loads: SpaceLoadSet,
  imbalance: Float64Array,
  t: number,
  pass: SpacePass,
  allowed: number,
): Walked {
  const { matrix, dofOf } = system;
  const shape = { shifts: from.shifts.slice(), rotations: from.rotations.slice() };
  const move = new Float64Array(matrix.size);
  const floor = 4 * 2.220446049250313e-16 * system.noise * Math.sqrt(matrix.size);
  let negative = 0;
  for (let n = 0; n < CORRECTIONS; n++) {
    assembleSpace(system, shape, loads, pass, true);
    let off = 0;
    for (let q = 0; q < matrix.size; q++) {
      const dof = dofOf[q]!;
      move[q] = (1 - t) * imbalance[dof]! - pass.unbalance[dof]!;
      off = Math.max(off, Math.abs(move[q]!) / (dof % 6 > 2 ? system.scale : 1));
    }
    const failed = { shape: undefined, iterations: n, negative, vanished: -1, residual: 0 };
    if (!Number.isFinite(off) || (n >= allowed && n > 0)) return failed;
    const pivots = factorSparse(matrix);
    if (pivots.vanished >= 0) return { ...failed, vanished: pivots.vanished };
    negative = pivots.negative;
    if (n > 0 && off <= Math.max(BALANCE * pass.largest, floor))
      return { shape, iterations: n, negative, vanished: -1, residual: off / (pass.largest || 1) };
    solveSparse(matrix, move);
    let turn = 0;
    for (let q = 0; q < matrix.size; q++) if (dofOf[q]! % 6 > 2) turn = Math.max(turn, Math.abs(move[q]!));
    advance(system, shape, move, turn > 0.5 ? 0.5 / turn : 1);
  }
  return { shape: undefined, iterations: CORRECTIONS, negative, vanished: -1, residual: 0 };
}

function advance(system: SpaceSystem, shape: SpaceShape, move: Float64Array, part: number): void {
  const { equation } = system;
  const of = (dof: number) => (equation[dof]! >= 0 ? part * move[equation[dof]!]! : 0);
  for (let n = 0; n < system.nodes; n++) {
    for (let c = 0; c < 3; c++) shape.shifts[3 * n + c]! += of(6 * n + c);
    const [x, y, z] = [of(6 * n + 3), of(6 * n + 4), of(6 * n + 5)];
    if (x !== 0 || y !== 0 || z !== 0) turnBy(rotationOf(x, y, z), shape.rotations, 9 * n);
  }
}

function explain(system: SpaceSystem, status: SpaceResult['status'], vanished: number, t: number): string {
  if (status === 'mechanism') {
    const dof = system.dofOf[vanished]!;
    return `nothing holds node ${Math.floor(dof / 6)} along ${Object.keys(SPACE_DOF)[dof % 6]}`;
  }
  const share = `${(100 * t).toFixed(0)} % of the load`;
  return status === 'unstable'
    ? `the frame gives way beyond ${share}`
    : `no balance was found beyond ${share}`;
}

export function layLoads(system: SpaceSystem, loads: SpaceLoads): SpaceLoadSet | string {
  const set = {
    nodal: new Float64Array(6 * system.nodes),
    line: new Float64Array(3 * system.members.length),
  };
  for (const l of loads.nodal ?? []) {
    if (!(l.node >= 0 && l.node < system.nodes)) return `a load stands on node ${l.node}, which is not there`;
    const values = [l.fx, l.fy, l.fz, l.mx ?? 0, l.my ?? 0, l.mz ?? 0];
    if (!values.every(Number.isFinite)) return `the load on node ${l.node} is not finite`;
    for (const [d, value] of values.entries()) set.nodal[6 * l.node + d]! += value;
  }
  for (const l of loads.line ?? []) {
    if (!(l.element >= 0 && l.element < system.members.length))
      return `a load stands on element ${l.element}, which is not there`;
    if (![l.wx, l.wy, l.wz].every(Number.isFinite)) return `the load on element ${l.element} is not finite`;
    for (const [d, value] of [l.wx, l.wy, l.wz].entries()) set.line[3 * l.element + d]! += value;
  }
  return set;
}

const blend = (from: SpaceLoadSet, to: SpaceLoadSet, t: number): SpaceLoadSet => ({
  nodal: from.nodal.map((value, k) => value + t * (to.nodal[k]! - value)),
  line: from.line.map((value, k) => value + t * (to.line[k]! - value)),
});

const asLoads = (system: SpaceSystem, { nodal, line }: SpaceLoadSet): SpaceLoads => ({
  nodal: Array.from({ length: system.nodes }, (_, node) => {
    const [fx, fy, fz, mx, my, mz] = nodal.subarray(6 * node, 6 * node + 6);
    return { node, fx: fx!, fy: fy!, fz: fz!, mx, my, mz };
  }),
  line: system.members.map((_, element) => {
    const [wx, wy, wz] = line.subarray(3 * element, 3 * element + 3);
    return { element, wx: wx!, wy: wy!, wz: wz! };
  }),
});

export function forces(system: SpaceSystem, pass: SpacePass): SpaceElementForces[] {
  return pass.members.map((m, k) => {
    const { rest: L, cable } = system.members[k]!;
    const { N, MzI, MzJ, MyI, MyJ, length: l, qy, qz } = m;
    const midZ = (MzJ - MzI) / 2 - (qy * L * L) / 8 + N * m.bowY;
    const midY = (MyI - MyJ) / 2 - (qz * L * L) / 8 + N * m.bowZ;
    const [Vy, Vz] = [(MzI + MzJ) / l, -(MyI + MyJ) / l];
    const shear = Math.max(
      Math.hypot(Vy - (qy * L) / 2, Vz - (qz * L) / 2),
      Math.hypot(Vy + (qy * L) / 2, Vz + (qz * L) / 2),
    );
    return {
      axial: N,
      torsion: m.torque,
      momentYI: MyI,
      momentZI: -MzI,
      momentYJ: -MyJ,
      momentZJ: MzJ,
      momentMid: system.members[k]!.truss ? 0 : Math.hypot(midZ, midY),
      shear,
      slack: cable && N <= 0,
    };
  });
}

export function refused(model: SpaceModel, loads: SpaceLoads, reason: string): SpaceResult {
  return {
    status: 'invalid',
    reason,
    loadFactor: 0,
    iterations: 0,
    negativePivots: 0,
    state: { ...still(model.nodes.length), loads },
    displacements: [],
    elementForces: [],
    reactions: [],
    residual: 0,
    unknowns: 0,
    entries: 0,
  };
}
