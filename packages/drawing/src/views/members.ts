/** What several views ask of a shelter: its rows of posts, its rails, its bays. */
import { format, type System } from '@tautline/quantity';
import type { Brace, Posts, Rail, Shelter } from '@tautline/shelter';
import { type Point, point } from '../scene/shapes.ts';

/** Ridge, eave rails, purlins and baseboards, whichever there are. */
export const allRails = (shelter: Shelter): readonly Rail[] =>
  [shelter.ridge, shelter.eaveRail, ...shelter.purlins, shelter.baseboards].filter(
    (rail): rail is Rail => rail !== undefined,
  );

/** Every row of posts once, also where two rails share it. */
export function allPosts(shelter: Shelter): readonly Posts[] {
  const rows = [shelter.sidePosts, ...allRails(shelter).map((rail) => rail.posts)];
  const seen = new Set<string>();
  return rows.filter((row): row is Posts => row !== undefined && !seen.has(row.id) && !!seen.add(row.id));
}

export interface Bay {
  readonly part: string;
  readonly name: string;
  readonly value: number;
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/**
 * Spacings along the house: a run of equal bays is measured once, at its first bay, and counted
 * ("bay 1.2 m, 12 of"), so that the drawing stays readable and a short last bay still shows.
 */
export function bayMeasures(
  part: string,
  name: string,
  stations: readonly number[],
  system: System,
): readonly Bay[] {
  const bays: Bay[] = [];
  let i = 0;
  while (i + 1 < stations.length) {
    const from = stations[i] ?? 0;
    const value = (stations[i + 1] ?? 0) - from;
    let count = 1;
    while (
      i + count + 1 < stations.length &&
      Math.abs((stations[i + count + 1] ?? 0) - (stations[i + count] ?? 0) - value) < 1e-3
    )
      count++;
    const size = `${name} ${format(value, 'length', system)}`;
    bays.push({ part, name, value, from, to: from + value, text: count > 1 ? `${size}, ${count} of` : size });
    i += count;
  }
  return bays;
}

/** Post spacings, the first of each row; rows that share their places are measured once. */
export function postBays(shelter: Shelter, system: System): readonly Bay[] {
  const places = (row: Posts): string => row.stations.map((z) => z.toFixed(4)).join();
  const rows = allPosts(shelter);
  const different = rows.filter((row, i) => rows.findIndex((other) => places(other) === places(row)) === i);
  return different.flatMap((row) => {
    const name = different.length === 1 ? 'posts' : row.where === 'sides' ? 'side posts' : 'inner posts';
    return bayMeasures(row.id, name, row.stations, system).slice(0, 1);
  });
}

/** Where the equal braces of one kind stand, seen from above: the one described, mirrored across and along. */
export function bracePlaces(shelter: Shelter, brace: Brace): readonly (readonly [Point, Point])[] {
  const { width, length } = shelter;
  const one = [point(brace.from.z, brace.from.x), point(brace.to.z, brace.to.x)] as const;
  const flip = (p: Point, z: boolean, x: boolean): Point =>
    point(z ? length - p.x : p.x, x ? width - p.y : p.y);
  const all = [
    [false, false],
    [true, false],
    [false, true],
    [true, true],
  ].map(([z = false, x = false]) => [flip(one[0], z, x), flip(one[1], z, x)] as const);
  const different = all.filter(
    (a, i) =>
      all.findIndex((b) =>
        b.every((p, k) => Math.hypot(p.x - (a[k] as Point).x, p.y - (a[k] as Point).y) < 1e-6),
      ) === i,
  );
  return different.slice(0, Math.max(1, brace.count));
}

/** How far beyond the end frames anchors of a ridge are drawn, m: the model does not say. */
export const END_ANCHOR_OUT = 1;

/** Tells the reader of a drawing that the place of end anchors is only a picture. */
export const anchorNote = (shelter: Shelter): readonly string[] =>
  allRails(shelter).some((rail) => rail.endAnchor)
    ? [
        'End anchors are drawn a little beyond the end frames for the picture only; how far out they stand is not said.',
      ]
    : [];
