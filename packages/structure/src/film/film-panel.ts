/**
 * The film between two frames as a strip in tension. All per metre of strip width.
 *
 * The film is put on at a pull T0 and a temperature; polyethylene relaxes, so only part of T0 is left
 * after a season; heat lengthens it (slack), stretch under load tightens it again.
 */
import { WATER } from '@tautline/mechanics';
import type { Cover, FilmItem } from '@tautline/shelter';
import { gravity } from '../system/member.ts';

/** Share of the fitting pull that is left after the first season: from memory, for polyethylene films. */
export const pullKept = 0.5;

/** Film temperature while it rains, °C, taken equal to a mild day: rain cools the film. */
export const rainTemperature = 20;

/** Depth of the moving sheet of water on the film in heavy rain, m: common practice, no source. */
export const rainSheet = 0.001;

export interface FilmPanel {
  readonly cover: Pick<Cover, 'id' | 'tension' | 'fittedAt'>;
  readonly film: FilmItem;
  /** Distance between the frames that carry the film, m. */
  readonly spacing: number;
  /** Stretch stiffness E·t, N/m. */
  readonly stiffness: number;
  /** Weight of the film, N/m2. */
  readonly weight: number;
}

export function filmPanel(cover: Cover, spacing: number): FilmPanel | undefined {
  if (cover.skin.kind !== 'film') return undefined;
  const film = cover.skin;
  const { id, tension, fittedAt } = cover;
  return {
    cover: { id, tension, fittedAt },
    film,
    spacing,
    stiffness: film.modulus * film.thickness,
    weight: film.thickness * film.density * gravity,
  };
}

export interface FilmPull {
  /** Pull left at this temperature, N/m; 0 when slack. */
  readonly pull: number;
  /** Excess length when slack, as a strain; 0 when tight. */
  readonly slack: number;
}

/** Pull that is left in a relaxed film at a temperature (°C), or its slack. */
export function pullAt(panel: FilmPanel, temperature: number): FilmPull {
  const strain =
    (pullKept * panel.cover.tension) / panel.stiffness -
    panel.film.expansion * (temperature - panel.cover.fittedAt);
  return strain >= 0 ? { pull: strain * panel.stiffness, slack: 0 } : { pull: 0, slack: -strain };
}

/**
 * Sag in the middle between the frames under an even pressure p (Pa), m: T = p s²/8f with
 * T = T1 + E t (8/3 (f/s)² - slack). Root by bisection.
 * Source: parabolic cable strip, general mechanics.
 */
export function sagUnder(
  panel: Pick<FilmPanel, 'spacing' | 'stiffness'>,
  state: FilmPull,
  pressure: number,
): number {
  const s = panel.spacing;
  const out = (f: number): number =>
    state.pull + panel.stiffness * ((8 / 3) * (f / s) ** 2 - state.slack) - (pressure * s * s) / (8 * f);
  let low = 1e-9;
  let high = s;
  for (let k = 0; k < 100; k++) {
    const middle = (low + high) / 2;
    if (out(middle) > 0) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

/** Slope of the film towards its frame when it sags f in a half sine: π f / s. */
export function edgeSlope(sag: number, spacing: number): number {
  return (Math.PI * sag) / spacing;
}

/**
 * Depth of the pocket that standing water can pull a strip down to before its own stretch holds the
 * water, m; 0 where the pull alone holds it. A strip holds water stably while T > γ s²/π²
 * (membrane strip stability); stretch raises T by E t · 8/3 (f/s)².
 */
export function pocketDepth(panel: FilmPanel, state: FilmPull): number {
  const s = panel.spacing;
  const needed = (WATER * s * s) / Math.PI ** 2 - state.pull + panel.stiffness * state.slack;
  return needed <= 0 ? 0 : s * Math.sqrt((3 * needed) / (8 * panel.stiffness));
}
