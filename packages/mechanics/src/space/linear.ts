import { factorSparse, solveSparse } from '../sparse-ldl.ts';
import { assembleSpace, emptySpacePass, holdForce, type SpaceShape, still } from './assemble.ts';
import type { SpaceLoads, SpaceModel, SpaceOptions, SpaceResult } from './model.ts';
import { rotationOf, turnBy } from './rotation.ts';
import { forces, layLoads, refused } from './solve.ts';
import { SPACE_DOF, type SpaceSystem, spaceSystem } from './system.ts';

/** Part of the movement over which forces are differenced; their error goes with its square. */
const PART = 1e-4;

/**
 * One linear solution about the starting state: the tangent there (with its stress), the whole change of load at
 * once. Cables count as they stand at the start: those without tension there are left out if they are shorter than
 * at rest, else they push and pull. `displacements`, `elementForces` and `reactions` are those of the end state.
 */
export function linearSpaceFrame(
  model: SpaceModel,
  loads: SpaceLoads,
  options: Pick<SpaceOptions, 'start'> = {},
): SpaceResult {
  const drawn = spaceSystem(model);
  if (typeof drawn === 'string') return refused(model, loads, drawn);
  const shape = options.start ?? still(model.nodes.length);
  if (shape.shifts.length !== 3 * model.nodes.length)
    return refused(model, loads, 'the starting state belongs to another frame');
  const system = spaceSystem(asTheyStand(drawn, shape));
  if (typeof system === 'string') return refused(model, loads, system);
  const target = layLoads(system, loads);
  const before = layLoads(system, options.start?.loads ?? {});
  if (typeof target === 'string') return refused(model, loads, target);
  if (typeof before === 'string') return refused(model, loads, before);
  const pass = emptySpacePass(system);
  const { matrix, dofOf } = system;
  assembleSpace(system, shape, before, pass, true);
  const now = pass.unbalance.slice();
  const pivots = factorSparse(matrix);
  if (pivots.vanished >= 0) {
    const dof = dofOf[pivots.vanished]!;
    const reason = `nothing holds node ${Math.floor(dof / 6)} along ${Object.keys(SPACE_DOF)[dof % 6]}`;
    return { ...refused(model, loads, reason), status: 'mechanism' };
  }
  assembleSpace(system, shape, target, pass, false);
  const change = Float64Array.from(dofOf, (dof) => now[dof]! - pass.unbalance[dof]!);
  solveSparse(matrix, change);
  const move = new Float64Array(6 * system.nodes);
  for (const [q, dof] of dofOf.entries()) move[dof] = change[q]!;

  // Forces go straight with the movement: from the start by the slope between two small parts of it.
  const at = (part: number) => {
    const there = emptySpacePass(system);
    const moved = shifted(shape, move, part);
    assembleSpace(system, moved, target, there, false);
    return { forces: forces(system, there), reactions: reactions(system, moved, there.unbalance) };
  };
  const [start, less, more] = [at(0), at(-PART), at(PART)];
  const straight = (a: number, b: number, c: number): number => a + (c - b) / (2 * PART);
  const numbers = ['axial', 'torsion', 'momentYI', 'momentZI', 'momentYJ', 'momentZJ'] as const;
  return {
    status: pivots.negative > 0 ? 'unstable' : 'converged',
    ...(pivots.negative > 0 ? { reason: 'the starting state is not stable' } : {}),
    loadFactor: 1,
    iterations: 1,
    negativePivots: pivots.negative,
    state: { ...shifted(shape, move, 1), loads },
    displacements: Array.from({ length: system.nodes }, (_, n) => {
      const [dx, dy, dz] = [0, 1, 2].map((c) => shape.shifts[3 * n + c]! + move[6 * n + c]!);
      const [rx, ry, rz] = [3, 4, 5].map((c) => move[6 * n + c]!);
      return { dx: dx!, dy: dy!, dz: dz!, rx: rx!, ry: ry!, rz: rz! };
    }),
    elementForces: start.forces.map((first, k) => {
      const end = { ...first };
      for (const name of numbers)
        end[name] = straight(first[name], less.forces[k]![name], more.forces[k]![name]);
      return end;
    }),
    reactions: start.reactions.map((first, k) => straight(first, less.reactions[k]!, more.reactions[k]!)),
    residual: 0,
    unknowns: matrix.size,
    entries: matrix.entries,
  };
}

/** The model with each cable as a bar, or all but gone where it is slack at the start. */
function asTheyStand(system: SpaceSystem, shape: SpaceShape): SpaceModel {
  const { model } = system;
  if (!model.elements.some((e) => e.tensionOnly)) return model;
  const length = (i: number, j: number) =>
    Math.hypot(
      ...[0, 1, 2].map(
        (c) =>
          system.x[3 * j + c]! + shape.shifts[3 * j + c]! - system.x[3 * i + c]! - shape.shifts[3 * i + c]!,
      ),
    );
  return {
    ...model,
    elements: model.elements.map((e, k) => {
      if (!e.tensionOnly) return e;
      const slack = length(e.i, e.j) < system.members[k]!.rest * (1 - 1e-12);
      return { ...e, tensionOnly: false, truss: true, EA: slack ? 1e-9 * e.EA : e.EA };
    }),
  };
}

function shifted(from: SpaceShape, move: Float64Array, part: number): SpaceShape {
  const shape = { shifts: from.shifts.slice(), rotations: from.rotations.slice() };
  for (let n = 0; 3 * n < shape.shifts.length; n++) {
    for (let c = 0; c < 3; c++) shape.shifts[3 * n + c]! += part * move[6 * n + c]!;
    const [x, y, z] = [move[6 * n + 3]!, move[6 * n + 4]!, move[6 * n + 5]!];
    turnBy(rotationOf(part * x, part * y, part * z), shape.rotations, 9 * n);
  }
  return shape;
}

const reactions = (system: SpaceSystem, shape: SpaceShape, unbalance: Float64Array): number[] =>
  system.model.supports.map((s) =>
    s.kind === 'fixed' ? unbalance[6 * s.node + SPACE_DOF[s.dof]]! : holdForce(s, shape).force,
  );
