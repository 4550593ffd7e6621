import { WATER } from '../ponding.ts';
import { factor, solve } from '../skyline.ts';
import { assemble, emptyPass } from './assemble.ts';
import { type LoadSet, layLoads } from './loads.ts';
import type { PlaneElementForces, PlaneLoads, PlaneModel, PlaneState } from './model.ts';
import {
  addWater,
  basins,
  type Dip,
  emptyWater,
  heights,
  lowFrom,
  type RoofLine,
  spillOf,
  wetMatrix,
} from './pond.ts';
import { forcesOf, reactionsOf } from './result.ts';
import { solvePlaneFrame } from './solve.ts';
import { BEAM, type PlaneSystem, planeSystem } from './system.ts';

export interface PondingRoof extends RoofLine {
  /** what acts besides standing water: weight, film pull, hung crop */
  readonly baseLoads: PlaneLoads;
}

export interface PondingOptions {
  /** state to start from (the locked-in state of a sprung bow) */
  readonly start?: PlaneState | undefined;
  /** hollow of skin or setting out that starts a pond; without one a perfect line may never hold water */
  readonly dip?: Dip | undefined;
  /** depth of the sheet of rain running over the line, m, acting all along it; default 0 */
  readonly sheet?: number | undefined;
  /** water that can come, m3; default: as much as stays */
  readonly maxVolume?: number | undefined;
  /** pond depth at which growth counts as runaway, m; default an eighth of the line's width on plan */
  readonly deepest?: number | undefined;
  /** N/m3 */
  readonly weight?: number | undefined;
  readonly cancelled?: (() => boolean) | undefined;
}

export interface PondingAnswer {
  /**
   * drains: no low place holds water. bounded: the pond fills to its brim and runs over, or all the water there
   * is stands stably. runaway: every litre lowers the brim faster than it fills. not-converged: no balance found,
   * the frame did not even carry its base loads, or the input makes no sense (see reason).
   */
  readonly verdict: 'drains' | 'bounded' | 'runaway' | 'not-converged' | 'cancelled';
  readonly reason?: string;
  /** water standing at the end of the path, m3 */
  readonly volume: number;
  /** its greatest depth, m, and its surface level as y, m */
  readonly depth: number;
  readonly level: number;
  /** where its lowest point is, as x, m */
  readonly at: number;
  /** amount of water from which more water lowers the surface, m3: growth feeds on itself */
  readonly waterAtRunaway?: number;
  readonly state: PlaneState;
  readonly elementForces: readonly PlaneElementForces[];
  readonly reactions: readonly number[];
  /** largest bending moment in the frame at the end, N·m, and the element it is in */
  readonly peakMoment: number;
  readonly peakElement: number;
  /** the way there */
  readonly path: readonly { readonly volume: number; readonly level: number; readonly depth: number }[];
}

/** A hollow shallower than this, m, is wetness, not a pond. */
const SMALLEST_POND = 1e-4;

/**
 * Rain on a roof line: base loads first, then water in steps into every local low place (each by itself), the
 * water following the deflected shape. The amount of water is the controlled quantity and its level an unknown,
 * so the path is followed past the point where level control would fail. Stability is checked at every step.
 */
export function pondingPath(
  model: PlaneModel,
  roof: PondingRoof,
  options: PondingOptions = {},
): PondingAnswer {
  const system = planeSystem(model);
  const fault = typeof system === 'string' ? system : roofFault(system, roof);
  if (typeof system === 'string' || fault) return nothing(model, 'not-converged', fault ?? '');
  const weight = options.weight ?? WATER;
  const base = withSheet(system, roof, weight * (options.sheet ?? 0));
  const dry = solvePlaneFrame(model, base, { start: options.start });
  if (dry.status !== 'converged')
    return nothing(model, 'not-converged', `without standing water: ${dry.reason ?? dry.status}`);
  const pond = new Pond(system, roof, layLoads(system, base) as LoadSet, dry.state, options, weight);
  const places = basins(pond.shape(), SMALLEST_POND);
  if (places.length === 0) return pond.answer('drains');
  const rank = { runaway: 4, 'not-converged': 3, cancelled: 2, bounded: 1, drains: 0 } as const;
  let worst: PondingAnswer | undefined;
  for (const { low } of places) {
    const filled = new Pond(system, roof, layLoads(system, base) as LoadSet, dry.state, options, weight).fill(
      low,
    );
    const more = worst ? rank[filled.verdict] - rank[worst.verdict] || filled.volume - worst.volume : 1;
    if (more > 0) worst = filled;
  }
  return worst!;
}

/**
 * How many times heavier water would have to be for the roof line, wet all along, to pond without end: smallest
 * factor on γ at which the tangent less γ·b·∫N·Nᵀ is singular. Below 1 the line is ponding-critical. Infinity
 * when no factor up to 1e6 does it. Null when the starting state itself is not stable.
 */
