import { type Bows, crownOf, pointOn, type Shelter } from '@tautline/shelter';
import { type Condition, modulusIn, modulusShare } from './condition.ts';
import { divide, nodeNear } from './divide.ts';
import { barStiffness, fillingWeight } from './filling.ts';
import { footGive, givingFeet, holdFoot } from './foot-hold.ts';
import { type FrameSystem, SystemBuilder } from './frame-system.ts';
import { relaxedShare, sectionOf } from './member.ts';
import { addSidePosts } from './posts.ts';
import { holdCrown, holdInside, innerPlaces, type RidgeStiffness } from './ridge-stiffness.ts';
import { addTies, tiedPlaces } from './ties.ts';

/** Elements along one bow; the elastica's thrust is then right to better than 0.01 %. */
export const bowDivisions = 32;

export interface FrameOptions {
  /** How finely a frame is divided. */
  readonly divisions?: number;
  /** Arc lengths where a node is needed besides. */
  readonly places?: readonly number[];
  /** Feet give by springs of the soil; they stand firm unless asked for. */
  readonly soil?: boolean;
  /** The frame by itself, without ties and inner lines: the house in space adds those. */
  readonly bare?: boolean;
}

/** Where the tangent of an element's end is read, m inside it. */
const within = 1e-6;

/** The plane system of a typical bow. */
export function bowFrame(
  shelter: Shelter,
  bows: Bows,
  condition: Condition,
  ridge: RidgeStiffness | undefined,
  { divisions = bowDivisions, places: besides = [], soil = false, bare = false }: FrameOptions = {},
): FrameSystem {
  const builder = new SystemBuilder();
  const sprung = bows.shape === 'elastic';
  const { line } = bows;
  const total = line[line.length - 1]!.s;
  const crown = crownOf(line).s;
  const places = [
    crown,
    ...bows.joints.map((joint) => joint.at),
    ...innerPlaces(shelter),
    ...tiedPlaces(shelter, line),
    ...besides,
  ];
  for (const purlin of shelter.purlins)
    for (const at of purlin.lines) if (at.s !== undefined) places.push(at.s);
  const stations = divide(total, divisions, places);

  const section = sectionOf(bows.member);
  const modulus = modulusIn(bows.member, condition);
  // A sprung pipe that has crept keeps its shape while the bending it fights against falls to the long-term
  // share: its unstressed curvature has moved from straight (0) towards the built curve.
  const crept = condition.relaxed
    ? 1 - relaxedShare(bows.member) / modulusShare(bows.member, condition.hours)
    : 0;

  const points = stations.map((s) => pointOn(line, s));
  const nodes = points.map((point) => builder.node({ x: point.x, y: point.y }, bows.id, point.s));
  for (let k = 0; k + 1 < nodes.length; k++) {
    const a = points[k]!;
    const b = points[k + 1]!;
    const length = b.s - a.s;
    const middle = (a.s + b.s) / 2;
    const joint = bows.joints.find((use) => Math.abs(use.at - a.s) < 1e-9);
    // Tangents just inside the element: where two arcs meet at a point, each side has its own.
    const angleI = pointOn(line, a.s + within).angle;
    const angleJ = pointOn(line, b.s - within).angle;
    const builtCurvature = (angleJ - angleI) / length;
    const height = pointOn(line, middle).y;
    const inside = fillingWeight(bows.filled, bows.member, height);
    builder.element(
      {
        i: nodes[k]!,
        j: nodes[k + 1]!,
        EA: modulus * section.area,
        EI: modulus * section.secondMoment + barStiffness(bows.filled, height),
        angleI,
        angleJ,
        // What was bent on a bender is unstressed as drawn; only a sprung pipe fights its shape.
        ...(sprung ? { restLength: length, restCurvature: crept * builtCurvature } : {}),
        ...(joint?.item.stiffness === undefined ? {} : { springI: joint.item.stiffness }),
      },
      {
        part: bows.id,
        item: bows.member,
        from: a.s,
        to: b.s,
        role: 'roof',
        perFrame: 1,
        ...(inside > 0 ? { inside } : {}),
      },
    );
  }
  const leftEnd = nodes[0]!;
  const rightEnd = nodes[nodes.length - 1]!;
  if (bows.foot !== undefined || shelter.sidePosts === undefined) {
    const { foot } = bows;
    const give = soil && foot !== undefined ? footGive(shelter.site, foot, bows.member) : undefined;
    const part = foot?.id ?? `${bows.id}/foot`;
    const clamped = foot?.fixity === 'clamped';
    holdFoot(builder, { node: leftEnd, side: 'left', part, clamped, give });
    holdFoot(builder, { node: rightEnd, side: 'right', part, clamped, give });
    if (give !== undefined) builder.notes.push(givingFeet);
  } else {
    // The bow's end turns freely on the rail, so posts and bow share forces but no moment.
    addSidePosts(
      builder,
      shelter,
      shelter.sidePosts,
      condition,
      leftEnd,
      rightEnd,
      bows.spacing,
      'pinned',
      soil,
    );
  }
  if (ridge !== undefined) {
    const crownNode =
      nodes[stations.findIndex((s) => Math.abs(s - crown) < 1e-9)] ?? (nodes[nodes.length >> 1] as number);
    holdCrown(builder, crownNode, ridge);
  }
  if (!bare) {
    addTies(builder, shelter, condition, nodes);
    holdInside(builder, shelter, (s) => nodeNear(stations, nodes, s));
  }
  return builder.finish(shelter, sprung);
}
