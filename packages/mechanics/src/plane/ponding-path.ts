import { WATER } from '../ponding.ts';
import { factor } from '../skyline.ts';
import { assemble, emptyPass } from './assemble.ts';
import { type LoadSet, layLoads } from './loads.ts';
import type { PlaneLoads, PlaneModel, PlaneState } from './model.ts';
import { basins, emptyWater, heights, type PondScene, type RoofLine, wetMatrix } from './pond.ts';
import { answerOf, dryPond, fillPond } from './pond-growth.ts';
import type { PondingAnswer, PondingOptions, PondingRoof } from './ponding-model.ts';
import { solvePlaneFrame } from './solve.ts';
import { BEAM, type PlaneSystem, planeSystem } from './system.ts';

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
  const scene: PondScene = {
    system,
    roof,
    dip: options.dip,
    weight,
    loads: layLoads(system, base) as LoadSet,
    pass: emptyPass(system),
    water: emptyWater(system, roof),
  };
  const pond = dryPond(scene, dry.state);
  const places = basins(heights(scene, pond.u), SMALLEST_POND);
  if (places.length === 0) return answerOf(scene, base, pond, [], 'drains');
  const rank = { runaway: 4, 'not-converged': 3, cancelled: 2, bounded: 1, drains: 0 } as const;
  let worst: PondingAnswer | undefined;
  for (const { low, spill } of places) {
    const filled = fillPond(scene, base, { ...pond, low, spill }, options);
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
  const wet = wetMatrix(
    { system, roof, dip: undefined, weight, loads, pass, water: emptyWater(system, roof) },
    u,
  );
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
