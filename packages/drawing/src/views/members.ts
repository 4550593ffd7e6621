/** What several views ask of a shelter: its rows of posts, its rails, its bays. */
import { format, type System } from '@tautline/quantity';
import {
  type Brace,
  leaning,
  type Posts,
  type Rail,
  type Roof,
  railsUnder,
  type Shelter,
  stayLength,
  staySlope,
} from '@tautline/shelter';
import { type Point, point } from '../scene/shapes.ts';

/** Eave rails, ridge, inner lines, purlins and baseboards, whichever there are. */
export const allRails = (shelter: Shelter): readonly Rail[] =>
  [shelter.eaveRail, ...railsUnder(shelter), ...shelter.purlins, shelter.baseboards].filter(
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
 * ("bay 1.2 m, 12 times"), so that the drawing stays readable and a short last bay still shows.
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
    bays.push({
      part,
      name,
      value,
      from,
      to: from + value,
      text: count > 1 ? `${size}, ${count} times` : size,
    });
    i += count;
  }
  return bays;
}

/** Post spacings of each row; rows that share their places are measured once. */
export function postBays(shelter: Shelter, system: System): readonly Bay[] {
  const places = (row: Posts): string => row.stations.map((z) => z.toFixed(4)).join();
  const rows = allPosts(shelter);
  const different = rows.filter((row, i) => rows.findIndex((other) => places(other) === places(row)) === i);
  return different.flatMap((row) =>
    bayMeasures(row.id, different.length === 1 ? 'posts' : `${postNoun(row)}s`, row.stations, system),
  );
}

const postNouns = { sides: 'side post', centre: 'ridge post', line: 'inner post' } as const;

/** What a row of posts is called. */
export const postNoun = ({ where }: Posts): string => postNouns[where];

/** What stands at the stations of a roof. */
export const bayNoun = ({ type }: Roof): string =>
  type === 'cap' ? 'cap' : type === 'inflated' ? 'straps' : 'bay';

/** Model axes: x across, y up, z along, m. */
export type Space = readonly [x: number, y: number, z: number];
export type Run = readonly [from: Space, to: Space];

/**
 * Both ends of every brace, guy or tie of one kind. Up to four are the one described, mirrored across and
 * along the house; more stand at every post (or frame), or in every bay, on both sides; ties stand in a row.
 */
export function braceRuns(shelter: Shelter, brace: Brace): readonly Run[] {
  const { width, length } = shelter;
  const { from, to, count } = brace;
  const run = (z: readonly [number, number], mirrored: boolean): Run => {
    const across = (x: number): number => (mirrored ? width - x : x);
    return [
      [across(from.x), from.y, z[0]],
      [across(to.x), to.y, z[1]],
    ];
  };
  const both = (a: number, b: number): readonly Run[] => [run([a, b], false), run([a, b], true)];
  const stations = shelter.sidePosts?.stations ?? shelter.roof.stations;
  let runs: readonly Run[];
  if (brace.role === 'tie') {
    const step = count > 1 ? length / (count - 1) : 0;
    runs = Array.from({ length: count }, (_, n) => run([n * step, n * step], false));
  } else if (count <= 4) {
    runs = [...both(from.z, to.z), ...both(length - from.z, length - to.z)];
    // The far end before the other side, so that two stand at the two ends.
    runs = [runs[0], runs[2], runs[1], runs[3]] as readonly Run[];
  } else if (from.z === to.z) runs = stations.flatMap((z) => both(z, z));
  else runs = stations.slice(1).flatMap((z, n) => both(...leaning(stations[n] ?? 0, z, n)));
  const key = (one: Run): string => one.map((p) => p.map((v) => v.toFixed(6)).join()).join();
  const keys = runs.map(key);
  return runs.filter((_, n) => keys.indexOf(keys[n] ?? '') === n).slice(0, Math.max(1, count));
}

/** The same from above, as places along and across. */
export const bracePlaces = (shelter: Shelter, brace: Brace): readonly (readonly [Point, Point])[] =>
  braceRuns(shelter, brace).map(([a, b]) => [point(a[2], a[0]), point(b[2], b[0])]);

/** How far beyond the end frames the anchors of a ridge cable stand, m. */
export const anchorOut = (rail: Rail): number => stayLength(rail) * Math.cos(staySlope(rail));
