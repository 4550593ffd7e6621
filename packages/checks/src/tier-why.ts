/** Why the whole house tells another share of a limit than a frame in its plane: one sentence, from its own forces. */
import { type HouseAnalysis, type HouseResponse, stateIn } from '@tautline/structure';
import type { Finding, MessagePiece } from './finding.ts';
import { measured } from './judge.ts';

/** From this share of a force on, the part of it along the house is the reason: own choice. */
const counts = 0.3;

export interface Differing {
  /** What is judged in the plane, and what the whole house says of it. */
  readonly one: number;
  readonly all: number;
  readonly finding: Finding;
  /** Frame of the house it is worst in, from 0. */
  readonly frame: number;
}

/** The largest reason that can be seen in the forces of the house. */
export function whyTheyDiffer(house: HouseAnalysis, differing: Differing): readonly MessagePiece[] {
  const { one, all, finding, frame } = differing;
  const last = house.states.built.system.frames.length - 1;
  const atAnEnd = frame === 0 || frame === last;
  const response = house.responses.find(
    ({ load, status }) => status === 'holds' && load.title === finding.loadCase,
  );
  const along = response === undefined ? undefined : alongShare(house, response, finding.part, frame);
  if (all > one && along !== undefined && along.share > counts)
    return [
      ' Of it ',
      measured(along.value, along.kind),
      ` acts along the house: what braces, purlins or the push on an end bring there is not in the plane of a frame.`,
    ];
  if (all < one)
    return [
      atAnEnd
        ? ' The end frame carries half the breadth, and what runs along the house shares its load with its neighbours.'
        : ' What runs along the house shares the load of this frame with its neighbours and with the bracing.',
    ];
  if (finding.id === 'rail-span')
    return [
      ' The rail runs on over its posts and takes each frame where it stands, stiffer frames more than others; by itself each bay is taken as simply supported under an even load.',
    ];
  return [
    atAnEnd
      ? ' The bracing of the end makes its frame stiffer than the others, and so it draws load from them.'
      : ' What runs along the house brings load of its neighbours to this frame.',
  ];
}

interface Along {
  readonly share: number;
  readonly value: number;
  readonly kind: 'force' | 'moment';
}

/** How much of what a foot or a member of a frame takes acts along the house, at the place that takes most. */
function alongShare(
  house: HouseAnalysis,
  response: HouseResponse,
  part: string,
  frame: number,
): Along | undefined {
  const { system } = stateIn(house.states, response.condition);
  const { z, reach, elements } = system.frames[frame]!;
  const near = (at: number): boolean => Math.abs(at - z) <= Math.max(reach.to - reach.from, 1e-3);
  const feet = new Map<number, { x: number; z: number }>();
  system.supports.forEach(({ node, part: own, acts }, n) => {
    if (own !== part || (acts !== 'x' && acts !== 'z') || !near(system.nodes[node]!.z)) return;
    const sum = feet.get(node) ?? { x: 0, z: 0 };
    feet.set(node, { ...sum, [acts]: sum[acts] + (response.result.reactions[n] ?? 0) });
  });
  let worst: { size: number; along: Along } | undefined;
  const take = (across: number, lengthwise: number, kind: Along['kind']): void => {
    const size = Math.hypot(across, lengthwise);
    if (size > (worst?.size ?? 0))
      worst = { size, along: { share: Math.abs(lengthwise) / size, value: Math.abs(lengthwise), kind } };
  };
  for (const foot of feet.values()) take(foot.x, foot.z, 'force');
  if (feet.size > 0) return worst?.along;
  for (const k of elements) {
    const force = k < 0 || system.elements[k]!.part !== part ? undefined : response.result.elementForces[k];
    if (force === undefined) continue;
    take(force.momentZI, force.momentYI, 'moment');
    take(force.momentZJ, force.momentYJ, 'moment');
  }
  return worst?.along;
}
