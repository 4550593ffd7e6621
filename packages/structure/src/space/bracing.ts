/** Braces, guys and ties: every piece of them, from the one the shelter describes. */
import { type Brace, leaning, type Shelter } from '@tautline/shelter';
import { arcNear } from '../system/arc-near.ts';
import type { HouseBuilder, Point } from './house-builder.ts';

export interface Strut {
  readonly brace: Brace;
  readonly from: Point;
  readonly to: Point;
}

/** On the ground, m: lower than this a brace ends in the ground or at a foot. */
const ground = 0.05;
/** A brace further than this from anything it could be fixed to hangs in the air, m. */
const reach = 0.75;

/** Every piece of a brace: mirrored to both sides and both ends, or once in every bay, where they lean by turns. */
export function strutsOf(shelter: Shelter, brace: Brace): Strut[] {
  const across = ([x, y, z]: Point): Point => [shelter.width - x, y, z];
  const along = ([x, y, z]: Point): Point => [x, y, shelter.length - z];
  const moved =
    (by: number) =>
    ([x, y, z]: Point): Point => [x, y, z + by];
  const from: Point = [brace.from.x, brace.from.y, brace.from.z];
  const to: Point = [brace.to.x, brace.to.y, brace.to.z];
  const stations = shelter.sidePosts?.stations ?? shelter.roof.stations;
  const laid = (change: (p: Point) => Point): Strut => ({ brace, from: change(from), to: change(to) });
  const bothSides = (list: readonly Strut[]): Strut[] =>
    list.flatMap((strut) => [strut, { brace, from: across(strut.from), to: across(strut.to) }]);
  const atStations = (): Strut[] => stations.map((z) => laid(moved(z - from[2])));
  const same = (p: Point): Point => p;
  if (brace.role === 'tie') {
    const last = Math.max(1, brace.count - 1);
    return Array.from({ length: brace.count }, (_, k) =>
      laid(moved(nearest(shelter.roof.stations, (shelter.length * k) / last) - from[2])),
    );
  }
  if (brace.role === 'guy') {
    if (brace.plane === 'across') return bothSides(atStations());
    const ends = [laid(same), laid(along)];
    return brace.count > 2 ? bothSides(ends) : ends;
  }
  if (brace.plane === 'across') return bothSides(brace.count > 4 ? atStations() : [laid(same), laid(along)]);
  const bays = brace.count / 2;
  if (bays <= 2) return bothSides([laid(same), laid(along)]);
  return bothSides(
    stations.slice(1).map((z, bay): Strut => {
      const [foot, head] = leaning(stations[bay]!, z, bay);
      return { brace, from: [from[0], from[1], foot], to: [to[0], to[1], head] };
    }),
  );
}

function nearest(stations: readonly number[], z: number): number {
  return stations.reduce((best, at) => (Math.abs(at - z) < Math.abs(best - z) ? at : best), stations[0]!);
}

/** Arc lengths on a frame, and heights on a post, at which bracing is fixed. */
export function bracedPlaces(shelter: Shelter): { readonly arcs: number[]; readonly heights: number[] } {
  const { line, springing } = shelter.roof;
  const onPosts = shelter.sidePosts !== undefined;
  const ends = shelter.braces.flatMap((brace) =>
    strutsOf(shelter, brace).flatMap(({ from, to }) => [from, to]),
  );
  const high = ends.filter(([, y]) => y > ground);
  const arcs = high
    .filter(([, y]) => !onPosts || y > springing + ground)
    .map(([x, y]) => arcNear(line, x, y));
  const heights = onPosts ? high.filter(([, y]) => y < springing - ground).map(([, y]) => y) : [];
  return { arcs: distinct(arcs), heights: distinct(heights) };
}

/** In order, no two nearer than 2 cm. */
export function distinct(values: readonly number[], taken: readonly number[] = []): number[] {
  const kept: number[] = [];
  for (const value of [...values].sort((a, b) => a - b))
    if ([...kept, ...taken].every((other) => Math.abs(other - value) > 0.02)) kept.push(value);
  return kept;
}

/** All bracing, each piece between the nodes nearest to its ends; ends on the ground stand in it. */
export function addBracing(builder: HouseBuilder): void {
  const { shelter } = builder;
  for (const brace of shelter.braces) {
    const role = brace.role === 'guy' ? 'guy' : brace.role === 'tie' ? 'tie' : 'brace';
    strutsOf(shelter, brace).forEach((strut, piece) => {
      const i = fixedTo(builder, strut.from, brace);
      const j = fixedTo(builder, strut.to, brace);
      if (i === undefined || j === undefined || i === j || builder.distance(i, j) < ground) {
        builder.notes.add(`Some ${brace.role}s of ${brace.id} meet no frame or post and are left out.`);
        return;
      }
      // What guys were set up with is added by their checks.
      const pull = role === 'brace' && brace.member.kind === 'cable' ? (brace.tension ?? 0) : 0;
      builder.bar(i, j, brace.member, { part: brace.id, role, piece }, pull);
    });
    if (role === 'brace' && brace.member.kind !== 'cable')
      builder.notes.add('Braces are fixed at their two ends only and may push as well as pull.');
  }
}

function fixedTo(builder: HouseBuilder, point: Point, brace: Brace): number | undefined {
  let best = -1;
  let off = Number.POSITIVE_INFINITY;
  builder.nodes.forEach((node, index) => {
    if (node.part === 'link' || node.part === brace.foot?.id) return;
    const d = Math.hypot(node.x - point[0], node.y - point[1], 4 * (node.z - point[2]));
    if (d < off) [best, off] = [index, d];
  });
  if (point[1] <= ground && off > 0.3) return builder.anchor(point, brace.foot?.id ?? `${brace.id}/foot`);
  return off <= reach ? best : undefined;
}
