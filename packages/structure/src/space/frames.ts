import type { PlaneElement, SpaceElement } from '@tautline/mechanics';
import type { Rafters } from '@tautline/shelter';
import { memberOf } from '../system/frame-system.ts';
import { sectionOf } from '../system/member.ts';
import { type Reach, reaches } from '../system/reaches.ts';
import type { HouseFrame } from './house.ts';
import { type HouseBuilder, turning } from './house-builder.ts';
import { stiffnessOf } from './stiffness.ts';

type Spring = number | undefined;

/** Every bow or rafter pair at its station, with its own ties, standing on its feet where it has no side posts. */
export function addFrames(builder: HouseBuilder): void {
  const { shelter, slice } = builder;
  const { stations } = shelter.roof;
  const carried = reaches(stations);
  stations.forEach((z, piece) => {
    const frame = addFrame(builder, z, carried[piece]!, piece);
    builder.frames.push(frame);
    if (shelter.sidePosts !== undefined) return;
    for (const end of roofEnds(builder)) {
      const foot = shelter.roof.type === 'bows' ? shelter.roof.foot : undefined;
      const item = memberOf(builder.slice.elements[builder.slice.roof[0]!]!);
      builder.foot(frame.nodes[end]!, foot, item, foot?.id ?? `${shelter.roof.id}/foot`);
    }
  });
  if (slice.sprung)
    builder.notes.add('The bows are sprung in before anything that runs along is fixed to them.');
}

/** First and last node of the slice's roof line. */
export function roofEnds({ slice }: HouseBuilder): readonly [number, number] {
  const first = slice.model.elements[slice.roof[0]!]!;
  const last = slice.model.elements[slice.roof[slice.roof.length - 1]!]!;
  return [first.i, last.j];
}

function addFrame(builder: HouseBuilder, z: number, reach: Reach, piece: number): HouseFrame {
  const { slice } = builder;
  const nodes = new Array<number>(slice.nodes.length).fill(-1);
  const elements = new Array<number>(slice.elements.length).fill(-1);
  const place = (n: number): number => {
    if (nodes[n] === -1) {
      const { x, y, part, at } = slice.nodes[n]!;
      nodes[n] = builder.node([x, y, z], part, at);
    }
    return nodes[n]!;
  };
  slice.elements.forEach((meaning, k) => {
    const plane = slice.model.elements[k]!;
    const { part, item, from, to, length } = meaning;
    if (meaning.role === 'tie') {
      elements[k] = builder.bar(place(plane.i), place(plane.j), item, { part, role: 'tie', piece, from, to });
      // Its weight comes with the slice's dead load.
      builder.weights.delete(elements[k]!);
    }
    if (meaning.role !== 'roof') return;
    elements[k] = builder.add(
      { i: place(plane.i), j: place(plane.j), ...roofElement(builder, k) },
      { part, item, role: 'frame', piece, from, to, length },
    );
  });
  return { z, reach, nodes, elements };
}

/** The slice's element as a piece of a frame in space: bent and unstressed as there, with its section's other axes. */
function roofElement(builder: HouseBuilder, k: number): Omit<SpaceElement, 'i' | 'j'> {
  const { slice } = builder;
  const plane = slice.model.elements[k]!;
  const item = memberOf(slice.elements[k]!);
  const [a, b] = [slice.nodes[plane.i]!, slice.nodes[plane.j]!];
  const chord = Math.atan2(b.y - a.y, b.x - a.x);
  const turned = (angle: number | undefined): number =>
    angle === undefined ? 0 : Math.atan2(Math.sin(angle - chord), Math.cos(angle - chord));
  const bent = { yI: 0, yJ: 0, zI: turned(plane.angleI), zJ: turned(plane.angleJ) };
  const length = plane.restLength ?? Math.hypot(b.x - a.x, b.y - a.y);
  // What has crept keeps its share of the bend it has as drawn; what was bent cold is unstressed as drawn.
  const kept = slice.sprung ? keptBend(plane, length) : 1;
  const own = stiffnessOf(item, plane.EA / sectionOf(item).area);
  const filling = Math.max(0, plane.EI - own.EIdeep);
  const { springI, springJ } = ends(builder, k);
  return {
    EA: plane.EA,
    EIz: plane.EI,
    EIy: own.EIflat + filling,
    GJ: own.GJ,
    // Its unstressed length is the drawn one by the piece's own cubic: the arc's, longer by a hair, would stretch it.
    bent,
    ...(kept === 1 ? {} : { restBent: { yI: 0, yJ: 0, zI: kept * bent.zI, zJ: kept * bent.zJ } }),
    ...(springI === undefined ? {} : { springI }),
    ...(springJ === undefined ? {} : { springJ }),
  };
}

/** Unstressed curvature of a sprung piece over the curvature it has as drawn. */
function keptBend({ angleI = 0, angleJ = 0, restCurvature = 0 }: PlaneElement, length: number): number {
  const drawn = (angleJ - angleI) / length;
  return drawn === 0 ? 0 : restCurvature / drawn;
}

/**
 * Joints in the frame. A coupler turns alike both ways. At a peak or on a rail a frame may turn in its own plane, and
 * the seat keeps it from leaning along the house.
 */
function ends(builder: HouseBuilder, k: number): Pick<SpaceElement, 'springI' | 'springJ'> {
  const { slice, shelter } = builder;
  const plane = slice.model.elements[k]!;
  const [first, last] = [k === slice.roof[0], k === slice.roof[slice.roof.length - 1]];
  const seat = shelter.sidePosts === undefined ? undefined : seatTurning(builder);
  const spring = (own: Spring, seated: boolean): SpaceElement['springI'] => {
    if (seated && seat !== undefined) return { z: seat, ...(seat > 0 ? { y: seat } : {}) };
    if (own === undefined) return undefined;
    return { z: own, ...(own > 0 ? { y: own } : {}) };
  };
  return { springI: spring(plane.springI, first), springJ: spring(plane.springJ, last) };
}

/** How a frame's end turns on the post or rail it sits on; undefined for rigid. */
function seatTurning({ shelter, slice }: HouseBuilder): Spring {
  if (shelter.roof.type === 'rafters') return turning((shelter.roof as Rafters).eaveJoint?.item);
  return slice.model.elements[slice.roof[0]!]!.springI ?? 0;
}
