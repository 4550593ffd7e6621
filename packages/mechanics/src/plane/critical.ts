import type { PlaneLoads, PlaneModel, PlaneState } from './model.ts';
import { LIMIT_POINT, openRun, type StepOutcome, stateOf } from './run.ts';
import { planeSystem } from './system.ts';

export interface CriticalOptions {
  /** state to start from; what is scaled is the load added to its own */
  readonly start?: PlaneState | undefined;
  /** largest load factor looked at; default 10 */
  readonly cap?: number | undefined;
  /** how closely the factor is found, as part of itself; default 1e-3 */
  readonly closeness?: number | undefined;
  readonly maxIterations?: number | undefined;
  readonly cancelled?: (() => boolean) | undefined;
}

export interface CriticalPath {
  readonly status: 'gives-way' | 'holds-to-cap' | 'not-found' | 'mechanism' | 'invalid' | 'cancelled';
  readonly reason?: string;
  /** load factor at which the tangent stops being positive definite; null when it holds up to the cap or was not found */
  readonly givesWayAt: number | null;
  /** last factor seen in stable balance, and the state there */
  readonly stableAt: number;
  readonly state: PlaneState | undefined;
  readonly cap: number;
  readonly iterations: number;
}

/**
 * Follows the loads upwards, large displacements included, until the frame gives way: a limit point (snap
 * through) or a bifurcation, whichever comes first, by loss of positive definiteness of the tangent.
 * Dead loads keep their direction, follower pressure does not: the two differ, say which was asked.
 */
export function criticalLoadPath(
  model: PlaneModel,
  loads: PlaneLoads,
  options: CriticalOptions = {},
): CriticalPath {
  const cap = options.cap ?? 10;
  const closeness = options.closeness ?? 1e-3;
  const none = { givesWayAt: null, stableAt: 0, state: options.start, cap, iterations: 0 } as const;
  const system = planeSystem(model);
  if (typeof system === 'string') return { status: 'invalid', reason: system, ...none };
  const run = openRun(system, loads, options.start, options.maxIterations ?? 2000);
  if (typeof run === 'string') return { status: 'invalid', reason: run, ...none };
  let step = Math.min(0.5, cap / 8);
  let failing = Number.POSITIVE_INFINITY;
  let lastFailure: StepOutcome = 'accepted';
  while (run.t < cap) {
    const end = (status: CriticalPath['status'], reason?: string): CriticalPath => ({
      status,
      ...(reason ? { reason } : {}),
      givesWayAt: status === 'gives-way' ? (run.t + failing) / 2 : null,
      stableAt: run.t,
      state: stateOf(run, run.loadsAt(run.t)),
      cap,
      iterations: run.iterations,
    });
    if (options.cancelled?.()) return end('cancelled');
    const target = Math.min(cap, run.t + step, Number.isFinite(failing) ? (run.t + failing) / 2 : cap);
    const outcome = run.step(target);
    if (outcome === 'accepted') {
      step *= 1.6;
    } else if (outcome === 'spent') return end('not-found', 'the iterations allowed are used up');
    else if (outcome === 'mechanism' && run.t === 0 && step < 1e-3) return end('mechanism');
    else {
      failing = target;
      lastFailure = outcome;
      step = (target - run.t) / 2;
    }
    if (failing - run.t <= closeness * Math.max(run.t, closeness))
      return lastFailure === 'diverged' && run.softening() < LIMIT_POINT
        ? end('not-found', `no balance was found beyond ${run.t.toFixed(3)} times the load`)
        : end('gives-way');
    if (failing <= run.t) failing = Number.POSITIVE_INFINITY;
  }
  return {
    status: 'holds-to-cap',
    givesWayAt: null,
    stableAt: run.t,
    state: stateOf(run, run.loadsAt(run.t)),
    cap,
    iterations: run.iterations,
  };
}
