import { factor, type Pivots, solve } from '../skyline.ts';
import { assemble, emptyPass, type Pass } from './assemble.ts';
import { between, blend, emptyLoads, type LoadSet, layLoads } from './loads.ts';
import type { PlaneLoads, PlaneState } from './model.ts';
import type { PlaneSystem } from './system.ts';

/** Force, against the largest at work, under which a state counts as in balance. */
const BALANCE = 1e-9;
/** Work of the last correction against the first one's. */
const WORK = 1e-8;
/** Most that a node may turn in one correction, rad. */
const LARGEST_TURN = 0.5;
const CORRECTIONS = 25;
/**
 * How far, as part of it, a step may end from where its first correction pointed; farther off it may have jumped
 * over a limit point onto another branch. `STRAIGHT` is what a way may bend that is taken in one step.
 */
const LEAP = 0.6;
export const STRAIGHT = 0.2;
/** Corrections that a way with so little bend is given. */
const FEW = 8;

/** Softening beyond which a search that finds no balance has met a limit point. */
export const LIMIT_POINT = 5;

export type StepOutcome = 'accepted' | 'unstable' | 'diverged' | 'mechanism' | 'jumped' | 'spent';

/**
 * A walk along an equilibrium path: at t = 0 the starting state, at t = 1 the loads asked for, beyond 1 the
 * added loads carried on. An imbalance of the starting state fades out between 0 and 1.
 */
export interface Run {
  readonly system: PlaneSystem;
  /** accepted shape */
  readonly u: Float64Array;
  readonly pass: Pass;
  readonly loads: LoadSet;
  t: number;
  iterations: number;
  pivots: Pivots;
  residual: number;
  /** movement per load that the last first correction pointed to, over the one at t = 0: grows without end at a limit point */
  readonly softening: () => number;
  /**
   * Tries to reach t; `u` moves only when the step is accepted. A step that ends farther than `bend` (part of the
   * first correction; `LEAP` unless said) from where that pointed has jumped.
   */
  step(t: number, bend?: number): StepOutcome;
  /** the loads that act at t */
  loadsAt(t: number): PlaneLoads;
}

/** Opens a run; a sentence says why the loads or the start do not fit the system. */
export function openRun(
  system: PlaneSystem,
  loads: PlaneLoads,
  start: PlaneState | undefined,
  maxIterations: number,
): Run | string {
  const to = layLoads(system, loads);
  if (typeof to === 'string') return to;
  const from = start ? layLoads(system, start.loads) : emptyLoads(system);
  if (typeof from === 'string') return from;
  const u = new Float64Array(system.dofs);
  if (start) {
    if (start.displacements.length + start.endRotations.length !== system.dofs)
      return 'the starting state belongs to another frame';
    u.set(start.displacements);
    u.set(start.endRotations, start.displacements.length);
  }
  return makeRun(system, from, to, u, maxIterations, (t) => between(start?.loads ?? {}, loads, t));
}

