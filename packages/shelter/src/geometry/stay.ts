/** The ends of a ridge cable, which run over the last posts down to anchors in the ground. */
import type { Rail } from '../model/shelter.ts';

/** Slope at which they run down, rad; 45° where the rail does not say how far out its anchors stand. */
export function staySlope(rail: Pick<Rail, 'lines' | 'anchorOut'>): number {
  const [line] = rail.lines;
  return line === undefined || rail.anchorOut === undefined
    ? Math.PI / 4
    : Math.atan2(line.y, rail.anchorOut);
}

/** Length of one of them, m. */
export function stayLength(rail: Pick<Rail, 'lines' | 'anchorOut'>): number {
  return (rail.lines[0]?.y ?? 0) / Math.sin(staySlope(rail));
}
