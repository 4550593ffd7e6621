import { assemble, emptyPass } from './assemble.ts';
import { linearAnswer } from './linear.ts';
import { type LoadSet, layLoads } from './loads.ts';
import type { PlaneLoads, PlaneModel, PlaneOptions, PlaneResult, PlaneStatus } from './model.ts';
import { forcesOf, nodeShifts, reactionsOf } from './result.ts';
import { LIMIT_POINT, openRun, type Run, STRAIGHT, stateOf } from './run.ts';
import { type PlaneSystem, planeSystem } from './system.ts';

/** Smallest load step before the path is given up. */
const LEAST_STEP = 1 / 512;

/**
 * Equilibrium of a plane frame under `loads`, with large rotations, prestress, slack cables and contacts.
 * Loads go on in as few steps as the path allows; every accepted state is in balance (force and energy) and
 * stable (no negative pivot). Never throws for a frame or load that makes no sense: the status says so.
 */
export function solvePlaneFrame(
  model: PlaneModel,
  loads: PlaneLoads,
  options: PlaneOptions = {},
): PlaneResult {
  const system = planeSystem(model);
  if (typeof system === 'string') return invalid(model, loads, system);
  const run = openRun(system, loads, options.start, options.maxIterations ?? 400);
  if (typeof run === 'string') return invalid(model, loads, run);
  if (options.linear) {
    const answer = linearAnswer(system, run, loads);
    if (typeof answer === 'number')
      return report(run, loads, 'mechanism', `nothing holds ${dofName(system, answer)}`);
    return answer;
  }
  let step = 1 / Math.max(1, options.steps ?? 1);
  const largest = step;
  let status: PlaneStatus = 'converged';
  let reason = '';
  // Where the frame answers nearly as its first tangent says, more steps would only find the same shape again.
  if (step < 1 && run.step(1, STRAIGHT) !== 'accepted') run.iterations = 0;
  while (run.t < 1) {
    if (options.cancelled?.()) {
      status = 'cancelled';
      reason = 'cancelled before the full load was on';
      break;
    }
    const target = run.t + step > 1 - 1e-9 ? 1 : run.t + step;
    const outcome = run.step(target);
    if (outcome === 'accepted') {
      step = Math.min(largest, step * 2);
      continue;
    }
    if (outcome === 'spent' || step <= LEAST_STEP) {
      // growing without bound on the way to no balance is a limit point
      const limit = outcome === 'diverged' && run.softening() > LIMIT_POINT;
      const lost = outcome === 'unstable' || outcome === 'jumped' || limit;
      status = outcome === 'mechanism' ? 'mechanism' : lost ? 'unstable' : 'diverged';
      reason = why(system, run, limit ? 'unstable' : outcome);
      break;
    }
    step /= 2;
  }
  return report(run, loads, status, reason);
}

function why(system: PlaneSystem, run: Run, outcome: string): string {
  const share = `${(100 * run.t).toFixed(0)} % of the load`;
  if (outcome === 'mechanism') return `nothing holds ${dofName(system, run.pivots.vanished)}`;
  if (outcome === 'unstable') return `the frame gives way beyond ${share}`;
  if (outcome === 'jumped') return `the frame snaps into another shape beyond ${share}`;
  if (outcome === 'spent') return `no balance within the iterations allowed, at ${share}`;
  return `no balance was found beyond ${share}`;
}

function dofName(system: PlaneSystem, equation: number): string {
  const dof = system.equation.indexOf(equation);
  if (dof >= 3 * system.nodes) return 'the rotation of a member end';
  return `node ${Math.floor(dof / 3)} ${['sideways (x)', 'up and down (y)', 'against turning'][dof % 3]}`;
}

function report(run: Run, loads: PlaneLoads, status: PlaneStatus, reason: string): PlaneResult {
  const { system } = run;
  const negativePivots = status === 'converged' ? 0 : run.pivots.negative;
  const reached = run.t >= 1 ? loads : run.loadsAt(run.t);
  let { pass, loads: set } = run;
  if (status !== 'converged') {
    // the last pass belongs to a step that was not accepted: look again at the accepted shape
    set = layLoads(system, reached) as LoadSet;
    pass = emptyPass(system);
    assemble(system, run.u, set, pass, false);
  }
  return {
    status,
    ...(reason ? { reason } : {}),
    loadFactor: Math.min(1, run.t),
    iterations: run.iterations,
    negativePivots,
    state: stateOf(run, reached),
    displacements: nodeShifts(run.u, system.nodes),
    elementForces: forcesOf(system, pass, set),
    reactions: reactionsOf(system, pass),
    residual: run.residual,
  };
}

function invalid(model: PlaneModel, loads: PlaneLoads, reason: string): PlaneResult {
  return {
    status: 'invalid',
    reason,
    loadFactor: 0,
    iterations: 0,
    negativePivots: 0,
    state: {
      displacements: new Float64Array(3 * model.nodes.length),
      endRotations: new Float64Array(0),
      loads,
    },
    displacements: [],
    elementForces: [],
    reactions: [],
    residual: 0,
  };
}
