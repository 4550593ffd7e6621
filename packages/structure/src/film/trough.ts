/**
 * Water standing in a film that hangs as a parabola between two level edges: a blown-up roof whose fan has stopped.
 * Per metre of house. The film is taken as already as long as it hangs (no stretch), which asks more of it.
 */
import { WATER } from '@tautline/mechanics';

export interface Trough {
  /** Cross-section of the water, m2, which is its volume per metre of house. */
  readonly area: number;
  /** Depth in the middle and width of the water's surface, m. */
  readonly depth: number;
  readonly width: number;
  /** Horizontal pull at each edge and half of the water's weight, N/m. */
  readonly across: number;
  readonly down: number;
  /** Pull of the film where it meets its edge, N/m. */
  readonly pull: number;
}

/** Water that the trough holds to its brim, m2. */
export const fullTrough = (span: number, sag: number): number => (2 / 3) * span * sag;

/**
 * The trough with a cross-section of water in it. A surface of width b over a parabola of sag d has the depth
 * d (b/S)² and the area 2/3 b times that; the pull follows from the balance of one half about the lowest point:
 * H d = W/2 (S/2 - 3b/16) (cable under a load over its middle, general mechanics). More than full counts as full.
 */
export function troughWith(span: number, sag: number, area: number): Trough {
  const held = Math.min(Math.max(area, 0), fullTrough(span, sag));
  const width = span * Math.cbrt(held / fullTrough(span, sag));
  const depth = sag * (width / span) ** 2;
  const down = (WATER * held) / 2;
  const across = (down * (span / 2 - (3 * width) / 16)) / sag;
  return { area: held, depth, width, across, down, pull: Math.hypot(across, down) };
}
