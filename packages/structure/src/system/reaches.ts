/** The stretch along the house that each frame carries, m: half the way to its neighbours on either side. */
export function reaches(stations: readonly number[]): { readonly from: number; readonly to: number }[] {
  return stations.map((z, k) => ({
    from: k === 0 ? z : (z + stations[k - 1]!) / 2,
    to: k + 1 === stations.length ? z : (z + stations[k + 1]!) / 2,
  }));
}
