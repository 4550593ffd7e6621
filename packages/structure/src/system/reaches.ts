/** A stretch along the house, m from its front. */
export interface Reach {
  readonly from: number;
  readonly to: number;
}

/** The stretch along the house that each frame carries: half the way to its neighbours on either side. */
export function reaches(stations: readonly number[]): Reach[] {
  return stations.map((z, k) => ({
    from: k === 0 ? z : (z + stations[k - 1]!) / 2,
    to: k + 1 === stations.length ? z : (z + stations[k + 1]!) / 2,
  }));
}
