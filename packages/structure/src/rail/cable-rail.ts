import type { CableItem } from '@tautline/shelter';

export interface CableState {
  /** Sag in the middle, m. */
  readonly sag: number;
  /** Horizontal pull, N. */
  readonly tension: number;
}

/**
 * A cable ridge under an even load w (N/m) between two posts a span L apart, pretensioned to T0:
 * the parabola's H = w L²/8f and its length L(1 + 8/3 (f/L)²) against the cable's stretch (T - T0)/EA.
 * The sag is found by bisection; it exists and is single because the stretch grows with f and H falls.
 * Source: parabolic cable, general mechanics; the posts are taken not to give.
 */
export function cableUnderLoad(cable: CableItem, span: number, pretension: number, load: number): CableState {
  const rigidity = cable.modulus * cable.area;
  const excess = (sag: number): number =>
    pretension + (rigidity * 8 * sag * sag) / (3 * span * span) - (load * span * span) / (8 * sag);
  let low = 1e-9 * span;
  let high = span;
  for (let k = 0; k < 200 && high - low > 1e-12 * span; k++) {
    const middle = (low + high) / 2;
    if (excess(middle) > 0) high = middle;
    else low = middle;
  }
  const sag = (low + high) / 2;
  return { sag, tension: (load * span * span) / (8 * sag) };
}
