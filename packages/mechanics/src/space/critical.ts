import type { SpaceLoads, SpaceModel, SpaceOptions, SpaceState } from './model.ts';
import { solveSpaceFrame } from './solve.ts';

export interface SpaceCriticalOptions extends Pick<SpaceOptions, 'maxIterations' | 'cancelled'> {
  /** State to start from. */
  readonly start?: SpaceState | undefined;
  /** Load factor that the starting state already carries: 0 without any of the load, 1 with all of it. */
  readonly from?: number | undefined;
  /** Largest load factor looked at; default 10. */
  readonly cap?: number | undefined;
}

export interface SpaceCriticalPath {
  readonly status: 'gives-way' | 'holds-to-cap' | 'not-found' | 'mechanism' | 'invalid' | 'cancelled';
  readonly reason?: string;
  /** Load factor beyond which the tangent is not positive definite any more, to 1/256 of the way from start to cap. */
  readonly givesWayAt: number | null;
  /** Last factor seen in stable balance. */
  readonly stableAt: number;
  readonly cap: number;
  readonly iterations: number;
}

/**
 * Follows the loads of a space frame upwards, large displacements included, until the frame gives way: by loss of
 * positive definiteness of the tangent (a negative pivot of its L·D·Lᵀ factor, Sylvester's law of inertia). Loads
 * keep their direction. Nothing disturbs a frame that stands perfectly straight: it is followed to the load at which
 * it would branch off.
 */
export function criticalSpacePath(
  model: SpaceModel,
  loads: SpaceLoads,
  options: SpaceCriticalOptions = {},
): SpaceCriticalPath {
  const { start, from = 0, cap = 10, maxIterations = 2000, cancelled } = options;
  const result = solveSpaceFrame(model, times(loads, cap), { start, steps: 8, maxIterations, cancelled });
  const stableAt = from + result.loadFactor * (cap - from);
  const said = { stableAt, cap, iterations: result.iterations };
  const reason = result.reason === undefined ? {} : { reason: result.reason };
  switch (result.status) {
    case 'converged':
      return { status: 'holds-to-cap', givesWayAt: null, ...said };
    case 'unstable':
      return { status: 'gives-way', givesWayAt: stableAt, ...reason, ...said };
    case 'diverged':
      return { status: 'not-found', givesWayAt: null, ...reason, ...said };
    default:
      return { status: result.status, givesWayAt: null, ...reason, ...said };
  }
}

function times({ nodal = [], line = [] }: SpaceLoads, factor: number): SpaceLoads {
  return {
    nodal: nodal.map(({ node, fx, fy, fz, mx = 0, my = 0, mz = 0 }) => ({
      node,
      fx: factor * fx,
      fy: factor * fy,
      fz: factor * fz,
      mx: factor * mx,
      my: factor * my,
      mz: factor * mz,
    })),
    line: line.map(({ element, wx, wy, wz }) => ({
      element,
      wx: factor * wx,
      wy: factor * wy,
      wz: factor * wz,
    })),
  };
}
