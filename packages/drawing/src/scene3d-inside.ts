/** What stands in the house in space: end frames and doors, benches, beds, tanks and obstacles. */
import type { Door, EndFrames, Shelter, Thing } from '@tautline/shelter';
import { depthOf } from './describe.ts';
import { bar, footSegments, type Segment, segment } from './scene3d-bars.ts';
import type { Space } from './views/members.ts';
import { benchLegs, FLAT } from './views/things.ts';

/** Uprights and rails of both ends, with their feet. */
export function endSegments({ endFrames: ends, length }: Shelter): readonly Segment[] {
  if (!ends) return [];
  const { rail } = ends;
  return [0, length].flatMap((z) => [
    ...ends.uprights.flatMap(({ x, height }) => [
      segment(ends.id, ends.member, [x, 0, z], [x, height, z]),
      ...footSegments(ends.foot, ends.member, x, z, 0),
    ]),
    ...(rail ? [segment(ends.id, rail.member, [rail.from, rail.height, z], [rail.to, rail.height, z])] : []),
  ]);
}

/** Depth and breadth of the bars of a door's leaf, m, for the picture. */
const LEAF = [0.06, 0.03] as const;

/** Leaves of the doors, shut, a little outside the ends that they close. */
export function doorSegments({ doors = [], endFrames, length }: Shelter): readonly Segment[] {
  return doors.flatMap((door) => [
    ...(door.end === 'back' ? [] : leaf(door, endFrames, -0.04)),
    ...(door.end === 'front' ? [] : leaf(door, endFrames, length + 0.04)),
  ]);
}

function leaf(door: Door, ends: EndFrames | undefined, z: number): readonly Segment[] {
  const side = (ends ? depthOf(ends.member) / 2 : 0) + 0.03;
  const [a, b] = [door.left + side, door.left + door.width - side];
  const [low, top] = [0.04, door.height - 0.05];
  const from = (x: number, y: number): Space => [x, y, z];
  const runs: readonly (readonly [Space, Space])[] = [
    [from(a, low), from(a, top)],
    [from(b, low), from(b, top)],
    ...[low, (low + top) / 2, top].map((y) => [from(a, y), from(b, y)] as const),
    // The brace runs up from the hinged foot.
    [from(a, low), from(b, (low + top) / 2)],
  ];
  return runs.map(([p, q]) => bar(door.id, p, q, ...LEAF));
}

/** Things as boxes of their own size, benches as a top on legs. */
export function thingSegments({ things }: Shelter): readonly Segment[] {
  return things.flatMap((thing) => thing.lefts.flatMap((left) => standing(thing, left)));
}

function standing(thing: Thing, left: number): readonly Segment[] {
  const high = Math.max(thing.height, FLAT);
  const bench = thing.kind === 'bench' && thing.height > 0;
  const thick = bench ? 0.05 : high;
  const [x, y] = [left + thing.width / 2, high - thick / 2];
  const ends = [thing.starts, thing.starts + thing.length] as const;
  const box = bar(thing.id, [x, y, ends[0]], [x, y, ends[1]], thick, thing.width);
  if (!bench) return [box];
  const legs = benchLegs(...ends).flatMap((z) =>
    benchLegs(left, left + thing.width).map((at) =>
      bar(thing.id, [at, 0, z], [at, high - thick, z], 0.04, 0.04),
    ),
  );
  return [box, ...legs];
}
