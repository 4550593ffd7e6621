import { positive, type Refusal, refuse } from './outcome.ts';

/** Tension of a film curved at `radius` (m) under a pressure (Pa) across it, N per m of width: T = p·R. */
export const hoopTension = (pressure: number, radius: number): number => pressure * radius;

/** Sag of a strip under a pressure (Pa) at tension `tension` (N/m) between supports `span` apart, m: p·s²/8T. */
export const stripSag = (pressure: number, span: number, tension: number): number =>
  (pressure * span ** 2) / (8 * tension);

export interface StripAnswer {
  readonly ok: true;
  /** N per m of width */
  readonly tension: number;
  /** m */
  readonly sag: number;
  /** stretch of the film beyond its pretension, as a part of its length */
  readonly addedStrain: number;
  /** slope of the chord from which water no longer stands in the sag, as rise over run: 4·sag/span */
  readonly slopeToDrain: number;
}

/**
 * Film strip between two supports that do not move: stretched by the load until T²(T - T0) = Et·p²·s²/24.
 * `stiffness` is Et of the film, N/m; `pretension` T0, N/m; `slack` its length beyond the span, as a part of it.
 * The parabola's equation: the strip is a cable of the same loads (see `tautCable`); good to 2 % for sag/span <= 1/10.
 */
export function stripUnderLoad(strip: {
  readonly span: number;
  readonly stiffness: number;
  readonly pretension: number;
  readonly slack?: number | undefined;
  readonly pressure: number;
}): StripAnswer | Refusal {
  const { span, stiffness, pretension, pressure } = strip;
  if (!positive(span) || !positive(stiffness)) return refuse('span and film stiffness must be above zero');
  if (!(pretension >= 0 && Number.isFinite(pretension) && Number.isFinite(pressure)))
    return refuse('pretension must not be below zero, and the load must be finite');
  const slack = strip.slack ?? 0;
  if (!(slack >= 0 && (slack === 0 || pretension === 0))) return refuse('a slack film has no pretension');
  const first = pretension - stiffness * slack;
  const K = (stiffness * (pressure * span) ** 2) / 24;
  if (K === 0 && first <= 0) return refuse('the film hangs slack and unloaded: it has no shape');
  let tension = Math.max(first, 0) + Math.cbrt(K);
  for (let n = 0; n < 100; n++) {
    const step = (tension * tension * (tension - first) - K) / (tension * (3 * tension - 2 * first));
    tension -= step;
    if (!(Math.abs(step) > 1e-15 * tension)) break;
  }
  const sag = stripSag(pressure, span, tension);
  return {
    ok: true,
    tension,
    sag,
    addedStrain: (tension - pretension) / stiffness,
    slopeToDrain: slopeToDrain(sag, span),
  };
}

/** Slope (rise over run) that a sagging parabola's chord needs for its lower end to be its lowest point: 4·sag/span. */
export const slopeToDrain = (sag: number, span: number): number => (4 * Math.abs(sag)) / span;

/** Tension (N/m) at which a film under a load (Pa) just drains at a chord slope (rise over run): p·s/2m. */
export const tensionToDrain = (pressure: number, span: number, slope: number): number =>
  slope > 0 ? (pressure * span) / (2 * slope) : Number.POSITIVE_INFINITY;
