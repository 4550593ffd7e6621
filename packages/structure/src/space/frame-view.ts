/** One frame of the house as if it stood by itself, so that every check made for the plane frame can judge it. */
import { railsUnder, type Shelter } from '@tautline/shelter';
import type { FrameAnalysis } from '../analyse.ts';
import type { BuiltState, Reaction, Response, SectionForce } from '../response/response.ts';
import { build } from '../response/solve.ts';
import { type ByCondition, stateIn } from '../system/condition.ts';
import type { HouseFrame, HousePost, HouseSystem } from './house.ts';
import type { HouseAnalysis, HouseResponse, HouseState } from './house-result.ts';
import { ridgeIn, ridgeUnder } from './ridge-view.ts';

type Sides = readonly ['left', 'right'];
const sides: Sides = ['left', 'right'];

/**
 * The frame at an index of the house, with the house's forces on it: bending is the resultant of both planes, sideways
 * reactions those across and along together. Film and standing water stay those of the plane frame.
 */
export function frameView(
  shelter: Shelter,
  plane: FrameAnalysis,
  house: HouseAnalysis,
  index: number,
): FrameAnalysis {
  const seen = (state: HouseState): BuiltState => {
    const frame = state.system.frames[index]!;
    const { result, status } = build(state.system.slice);
    const displacements = frame.nodes.map((node) => {
      const moved = node < 0 ? undefined : state.result.displacements[node];
      return { dx: moved?.dx ?? 0, dy: moved?.dy ?? 0, dr: moved?.rz ?? 0 };
    });
    return { system: state.system.slice, result: { ...result, displacements }, status };
  };
  const states: ByCondition<BuiltState> = {
    ...plane.states,
    ...Object.fromEntries(Object.entries(house.states).map(([id, state]) => [id, seen(state)])),
    built: seen(house.states.built),
  };
  const { ridge, inner, ...rest } = plane;
  const carried = ridge === undefined ? undefined : ridgeIn(house, ridge);
  return {
    ...rest,
    built: states.built,
    states,
    cases: house.cases,
    responses: house.responses.map((response) => {
      const state = stateIn(house.states, response.condition);
      return seenResponse(shelter, state, response, index);
    }),
    ...(carried === undefined ? {} : { ridge: carried }),
    inner: inner.flatMap((demand) => ridgeIn(house, demand) ?? []),
  };
}

function seenResponse(shelter: Shelter, state: HouseState, response: HouseResponse, index: number): Response {
  const { system } = state;
  const frame = system.frames[index]!;
  const ends = response.result.displacements.length > 0;
  return {
    load: response.load,
    condition: response.condition,
    status: response.status,
    reached: response.reached,
    forces: ends ? forcesOn(system, frame, response) : [],
    reactions: ends ? reactionsOn(shelter, system, frame, response) : [],
    rails: ends ? railsUnder(shelter).map((rail) => ridgeUnder(state, response, rail)) : [],
    displacements: frame.nodes.map((node) => {
      const [moved, built] = [response.result.displacements[node], state.result.displacements[node]];
      return { dx: (moved?.dx ?? 0) - (built?.dx ?? 0), dy: (moved?.dy ?? 0) - (built?.dy ?? 0) };
    }),
  };
}

function forcesOn(system: HouseSystem, frame: HouseFrame, response: HouseResponse): SectionForce[] {
  const forces: SectionForce[] = [];
  const put = (slice: number, element: number, inPlane: 'Y' | 'Z'): void => {
    const force = response.result.elementForces[element];
    const meaning = system.elements[element]!;
    if (force === undefined) return;
    const across = inPlane === 'Z' ? 'Y' : 'Z';
    for (const [end, at] of [
      ['I', meaning.from],
      ['J', meaning.to],
    ] as const) {
      const own = force[`moment${inPlane}${end}`];
      const moment = (own < 0 ? -1 : 1) * Math.hypot(own, force[`moment${across}${end}`]);
      forces.push({ element: slice, part: meaning.part, at, axial: force.axial, moment, shear: force.shear });
    }
  };
  frame.elements.forEach((element, slice) => {
    if (element >= 0) put(slice, element, 'Z');
  });
  for (const side of sides) {
    const post = nearestPost(system, side, frame.z);
    const walls = side === 'left' ? system.slice.leftWall : system.slice.rightWall;
    post?.elements.forEach((element) => {
      const { from, to } = system.elements[element]!;
      const slice = walls.find((k) => system.slice.elements[k]!.to > (from + to) / 2);
      put(slice ?? walls.at(-1) ?? 0, element, 'Y');
    });
  }
  return forces;
}

function nearestPost(system: HouseSystem, side: 'left' | 'right', z: number): HousePost | undefined {
  return system.posts
    .filter((post) => post.side === side)
    .reduce<HousePost | undefined>(
      (best, post) => (best === undefined || Math.abs(post.z - z) < Math.abs(best.z - z) ? post : best),
      undefined,
    );
}

/** What the ground gives the frame's own feet, or its share of the nearest posts'. */
function reactionsOn(
  shelter: Shelter,
  system: HouseSystem,
  frame: HouseFrame,
  response: HouseResponse,
): Reaction[] {
  const { slice } = system;
  const ends = [
    slice.model.elements[slice.roof[0]!]!.i,
    slice.model.elements[slice.roof[slice.roof.length - 1]!]!.j,
  ];
  return sides.flatMap((side, k): Reaction[] => {
    const post = nearestPost(system, side, frame.z);
    const node = post?.foot ?? frame.nodes[ends[k]!]!;
    const share =
      post === undefined ? 1 : Math.min(1, shelter.roof.spacing / (shelter.sidePosts?.spacing ?? Infinity));
    const sum = { x: 0, y: 0, z: 0, rx: 0, ry: 0, rz: 0 };
    let part: string | undefined;
    system.supports.forEach((support, n) => {
      if (support.node !== node || support.part === 'steadying') return;
      sum[support.acts] += response.result.reactions[n] ?? 0;
      part = support.part;
    });
    if (part === undefined) return [];
    return [
      {
        part,
        side,
        horizontal: share * (sum.x < 0 ? -1 : 1) * Math.hypot(sum.x, sum.z),
        vertical: share * sum.y,
        moment: share * (sum.rz < 0 ? -1 : 1) * Math.hypot(sum.rz, sum.rx),
      },
    ];
  });
}
