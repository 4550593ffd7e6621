import { assemble, emptyPass } from './assemble.ts';
import type { LoadSet } from './loads.ts';
import type { PlaneLoads, PlaneState } from './model.ts';
import { addWater, heights, type PondScene, placeOf } from './pond.ts';
import { balancePond, type PondAt } from './pond-balance.ts';
import type { PondingAnswer, PondingOptions } from './ponding-model.ts';
import { forcesOf, reactionsOf } from './result.ts';

type Path = { volume: number; level: number; depth: number }[];

const MOST_STEPS = 600;

export function dryPond({ system }: PondScene, state: PlaneState): PondAt {
  const u = new Float64Array(system.dofs);
  u.set(state.displacements);
  u.set(state.endRotations, state.displacements.length);
  return { u, volume: 0, level: 0, low: 0, spill: 0, levelStable: true };
}

/** Fills one dry hollow step by step until it runs over, runs away, or there is no more water. */
export function fillPond(
  scene: PondScene,
  base: PlaneLoads,
  dry: PondAt,
  options: PondingOptions,
): PondingAnswer {
  const { system, roof } = scene;
  const plan = roof.elements.reduce((sum, e) => sum + Math.abs(system.chordX[e]!), 0);
  const deepest = options.deepest ?? plan / 8;
  const most = options.maxVolume ?? Number.POSITIVE_INFINITY;
  const y = heights(scene, dry.u);
  addWater(scene, dry.u, y, dry.low, dry.spill);
  // the steps are measured by what the hollow would hold if nothing moved
  const brim = scene.water.volume;
  const least = brim * 1e-4;
  const path: Path = [];
  let pond: PondAt = { ...dry, level: y[dry.low]! };
  let step = Math.min(brim / 8, most);
  let waterAtRunaway: number | undefined;
  const end = (verdict: PondingAnswer['verdict'], reason: string) =>
    answerOf(
      scene,
      base,
      pond,
      path,
      verdict,
      reason,
      verdict === 'runaway' ? (waterAtRunaway ?? pond.volume) : undefined,
    );
  for (let n = 0; n < MOST_STEPS; n++) {
    if (options.cancelled?.()) return end('cancelled', 'cancelled before the pond was followed to its end');
    const target = Math.min(most, pond.volume + step);
    const tried = balancePond(scene, pond, target);
    if (tried === 'sudden' && step <= Math.max(least, 0.005 * pond.volume))
      return end('runaway', 'the frame gives way at once under this much water');
    if (tried === 'diverged' && step <= least / 16)
      return waterAtRunaway === undefined
        ? end('not-converged', 'no balance was found with more water')
        : end('runaway', 'the pond grows until no balance is found');
    if (tried === 'over' && step <= Math.max(least, 1e-3 * pond.volume))
      return end('bounded', 'the pond fills to its brim and runs over');
    if (typeof tried === 'string') {
      step /= 2;
      continue;
    }
    // the first step on which more water lowers the surface is narrowed down before it is taken
    if (!tried.levelStable && pond.levelStable && step > Math.max(0.01 * pond.volume, least)) {
      step /= 2;
      continue;
    }
    waterAtRunaway = tried.levelStable ? undefined : (waterAtRunaway ?? target);
    pond = tried;
    const depth = pond.level - heights(scene, pond.u)[pond.low]!;
    path.push({ volume: pond.volume, level: pond.level, depth });
    if (depth > deepest) return end('runaway', 'the pond grows past the depth looked at');
    if (target >= most) return end('bounded', 'all the water there is stands');
    step = Math.min(step * 1.5, Math.max(pond.volume / 3, brim / 8));
  }
  return end('not-converged', 'the pond was not followed to its end');
}

export function answerOf(
  scene: PondScene,
  base: PlaneLoads,
  pond: PondAt,
  path: Path,
  verdict: PondingAnswer['verdict'],
  reason?: string,
  waterAtRunaway?: number,
): PondingAnswer {
  const { system, roof, weight, water, pass } = scene;
  const wet = pond.volume > 0;
  const y = heights(scene, pond.u);
  if (wet) addWater(scene, pond.u, y, pond.low, pond.level);
  const reactions = reactionsOf(system, pass);
  // member forces with each member's water spread evenly along it
  const even: LoadSet = { ...scene.loads, wy: scene.loads.wy.slice() };
  const line: { element: number; wx: number; wy: number }[] = [];
  if (wet)
    for (const [n, element] of roof.elements.entries()) {
      const wy = (-weight * water.share[n]!) / system.rest[element]!;
      even.wy[element]! += wy;
      if (wy !== 0) line.push({ element, wx: 0, wy });
    }
  const spread = emptyPass(system);
  assemble(system, pond.u, even, spread, false);
  const elementForces = forcesOf(system, spread, even);
  let peakMoment = 0;
  let peakElement = -1;
  for (const [e, f] of elementForces.entries()) {
    const largest = Math.max(Math.abs(f.momentI), Math.abs(f.momentJ), Math.abs(f.momentMid));
    if (largest > peakMoment) {
      peakMoment = largest;
      peakElement = e;
    }
  }
  return {
    verdict,
    ...(reason ? { reason } : {}),
    ...(waterAtRunaway === undefined ? {} : { waterAtRunaway }),
    volume: pond.volume,
    depth: wet ? pond.level - y[pond.low]! : 0,
    level: wet ? pond.level : y[pond.low]!,
    at: placeOf(scene, pond.u, pond.low),
    state: {
      displacements: pond.u.slice(0, 3 * system.nodes),
      endRotations: pond.u.slice(3 * system.nodes),
      loads: { ...base, line: [...(base.line ?? []), ...line] },
    },
    elementForces,
    reactions,
    peakMoment,
    peakElement,
    path,
  };
}
