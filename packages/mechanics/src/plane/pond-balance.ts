import { factor, solve } from '../skyline.ts';
import { addWater, heights, lowFrom, type PondScene, spillOf } from './pond.ts';

/** One pond in balance: the displaced frame, its water and the brim that holds it. */
export interface PondAt {
  readonly u: Float64Array;
  /** m3 */
  readonly volume: number;
  /** surface as y, m; for a dry pond the height of its lowest point */
  readonly level: number;
  /** index of the lowest point among `heights` */
  readonly low: number;
  /** level at which it runs over, m */
  readonly spill: number;
  /** false where more water lowers the surface */
  readonly levelStable: boolean;
}

/** No balance, sudden loss of stability at a fixed amount of water, or a surface above the brim. */
export type NoPond = 'diverged' | 'sudden' | 'over';

const CORRECTIONS = 40;
const LARGEST_TURN = 0.3;

/**
 * Balance with a given amount of water, from a state with less: Newton's method on shape and level together.
 * With A the surface and c = b·integral of N, the bordered system is K·du + γ·c·dL = r, A·dL - c·du = missing water.
 */
export function balancePond(scene: PondScene, from: PondAt, volume: number): PondAt | NoPond {
  const { system, weight, pass, water } = scene;
  const { matrix, equation } = system;
  const u = from.u.slice();
  const right = new Float64Array(matrix.size);
  const down = new Float64Array(matrix.size);
  const floor = 16 * 2.220446049250313e-16 * system.noise * Math.sqrt(matrix.size);
  let low = from.low;
  let level = from.volume === 0 ? firstLevel(scene, from, volume) : from.level;
  for (let n = 0; n < CORRECTIONS; n++) {
    const y = heights(scene, u);
    low = lowFrom(y, low);
    if (level <= y[low]!) level = y[low]! + 1e-9;
    addWater(scene, u, y, low, level);
    let off = 0;
    for (let d = 0; d < system.dofs; d++) {
      const q = equation[d]!;
      if (q < 0) continue;
      right[q] = -pass.unbalance[d]!;
      down[q] = -weight * water.reach[d]!;
      off = Math.max(off, Math.abs(right[q]!) / (d % 3 === 2 ? system.scale : 1));
    }
    if (!Number.isFinite(off)) return 'diverged';
    const short = volume - water.volume;
    const pivots = factor(matrix);
    solve(matrix, right);
    solve(matrix, down);
    let had = 0;
    let gives = 0;
    for (let d = 0; d < system.dofs; d++) {
      const q = equation[d]!;
      if (q < 0) continue;
      had += water.reach[d]! * right[q]!;
      gives += water.reach[d]! * down[q]!;
    }
    const border = water.surface - gives;
    const balanced = off <= Math.max(1e-9 * Math.max(pass.largest, weight * volume), floor);
    if (n > 0 && balanced && Math.abs(short) <= 1e-9 * volume + 1e-11 * water.surface) {
      // at a fixed amount of water the bordered matrix of a stable state has exactly one negative pivot
      if (pivots.negative + (border > 0 ? 1 : 0) !== 1) return 'sudden';
      const spill = spillOf(y, low);
      if (level > spill + 1e-12) return 'over';
      return { u, volume, level, low, spill, levelStable: pivots.negative === 0 };
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

/** Level at which the unmoved, dry hollow would hold the amount. */
function firstLevel(scene: PondScene, dry: PondAt, volume: number): number {
  const y = heights(scene, dry.u);
  let low = y[dry.low]!;
  let high = dry.spill;
  for (let n = 0; n < 50; n++) {
    const middle = (low + high) / 2;
    addWater(scene, dry.u, y, dry.low, middle);
    if (scene.water.volume < volume) low = middle;
    else high = middle;
  }
  return high;
}