export function pondingFactor(
  model: PlaneModel,
  roof: RoofLine,
  start?: PlaneState,
  weight = WATER,
): number | null {
  const system = planeSystem(model);
  if (typeof system === 'string' || roofFault(system, roof)) return null;
  const u = new Float64Array(system.dofs);
  if (start) u.set([...start.displacements, ...start.endRotations]);
  const loads = layLoads(system, start?.loads ?? {});
  if (typeof loads === 'string') return null;
  const pass = emptyPass(system);
  assemble(system, u, loads, pass, true);
  const stiff = system.matrix.values.slice();
  const wet = wetMatrix(system, u, pass, roof);
  const stable = (times: number): boolean => {
    for (let k = 0; k < stiff.length; k++) system.matrix.values[k] = stiff[k]! - times * weight * wet[k]!;
    const pivots = factor(system.matrix);
    return pivots.negative === 0 && pivots.vanished < 0;
  };
  if (!stable(0)) return null;
  let low = 0;
  let high = 1e-6;
  while (stable(high)) {
    low = high;
    high *= 2;
    if (high > 1e6) return Number.POSITIVE_INFINITY;
  }
  while (high - low > 1e-10 * high) {
    const middle = (low + high) / 2;
    if (stable(middle)) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function roofFault(system: PlaneSystem, roof: RoofLine): string | undefined {
  if (!(roof.breadth > 0 && Number.isFinite(roof.breadth))) return 'the roof line drains no breadth';
  if (roof.elements.length === 0) return 'the roof line has no members';
  for (const [n, e] of roof.elements.entries()) {
    if (!(e >= 0 && e < system.elements)) return `the roof line names element ${e}, which is not there`;
    if (system.kind[e] !== BEAM) return `element ${e} of the roof line does not bend`;
    if (n > 0 && system.model.elements[roof.elements[n - 1]!]!.j !== system.model.elements[e]!.i)
      return 'the roof line is not one continuous line';
  }
  return undefined;
}

/** The base loads and a sheet of water `pressure` (Pa on plan) along the line. */
function withSheet(system: PlaneSystem, roof: PondingRoof, pressure: number): PlaneLoads {
  if (!(pressure > 0)) return roof.baseLoads;
  const line = roof.elements.map((element) => ({
    element,
    wx: 0,
    wy: (-pressure * roof.breadth * Math.abs(system.chordX[element]!)) / system.rest[element]!,
  }));
  return { ...roof.baseLoads, line: [...(roof.baseLoads.line ?? []), ...line] };
}

function nothing(model: PlaneModel, verdict: PondingAnswer['verdict'], reason: string): PondingAnswer {
  const state = {
    displacements: new Float64Array(3 * model.nodes.length),
    endRotations: new Float64Array(0),
    loads: {},
  };
  return {
    verdict,
    reason,
    volume: 0,
    depth: 0,
    level: 0,
    at: 0,
    state,
    elementForces: [],
    reactions: [],
    peakMoment: 0,
    peakElement: -1,
    path: [],
  };
}

/** One pond on its way from dry to full. */
class Pond {
  readonly #system: PlaneSystem;
  readonly #roof: PondingRoof;
  readonly #loads: LoadSet;
  readonly #base: PlaneLoads;
  readonly #options: PondingOptions;
  readonly #weight: number;
  readonly #pass;
  readonly #water;
  #u: Float64Array;
  #level = 0;
  #low = 0;
  #spill = 0;
  #volume = 0;
  #levelStable = true;
  readonly #path: { volume: number; level: number; depth: number }[] = [];

  constructor(
    system: PlaneSystem,
    roof: PondingRoof,
    loads: LoadSet,
    dry: PlaneState,
    options: PondingOptions,
    weight: number,
  ) {
    this.#system = system;
    this.#roof = roof;
    this.#loads = loads;
    this.#base = dry.loads;
    this.#options = options;
    this.#weight = weight;
    this.#u = new Float64Array(system.dofs);
    this.#u.set(dry.displacements);
    this.#u.set(dry.endRotations, dry.displacements.length);
    this.#pass = emptyPass(system);
    this.#water = emptyWater(system, roof);
    assemble(system, this.#u, loads, this.#pass, false);
  }

  shape(): Float64Array {
    return heights(this.#system, this.#u, this.#pass, this.#roof, this.#options.dip);
  }

  fill(low: number): PondingAnswer {
    const y = this.shape();
    this.#low = low;
    this.#spill = spillOf(y, low);
    this.#level = y[low]!;
    const plan = this.#roof.elements.reduce((sum, e) => sum + Math.abs(this.#system.chordX[e]!), 0);
    const deepest = this.#options.deepest ?? plan / 8;
    const most = this.#options.maxVolume ?? Number.POSITIVE_INFINITY;
    const brim = this.#brimVolume(y);
    let step = Math.min(brim / 8, most);
    const least = brim * 1e-4;
    let waterAtRunaway: number | undefined;
    const runaway = (reason: string) => this.answer('runaway', reason, waterAtRunaway ?? this.#volume);
    for (let tries = 0; tries < 600; tries++) {
      if (this.#options.cancelled?.()) return this.answer('cancelled');
      const target = Math.min(most, this.#volume + step);
      const tried = this.#tryVolume(target);
      if (tried === 'sudden' && step <= Math.max(least, 0.005 * this.#volume))
        return runaway('the frame gives way at once under this much water');
      if (tried === 'diverged' && step <= least / 16)
        return waterAtRunaway === undefined
          ? this.answer('not-converged', 'no balance was found with more water')
          : runaway('the pond grows until no balance is found');
      if (tried === 'over' && step <= Math.max(least, 1e-3 * this.#volume))
        return this.answer('bounded', 'the pond fills to its brim and runs over');
      if (typeof tried === 'string') {
        step /= 2;
        continue;
      }
      // the first step on which level control is lost is narrowed down before it is taken
      if (!tried.levelStable && this.#levelStable && step > Math.max(0.01 * this.#volume, least)) {
        step /= 2;
        continue;
      }
      if (!tried.levelStable) waterAtRunaway ??= target;
      else waterAtRunaway = undefined;
      this.#accept(target, tried);
      if (this.#depth() > deepest) return runaway('the pond grows past the depth looked at');
      if (target >= most) return this.answer('bounded', 'all the water there is stands');
      step = Math.min(step * 1.5, Math.max(this.#volume / 3, brim / 8));
    }
    return this.answer('not-converged', 'the pond was not followed to its end');
  }

  #brimVolume(y: Float64Array): number {
    assemble(this.#system, this.#u, this.#loads, this.#pass, true);
    addWater(
      this.#system,
      this.#u,
      this.#pass,
      this.#roof,
      this.#options.dip,
      y,
      this.#low,
      this.#spill,
      this.#weight,
      this.#water,
    );
    return this.#water.volume;
  }

  #depth(): number {
    return this.#level - this.shape()[this.#low]!;
  }

  #accept(volume: number, tried: Tried): void {
    this.#u = tried.u;
    this.#volume = volume;
    this.#level = tried.level;
    this.#low = tried.low;
    this.#spill = tried.spill;
    this.#levelStable = tried.levelStable;
    assemble(this.#system, this.#u, this.#loads, this.#pass, true);
    const y = this.shape();
    addWater(
      this.#system,
      this.#u,
      this.#pass,
      this.#roof,
      this.#options.dip,
      y,
      this.#low,
      this.#level,
      this.#weight,
      this.#water,
    );
    this.#path.push({ volume, level: this.#level, depth: this.#depth() });
  }

  /** Newton on shape and level together for a given amount of water. */
  #tryVolume(volume: number): Tried | 'diverged' | 'sudden' | 'over' {
    const system = this.#system;
    const { matrix, equation } = system;
    const { weight, roof, dip } = { weight: this.#weight, roof: this.#roof, dip: this.#options.dip };
    const u = this.#u.slice();
    const pass = this.#pass;
    const water = this.#water;
    let low = this.#low;
    let level = this.#level;
    const right = new Float64Array(matrix.size);
    const lift = new Float64Array(matrix.size);
    if (this.#volume === 0) level = this.#firstLevel(volume);
    const floor = 4e-16 * system.noise * Math.sqrt(matrix.size) * 4;
    for (let n = 0; n < 40; n++) {
      assemble(system, u, this.#loads, pass, true);
      const y = heights(system, u, pass, roof, dip);
      low = lowFrom(y, low);
      if (level <= y[low]!) level = y[low]! + 1e-9;
      addWater(system, u, pass, roof, dip, y, low, level, weight, water);
      for (let d = 0; d < system.dofs; d++) {
        const q = equation[d]!;
        if (q < 0) continue;
        right[q] = -pass.unbalance[d]!;
        lift[q] = -weight * water.reach[d]!;
      }
      let off = 0;
      for (let d = 0; d < system.dofs; d++)
        if (equation[d]! >= 0)
          off = Math.max(off, Math.abs(pass.unbalance[d]!) / (d % 3 === 2 ? system.scale : 1));
      if (!Number.isFinite(off)) return 'diverged';
      const short = volume - water.volume;
      const pivots = factor(matrix);
      const down = lift.slice();
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
      // water.surface·dL - reach·du = short, du = right + dL·down
      const schur = water.surface - gives;
      const balanced = off <= Math.max(1e-9 * Math.max(pass.largest, weight * volume), floor);
      if (n > 0 && balanced && Math.abs(short) <= 1e-9 * volume + 1e-11 * water.surface) {
        // negative pivots of the bordered matrix: exactly one when stable at a given amount of water
        if (pivots.negative + (schur > 0 ? 1 : 0) !== 1) return 'sudden';
        const spill = spillOf(y, low);
        if (level > spill + 1e-12) return 'over';
        return { u, level, low, spill, levelStable: pivots.negative === 0 };
      }
      const rise = (short + had) / schur;
      if (!Number.isFinite(rise)) return 'diverged';
      let turn = 0;
      for (let d = 0; d < system.dofs; d++)
        if (equation[d]! >= 0 && (d % 3 === 2 || d >= 3 * system.nodes))
          turn = Math.max(turn, Math.abs(right[equation[d]!]! + rise * down[equation[d]!]!));
      const part = turn > 0.3 ? 0.3 / turn : 1;
      for (let d = 0; d < system.dofs; d++) {
        const q = equation[d]!;
        if (q >= 0) u[d]! += part * (right[q]! + rise * down[q]!);
      }
      level += part * rise;
    }
    return 'diverged';
  }

  /** Level at which a still dry basin of unmoved shape holds the amount. */
  #firstLevel(volume: number): number {
    assemble(this.#system, this.#u, this.#loads, this.#pass, true);
    const y = this.shape();
    let low = y[this.#low]!;
    let high = this.#spill;
    for (let n = 0; n < 50; n++) {
      const middle = (low + high) / 2;
      addWater(
        this.#system,
        this.#u,
        this.#pass,
        this.#roof,
        this.#options.dip,
        y,
        this.#low,
        middle,
        this.#weight,
        this.#water,
      );
      if (this.#water.volume < volume) low = middle;
      else high = middle;
    }
    return high;
  }

  answer(verdict: PondingAnswer['verdict'], reason?: string, waterAtRunaway?: number): PondingAnswer {
    const system = this.#system;
    const wet = this.#volume > 0;
    // the last try may not have been accepted: look again at the accepted shape
    assemble(system, this.#u, this.#loads, this.#pass, true);
    const y = this.shape();
    if (wet)
      addWater(
        system,
        this.#u,
        this.#pass,
        this.#roof,
        this.#options.dip,
        y,
        this.#low,
        this.#level,
        this.#weight,
        this.#water,
      );
    const set: LoadSet = { ...this.#loads, wy: this.#loads.wy.slice() };
    const line: { element: number; wx: number; wy: number }[] = [];
    if (wet)
      for (const [n, e] of this.#roof.elements.entries()) {
        const share = (-this.#weight * this.#water.share[n]!) / system.rest[e]!;
        set.wy[e]! += share;
        if (share !== 0) line.push({ element: e, wx: 0, wy: share });
      }
    const reactions = reactionsOf(system, this.#pass);
    // the pass's element states under the loads with the water spread evenly over each member
    const even = emptyPass(system);
    assemble(system, this.#u, set, even, false);
    const elementForces = forcesOf(system, even, set);
    let peakMoment = 0;
    let peakElement = -1;
    for (const [e, f] of elementForces.entries()) {
      const most = Math.max(Math.abs(f.momentI), Math.abs(f.momentJ), Math.abs(f.momentMid));
      if (most > peakMoment) {
        peakMoment = most;
        peakElement = e;
      }
    }
    return {
      verdict,
      ...(reason ? { reason } : {}),
      ...(waterAtRunaway === undefined ? {} : { waterAtRunaway }),
      volume: this.#volume,
      depth: wet ? this.#depth() : 0,
      level: wet ? this.#level : y[this.#low]!,
      at: this.#xAt(this.#low),
      state: {
        displacements: this.#u.slice(0, 3 * system.nodes),
        endRotations: this.#u.slice(3 * system.nodes),
        loads: { ...this.#base, line: [...(this.#base.line ?? []), ...line] },
      },
      elementForces,
      reactions,
      peakMoment,
      peakElement,
      path: this.#path,
    };
  }

  #xAt(index: number): number {
    const parts = (this.shape().length - 1) / this.#roof.elements.length;
    const n = Math.min(this.#roof.elements.length - 1, Math.floor(index / parts));
    const { i, j } = this.#system.model.elements[this.#roof.elements[n]!]!;
    const x = (node: number) => this.#system.x[2 * node]! + this.#u[3 * node]!;
    return x(i) + ((index - n * parts) / parts) * (x(j) - x(i));
  }
}

interface Tried {
  readonly u: Float64Array;
  readonly level: number;
  readonly low: number;
  readonly spill: number;
  readonly levelStable: boolean;
}
