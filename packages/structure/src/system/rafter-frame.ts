import { type JointUse, pointOn, type Rafters, type Shelter } from '@tautline/shelter';
import type { FrameOptions } from './bow-frame.ts';
import { type Condition, modulusIn } from './condition.ts';
import { divide, nodeNear } from './divide.ts';
import { type FrameSystem, SystemBuilder } from './frame-system.ts';
import { sectionOf } from './member.ts';
import { addSidePosts } from './posts.ts';
import { holdCrown, holdInside, innerPlaces, type RidgeStiffness } from './ridge-stiffness.ts';
import { addTies, tiedPlaces } from './ties.ts';

const divisionsPerRafter = 12;

/** How a joint turns in the model: rigid without a stiffness in the catalogue, a hinge without a joint. */
function turning(joint: JointUse | undefined): number | undefined {
  return joint === undefined ? 0 : joint.item.stiffness;
}

/** The plane system of a pair of rafters (or a single slope) on its side posts. */
export function rafterFrame(
  shelter: Shelter,
  rafters: Rafters,
  condition: Condition,
  ridge: RidgeStiffness | undefined,
  { divisions = divisionsPerRafter, places: besides = [], soil = false, bare = false }: FrameOptions = {},
): FrameSystem {
  const builder = new SystemBuilder();
  const { line } = rafters;
  const total = line[line.length - 1]!.s;
  const gable = rafters.form === 'gable';
  // The line runs between the two eave supports; overhangs carry little and are left out.
  const places = [
    ...(gable ? [total / 2] : []),
    ...innerPlaces(shelter),
    ...tiedPlaces(shelter, line),
    ...besides,
  ];
  const stations = divide(total, gable ? 2 * divisions : divisions, places);
  const section = sectionOf(rafters.member);
  const modulus = modulusIn(rafters.member, condition);
  const points = stations.map((s) => pointOn(line, s));
  const nodes = points.map((point) => builder.node({ x: point.x, y: point.y }, rafters.id, point.s));
  const peak = stations.findIndex((s) => Math.abs(s - total / 2) < 1e-9);
  const peakTurning = turning(rafters.peakJoint);
  const eaveTurning = rafters.eaveJoint?.item.stiffness;
  const hasPosts = shelter.sidePosts !== undefined;
  for (let k = 0; k + 1 < nodes.length; k++) {
    const spring: { springI?: number; springJ?: number } = {};
    if (gable && k === peak && peakTurning !== undefined) spring.springI = peakTurning;
    if (hasPosts && k === 0 && eaveTurning !== undefined) spring.springI = eaveTurning;
    if (hasPosts && k + 2 === nodes.length && eaveTurning !== undefined) spring.springJ = eaveTurning;
    builder.element(
      {
        i: nodes[k]!,
        j: nodes[k + 1]!,
        EA: modulus * section.area,
        EI: modulus * section.secondMoment,
        ...spring,
        restCurvature: 0,
      },
      {
        part: rafters.id,
        item: rafters.member,
        from: points[k]!.s,
        to: points[k + 1]!.s,
        role: 'roof',
        perFrame: 1,
      },
    );
  }
  if (rafters.tie !== undefined && gable) addCollar(builder, rafters, nodes, condition);
  const left = nodes[0]!;
  const right = nodes[nodes.length - 1]!;
  if (shelter.sidePosts === undefined) {
    for (const [node, side] of [
      [left, 'left'],
      [right, 'right'],
    ] as const) {
      builder.support({ node, dof: 'x', kind: 'fixed' }, { part: rafters.id, side, acts: 'x' });
      builder.support({ node, dof: 'y', kind: 'fixed' }, { part: rafters.id, side, acts: 'y' });
    }
    builder.notes.push('The rafters are taken to be held in place at the eave: no side posts were said.');
  } else {
    // A fitting at the eave turns in the rafter's own end spring; without one the post head is a hinge,
    // because the rafter's end is then already free and the post must stand by itself.
    const head = rafters.eaveJoint === undefined ? 'pinned' : 'rigid';
    addSidePosts(builder, shelter, shelter.sidePosts, condition, left, right, rafters.spacing, head, soil);
  }
  if (ridge !== undefined && gable) holdCrown(builder, nodes[peak]!, ridge);
  if (!bare) {
    addTies(builder, shelter, condition, nodes);
    holdInside(builder, shelter, (s) => nodeNear(stations, nodes, s));
  }
  if (rafters.overhang > 0)
    builder.notes.push('The overhang of the rafters is left out of the frame analysis.');
  return builder.finish(shelter, false);
}

/** The collar or tie that each pair of rafters has of its own. */
function addCollar(
  builder: SystemBuilder,
  rafters: Rafters,
  nodes: readonly number[],
  condition: Condition,
): void {
  const tie = rafters.tie;
  if (tie === undefined) return;
  const height = rafters.springing + tie.height;
  const closest = (candidates: readonly number[]): number =>
    candidates.reduce((best, node) =>
      Math.abs(builder.nodes[node]!.y - height) < Math.abs(builder.nodes[best]!.y - height) ? node : best,
    );
  const half = nodes.length >> 1;
  const left = closest(nodes.slice(0, half + 1));
  const right = closest(nodes.slice(half));
  if (left === right) return;
  const modulus = modulusIn(tie.member, condition);
  const section = sectionOf(tie.member);
  builder.element(
    {
      i: left,
      j: right,
      EA: modulus * section.area,
      EI: modulus * section.secondMoment,
      restCurvature: 0,
      springI: 0,
      springJ: 0,
    },
    {
      part: tie.id,
      item: tie.member,
      from: 0,
      to: Math.abs(builder.nodes[right]!.x - builder.nodes[left]!.x),
      role: 'tie',
      perFrame: 1,
    },
  );
}
