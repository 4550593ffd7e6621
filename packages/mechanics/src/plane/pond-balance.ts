import { factor, solveBoth } from '../skyline.ts';
import { assemble } from './assemble.ts';
import { addWater, type Pocket, type PondScene } from './pond.ts';

/** One pond in balance: the displaced frame and its water. */
export interface PondAt {
  readonly u: Float64Array;
  /** m3 */
  readonly volume: number;
  /** surface as y, m; for a dry pond the height of its lowest point */
  readonly level: number;
}

/** No balance, or sudden loss of stability at a fixed amount of water. */
export type NoPond = 'diverged' | 'sudden';

/**
 * Balances nearby are found within ten corrections; what wanders longer comes upon a shape that the path does not lead
 * to, if upon any.
 */
const CORRECTIONS = 16;
const LARGEST_TURN = 0.3;

/**
 * Balance with a given amount of water in a pocket, from a state nearby: Newton's method on shape and level together.
 * With A the surface and c = b·integral of N, the bordered system is K·du + γ·c·dL = r, A·dL - c·du = missing water.
 */
export function balancePond(scene: PondScene, from: PondAt, pocket: Pocket, volume: number): PondAt | NoPond {
  const { system, weight, pass, water } = scene;
  const { matrix, equation } = system;
  const u = from.u.slice();
  const right = new Float64Array(matrix.size);
  const down = new Float64Array(matrix.size);
  const floor = 16 * 2.220446049250313e-16 * system.noise * Math.sqrt(matrix.size);
  let level = from.level;
  for (let n = 0; n < CORRECTIONS; n++) {
    assemble(system, u, scene.loads, pass, true);
    addWater(scene, u, pocket, level);
    let off = 0;
    for (let d = 0; d < system.dofs; d++) {
      const q = equation[d]!;
      if (q < 0) continue;
      right[q] = -pass.unbalance[d]!;
      down[q] = -weight * water.reach[d]!;
      off = Math.max(off, Math.abs(right[q]!) / (d % 3 === 2 ? system.scale : 1));
    }
    if (!Number.isFinite(off) || !(water.surface > 0)) return 'diverged';
    const short = volume - water.volume;
    const pivots = factor(matrix);
    solveBoth(matrix, right, down);
    let had = 0;
    let gives = 0;
    for (let d = 0; d < system.dofs; d++) {
      const q = equation[d]!;
      if (q < 0) continue;
      had += water.reach[d]! * right[q]!;
      gives += water.reach[d]! * down[q]!;
    }
    const border = water.surface - gives;
    const balanced = off <= Math.max(1e-8 * Math.max(pass.largest, weight * volume), floor);
    if (n > 0 && balanced && Math.abs(short) <= 1e-8 * volume + 1e-11 * water.surface) {
      // at a fixed amount of water the bordered matrix of a stable state has exactly one negative pivot
      if (pivots.negative + (border > 0 ? 1 : 0) !== 1) return 'sudden';
      return { u, volume, level };
    }
    const rise = (short + had) / border;
    if (!Number.isFinite(rise)) return 'diverged';
    let turn = 0;
    for (let d = 0; d < system.dofs; d++)
      if (equation[d]! >= 0 && (d % 3 === 2 || d >= 3 * system.nodes))
        turn = Math.max(turn, Math.abs(right[equation[d]!]! + rise * down[equation[d]!]!));
    const part = turn > LARGEST_TURN ? LARGEST_TURN / turn : 1;
    for (let d = 0; d < system.dofs; d++) {
      const q = equation[d]!;
      if (q >= 0) u[d]! += part * (right[q]! + rise * down[q]!);
    }
    level += part * rise;
  }
  return 'diverged';
}
