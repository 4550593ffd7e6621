import type { SnowZone } from '@tautline/loads';

/** Snow on plan at a share of the span, Pa. */
export function snowAt(zones: readonly SnowZone[], share: number): number {
  const zone = zones.find((candidate) => share >= candidate.from && share <= candidate.to);
  if (zone === undefined) return 0;
  const along = zone.to > zone.from ? (share - zone.from) / (zone.to - zone.from) : 0;
  return zone.loadFrom + along * (zone.loadTo - zone.loadFrom);
}
