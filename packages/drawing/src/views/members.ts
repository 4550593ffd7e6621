/** What several views ask of a shelter: its rows of posts, its rails, its bays. */
import { format, type System } from '@tautline/quantity';
import type { Posts, Rail, Shelter } from '@tautline/shelter';

/** Ridge, eave rails and purlins, whichever there are. */
export const allRails = (shelter: Shelter): readonly Rail[] =>
  [shelter.ridge, shelter.eaveRail, ...shelter.purlins].filter((rail): rail is Rail => rail !== undefined);

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
