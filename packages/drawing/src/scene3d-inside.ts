/** What stands in the house in space: end frames, benches, beds, tanks and obstacles. */
import type { Shelter, Thing } from '@tautline/shelter';
import { bar, footSegments, type Segment, segment } from './scene3d-bars.ts';
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