function makeRun(
  system: PlaneSystem,
  from: LoadSet,
  to: LoadSet,
  u: Float64Array,
  maxIterations: number,
  loadsAt: Run['loadsAt'],
): Run {
  const { matrix, prescribed, dofOf, turns } = system;
  const loads = emptyLoads(system);
  const pass = emptyPass(system);
  assemble(system, u, from, pass, false);
  const imbalance = pass.unbalance.slice();
  const size = matrix.size;
  const floor = 4 * 2.220446049250313e-16 * system.noise * Math.sqrt(size);
  const trial = u.slice();
  const move = new Float64Array(size);
  const predictor = new Float64Array(size);
  let rate = 0;
  let rateAtStart = 0;
  const startValues = prescribed.map((p) => u[p.dof]!);

  /** what is out of balance after the last pass, by equations */
  const residual = new Float64Array(size);
  /** reads the residual off the last pass; gives its largest, moments brought to forces */
  const weigh = (t: number): number => {
    const fade = t < 1 ? 1 - t : 0;
    const g = run.pass.unbalance;
    let most = 0;
    for (let q = 0; q < size; q++) {
      const dof = dofOf[q]!;
      const r = fade * imbalance[dof]! - g[dof]!;
      residual[q] = r;
      const value = Math.abs(turns[q] === 1 ? r / system.scale : r);
      if (!(value <= most)) most = value;
    }
    return most;
  };
  /** of the residual on the last move */
  const work = (): number => {
    let sum = 0;
    for (let q = 0; q < size; q++) sum += residual[q]! * move[q]!;
    return sum;
  };
  const apply = (part: number) => {
    for (let q = 0; q < size; q++) trial[dofOf[q]!]! += part * move[q]!;
  };

  /** moves the prescribed dofs and takes their first-order effect into the first correction */
  const prescribe = (t: number): Float64Array | undefined => {
    const at = Math.min(t, 1);
    let moved = 0;
    const delta = new Float64Array(system.dofs);
    for (const [n, p] of prescribed.entries()) {
      const target = startValues[n]! + at * (p.value - startValues[n]!);
      delta[p.dof] = target - trial[p.dof]!;
      moved = Math.max(moved, Math.abs(delta[p.dof]!));
    }
    if (moved === 0) return undefined;
    const h = (1e-6 * Math.min(1, system.scale)) / moved;
    const before = run.pass.unbalance.slice();
    const nudged = trial.slice();
    for (const p of prescribed) nudged[p.dof]! += h * delta[p.dof]!;
    assemble(system, nudged, loads, run.pass, false);
    const effect = new Float64Array(size);
    for (let q = 0; q < size; q++) effect[q] = (run.pass.unbalance[dofOf[q]!]! - before[dofOf[q]!]!) / h;
    for (const p of prescribed) trial[p.dof]! += delta[p.dof]!;
    run.pass.unbalance.set(before);
    return effect;
  };

  const run: Run = {
    system,
    u,
    pass,
    loads,
    t: 0,
    iterations: 0,
    pivots: { negative: 0, vanished: -1 },
    residual: 0,
    loadsAt,
    softening: () => (rateAtStart > 0 ? rate / rateAtStart : 1),
    step(t, bend = LEAP) {
      const most = bend < LEAP ? FEW : CORRECTIONS;
      trial.set(u);
      blend(loads, from, to, t);
      let firstWork = 0;
      let effect: Float64Array | undefined;
      for (let n = 0; n < most; n++) {
        assemble(system, trial, loads, run.pass, true);
        if (n === 0) effect = prescribe(t);
        const out = weigh(t);
        if (!Number.isFinite(out)) return 'diverged';
        const limit = Math.max(BALANCE * run.pass.largest, floor);
        const still = WORK * firstWork + 1e-9 * limit * system.scale;
        if (n > 0 && out <= limit && Math.abs(work()) <= still) return settle(t, out, bend);
        if (run.iterations >= maxIterations) return 'spent';
        run.iterations++;
        const pivots = factor(matrix);
        if (pivots.vanished >= 0) {
          run.pivots = pivots;
          return 'mechanism';
        }
        move.set(residual);
        if (effect) for (let q = 0; q < size; q++) move[q]! -= effect[q]!;
        effect = undefined;
        solve(matrix, move);
        let turn = 0;
        for (let q = 0; q < size; q++) if (turns[q] === 1) turn = Math.max(turn, Math.abs(move[q]!));
        if (turn > LARGEST_TURN) for (let q = 0; q < size; q++) move[q]! *= LARGEST_TURN / turn;
        const start = work();
        if (n === 0) {
          firstWork = Math.abs(start);
          predictor.set(move);
          let reach = 0;
          for (let q = 0; q < size; q++) reach = Math.max(reach, Math.abs(move[q]!));
          rate = reach / (t - run.t);
          if (run.t === 0) rateAtStart = rate;
        }
        apply(1);
        if (n > 0 && bend < LEAP && leapt(bend)) return 'jumped';
        if (n >= 6) soften(t, start);
      }
      return 'diverged';
    },
  };

  /** After several corrections a contact or a slack cable may chatter: shorten the move until its work falls. */
  const soften = (t: number, start: number) => {
    let part = 1;
    for (let k = 0; k < 4; k++) {
      assemble(system, trial, loads, run.pass, false);
      weigh(t);
      if (Math.abs(work()) <= 0.8 * Math.abs(start)) return;
      apply(-part / 2);
      part /= 2;
    }
  };

  const settle = (t: number, out: number, bend: number): StepOutcome => {
    const pivots = factor(matrix);
    run.pivots = pivots;
    if (pivots.vanished >= 0) return 'mechanism';
    if (pivots.negative > 0) return 'unstable';
    if (leapt(bend)) return 'jumped';
    u.set(trial);
    run.t = t;
    run.residual = out / (run.pass.largest || 1);
    return 'accepted';
  };

  const leapt = (bend: number): boolean => {
    let farTurn = 0;
    let farShift = 0;
    let turn = 0;
    let shift = 0;
    for (let q = 0; q < size; q++) {
      const dof = dofOf[q]!;
      const off = Math.abs(trial[dof]! - u[dof]! - predictor[q]!);
      const reach = Math.abs(predictor[q]!);
      if (turns[q] === 1) {
        if (off > farTurn) farTurn = off;
        if (reach > turn) turn = reach;
      } else {
        if (off > farShift) farShift = off;
        if (reach > shift) shift = reach;
      }
    }
    return farTurn > bend * turn + 0.005 || farShift > bend * shift + 0.005 * system.scale;
  };

  return run;
}

export const stateOf = (run: Run, loads: PlaneLoads): PlaneState => ({
  displacements: run.u.slice(0, 3 * run.system.nodes),
  endRotations: run.u.slice(3 * run.system.nodes),
  loads,
});
