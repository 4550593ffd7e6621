/** Places closer than this are one, m: a piece so short would have no bending of its own. */
const samePlace = 1e-3;

/**
 * Evenly divided arc lengths with the given places moved in: each place becomes a node, and the
 * nearest even division gives way to it when the two are closer than half a division.
 */
export function divide(length: number, parts: number, places: readonly number[]): number[] {
  const step = length / parts;
  const divisions: number[] = [];
  for (let i = 0; i <= parts; i++) divisions.push((length * i) / parts);
  const inside = [...places]
    .sort((a, b) => a - b)
    .filter((place, k, all) => k === 0 || place - all[k - 1]! > samePlace)
    .filter((place) => place > step / 4 && place < length - step / 4);
  const kept = divisions.filter(
    (s, index) => index === 0 || index === parts || inside.every((place) => Math.abs(place - s) >= step / 2),
  );
  return [...kept, ...inside].sort((a, b) => a - b);
}

/** The node of the station nearest to an arc length. */
export function nodeNear(stations: readonly number[], nodes: readonly number[], s: number): number {
  let best = 0;
  stations.forEach((at, k) => {
    if (Math.abs(at - s) < Math.abs(stations[best]! - s)) best = k;
  });
  return nodes[best]!;
}
