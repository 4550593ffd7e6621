import { assemble, emptyPass } from './assemble.ts';
import type { LoadSet } from './loads.ts';
import type { PlaneLoads } from './model.ts';
import { skin } from './pocket.ts';
import { addWater, lineOf, type Pocket, type PondScene } from './pond.ts';
import type { PondAt } from './pond-balance.ts';
import type { Pond, StandingPond } from './ponding-model.ts';
import { forcesOf, reactionsOf } from './result.ts';

/** The pond in a pocket of the line displaced by `u`, up to a level. */
export function pondOn(scene: PondScene, u: Float64Array, pocket: Pocket, level: number): Pond {
  const line = lineOf(scene, u);
  const y = skin(line, pocket);
  addWater(scene, u, pocket, level);
  let { low } = pocket;
  for (let k = pocket.left; k <= pocket.right; k++) if (y[k]! < y[low]!) low = k;
  const bottom: { x: number; y: number }[] = [];
  for (let k = pocket.left; k <= pocket.right; k++) {
    const wet = y[k]! < level;
    if (k > pocket.left && wet !== y[k - 1]! < level) {
      const share = (level - y[k - 1]!) / (y[k]! - y[k - 1]!);
      bottom.push({ x: line.x[k - 1]! + share * (line.x[k]! - line.x[k - 1]!), y: level });
    }
    if (wet) bottom.push({ x: line.x[k]!, y: y[k]! });
  }
  return {
    volume: scene.water.volume,
    depth: Math.max(0, level - y[low]!),
    level,
    at: line.x[low]!,
    from: bottom[0]?.x ?? line.x[low]!,
    to: bottom.at(-1)?.x ?? line.x[low]!,
    bottom,
  };
}

/** A pond in balance with all that it does to the frame. */
export function standingPond(scene: PondScene, base: PlaneLoads, pond: PondAt, pocket: Pocket): StandingPond {
  const { system, roof, weight, water, pass } = scene;
  const stands = pondOn(scene, pond.u, pocket, pond.level);
  const reactions = reactionsOf(system, pass);
  // member forces with each member's water spread evenly along it
  const even: LoadSet = { ...scene.loads, wy: scene.loads.wy.slice() };
  const line: { element: number; wx: number; wy: number }[] = [];
  for (const [n, element] of roof.elements.entries()) {
    const wy = (-weight * water.share[n]!) / system.rest[element]!;
    even.wy[element]! += wy;
    if (wy !== 0) line.push({ element, wx: 0, wy });
  }
  const spread = emptyPass(system);
  assemble(system, pond.u, even, spread, false);
  return {
    ...stands,
    state: {
      displacements: pond.u.slice(0, 3 * system.nodes),
      endRotations: pond.u.slice(3 * system.nodes),
      loads: { ...base, line: [...(base.line ?? []), ...line] },
    },
    elementForces: forcesOf(system, spread, even),
    reactions,
  };
}
