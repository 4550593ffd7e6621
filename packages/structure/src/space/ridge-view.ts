/** Ridge and inner lines of the house by their own forces, as the checks for the plane frame want them. */

import { type Rail, staySlope } from '@tautline/shelter';
import {
  type CableEnd,
  type PostLift,
  type PostLoad,
  type RailDemand,
  worseOf,
  worstEnds,
} from '../rail/rail-demand.ts';
import { stateIn } from '../system/condition.ts';
import { fillingWeight } from '../system/filling.ts';
import { weightPerLength } from '../system/member.ts';
import type { HouseAnalysis, HouseResponse, HouseState } from './house-result.ts';

/** Bending or pull, sag below its posts, and what presses on its posts: each at its worst over the combinations. */
export function ridgeIn(house: HouseAnalysis, plane: RailDemand): RailDemand | undefined {
  const own = house.responses
    .filter(({ status, load }) => status === 'holds' && load.use !== 'service')
    .map((response) => ridgeUnder(stateIn(house.states, response.condition), response, plane.rail))
    .reduce<RailDemand | undefined>(
      (worst, one) => (worst === undefined ? one : worseOf(worst, one)),
      undefined,
    );
  // Standing water stays that of the plane frame.
  return own === undefined || plane.water === undefined
    ? own
    : { ...worseOf(own, plane.water), water: plane.water };
}

/** The same under one combination. */
export function ridgeUnder(state: HouseState, response: HouseResponse, rail: Rail): RailDemand {
  const { title: loadCase, duration } = response.load;
  const cable = rail.member.kind === 'cable';
  const forces = ridgeForces(state, response, rail.id);
  const posts = postLoads(state, response, rail);
  const inner = posts.filter((post) => !post.end);
  const none: PostLoad = { down: 0, loadCase, duration };
  const post = inner.length === 0 ? none : pressOf(largest(inner, (one) => one.down));
  const ends = cable ? worstEnds(posts.filter((one) => one.end).map(endOf)) : [];
  const outer = cable ? [] : posts.filter((one) => one.end).map(pressOf);
  return {
    rail,
    load: post.down / rail.span,
    loadCase,
    duration,
    ...(cable ? { pull: forces.pull } : { moment: forces.moment }),
    sag: Math.max(0, forces.high - forces.low),
    // A rail's end post is pressed as any other is.
    post: largest([post, ...outer], (one) => one.down),
    lift: largest([{ up: 0, loadCase }, ...posts.map(({ up }) => ({ up, loadCase }))], (one) => one.up),
    ...(ends.length === 0 ? {} : { ends }),
  };
}

const largest = <T>(list: readonly T[], size: (entry: T) => number): T =>
  list.reduce((worst, entry) => (size(entry) > size(worst) ? entry : worst));

function ridgeForces(state: HouseState, { result }: HouseResponse, rail: string) {
  const { system } = state;
  let [moment, pull, low, high] = [0, 0, 0, Number.NEGATIVE_INFINITY];
  system.elements.forEach((element, k) => {
    if (element.role !== 'ridge' || element.part !== rail) return;
    const force = result.elementForces[k]!;
    moment = Math.max(
      moment,
      Math.hypot(force.momentYI, force.momentZI),
      Math.hypot(force.momentYJ, force.momentZJ),
      force.momentMid,
    );
    pull = Math.max(pull, force.axial);
    const e = system.model.elements[k]!;
    for (const node of [e.i, e.j]) {
      const fall = result.displacements[node]!.dy - state.result.displacements[node]!.dy;
      low = Math.min(low, fall);
      high = Math.max(high, fall);
    }
  });
  return { moment, pull, low, high };
}

interface Pressing extends CableEnd, PostLift {
  /** The first or the last post of the row. */
  readonly end: boolean;
}

/** Load at the head of each ridge post (its own weight taken off), and the stay that runs down beside an end post. */
function postLoads(state: HouseState, response: HouseResponse, rail: Rail): Pressing[] {
  const { system } = state;
  const { posts } = rail;
  if (posts === undefined) return [];
  const own =
    weightPerLength(posts.member) * posts.height +
    fillingWeight(posts.filled, posts.member, 0) * (posts.filled?.upTo ?? 0);
  const stays = system.elements.flatMap((element, k) =>
    element.part === rail.id && element.role === 'anchor'
      ? [{ z: farther(system.nodes, system.model.elements[k]!), N: response.result.elementForces[k]!.axial }]
      : [],
  );
  const feet = system.supports.flatMap((support, k) =>
    support.acts === 'y' && support.part === posts.foot.id
      ? [{ z: system.nodes[support.node]!.z, up: response.result.reactions[k]! }]
      : [],
  );
  const [first, last] = [Math.min(...feet.map(({ z }) => z)), Math.max(...feet.map(({ z }) => z))];
  const { title: loadCase, duration } = response.load;
  const slope = staySlope(rail);
  return feet.map(({ z, up }) => {
    const near = stays.filter((stay) => Math.sign(stay.z - (first + last) / 2) === (z === last ? 1 : -1));
    const stay = Math.max(0, ...near.map(({ N }) => N));
    return {
      down: Math.max(0, up - own),
      up: Math.max(0, own - up),
      loadCase,
      duration,
      end: z === first || z === last,
      stay,
      pull: stay * Math.cos(slope),
      slope,
    };
  });
}

/** Place along the house of the end of a stay that stands in the ground. */
function farther(
  nodes: HouseState['system']['nodes'],
  { i, j }: { readonly i: number; readonly j: number },
): number {
  const [a, b] = [nodes[i]!, nodes[j]!];
  return a.y < b.y ? a.z : b.z;
}

const endOf = ({ down, loadCase, duration, stay, pull, slope }: CableEnd): CableEnd => ({
  down,
  loadCase,
  duration,
  stay,
  pull,
  slope,
});

const pressOf = ({ down, loadCase, duration }: PostLoad): PostLoad => ({ down, loadCase, duration });
