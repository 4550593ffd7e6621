/** Where frames and posts stand along the house. */

/** More frames than this is taken for a slip of the pen. */
export const mostStations = 2000;

/**
 * Places along a length: one at each end, one every `spacing` from the front; the last bay is shorter when
 * the length does not divide evenly (a remainder under 5 mm is left to the builder's tape).
 * Undefined when there would be none or too many. m.
 */
export function stationsAlong(length: number, spacing: number): readonly number[] | undefined {
  if (!(length > 0) || !(spacing > 0) || length / spacing > mostStations) return undefined;
  const bays = Math.max(1, Math.floor(length / spacing + 1e-9));
  const stations = [0];
  for (let n = 1; n <= bays; n++) {
    const z = n * spacing;
    if (z < length - 0.005) stations.push(z);
  }
  stations.push(length);
  return stations;
}
