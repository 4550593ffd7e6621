/** Pull in the roof film in a gust and in the cold, N/m, at the level of the site's combinations. */
import { claddingSuction, type Step } from '@tautline/loads';
import type { Cover, Shelter } from '@tautline/shelter';
import {
  type FilmPanel,
  filmPanel,
  pullAt,
  sagUnder,
  stormTemperature,
  windShape,
} from '@tautline/structure';
import { windFactor } from './basis.ts';
import { given, step } from './judge.ts';

export interface FilmLoad {
  readonly panel: FilmPanel;
  /** Pull left in the film in a storm without wind, N/m. */
  readonly resting: number;
  /** Suction on the film in its middle and along its edges, and pressure on it, Pa, all positive. */
  readonly suction: { readonly middle: number; readonly edge: number };
  readonly pressure: number;
  /** Length of the film over the frame and the straight way between its edges, m. */
  readonly length: number;
  readonly chord: number;
  readonly steps: readonly Step[];
}

/** What acts on the film of a roof, or why that cannot be told. */
export function filmLoad(shelter: Shelter, cover: Cover): FilmLoad | { readonly reason: string } {
  const { roof, site } = shelter;
  if (roof.type !== 'bows' && roof.type !== 'rafters')
    return { reason: `a film on a roof of kind '${roof.type}' is not covered` };
  const panel = filmPanel(cover, roof.spacing);
  if (panel === undefined) return { reason: 'the covering is no film' };
  const factor = windFactor(site);
  const cladding = claddingSuction(site, windShape(shelter));
  const at = (place: string): number =>
    factor * Math.max(0, -(cladding.zones.find((zone) => zone.place === place)?.suction ?? 0));
  const first = roof.line[0]!;
  const last = roof.line[roof.line.length - 1]!;
  return {
    panel,
    resting: pullAt(panel, stormTemperature).pull,
    suction: { middle: at('middle'), edge: at('edge') },
    pressure: factor * (cladding.zones.find((zone) => zone.place === 'middle')?.pressure ?? 0),
    length: last.s - first.s,
    chord: Math.hypot(last.x - first.x, last.y - first.y),
    steps: cladding.steps,
  };
}

/**
 * Radius of the arc that a length makes over a chord, m: L / c = α / sin α, R = L / 2α. Newton's rule from the
 * flat arc α² = 6 (L/c - 1), kept inside (0, π).
 */
export function arcRadius(length: number, chord: number): number {
  const ratio = length / chord;
  if (ratio <= 1 + 1e-9) return Number.MAX_VALUE;
  let half = Math.min(3, Math.sqrt(6 * (ratio - 1)));
  for (let pass = 0; pass < 50; pass++) {
    const move = (half - ratio * Math.sin(half)) / (1 - ratio * Math.cos(half));
    const next = Math.min(Math.PI - 1e-9, Math.max(half / 2, half - move));
    if (Math.abs(next - half) < 1e-13) break;
    half = next;
  }
  return length / (2 * half);
}

/**
 * Pull across a film that suction p (Pa) lifts off its frames, N/m: T = p R, with R the radius of the arc
 * that the film's own length makes between its two edges, stretched by the pull itself. By bisection.
 */
export function liftedPull(load: FilmLoad, suction: number): { pull: number; radius: number } {
  const { length, chord, resting, panel } = load;
  const radiusAt = (pull: number): number =>
    arcRadius(length * (1 + Math.max(0, pull - resting) / panel.stiffness), chord);
  let low = 0;
  let high = 1;
  while (suction * radiusAt(high) > high && high < 1e9) high *= 2;
  for (let pass = 0; pass < 45; pass++) {
    const middle = (low + high) / 2;
    if (suction * radiusAt(middle) > middle) low = middle;
    else high = middle;
  }
  const pull = (low + high) / 2;
  return { pull, radius: radiusAt(pull) };
}

/** Pull of a strip of film over a span between frames or straps under a pressure p (Pa), N/m: T = p s² / 8 f. */
export function stripPull(load: FilmLoad, span: number, pressure: number): { pull: number; sag: number } {
  const panel = { ...load.panel, spacing: span };
  const sag = sagUnder(panel, { pull: load.resting, slack: 0 }, Math.max(pressure, 1e-9));
  return { pull: (pressure * span * span) / (8 * sag), sag };
}

export interface WorstPull {
  readonly pull: number;
  readonly what: string;
  readonly steps: readonly Step[];
}

/**
 * Greatest pull in the film itself in a gust. `scale` multiplies the wind pressure, for other gusts than the
 * site's. Suction: T = p R where nothing lies over the film, a strip between straps where straps do.
 * Pressure: a strip between the frames.
 */
export function gustPull(load: FilmLoad, scale = 1): WorstPull {
  const pressed = stripPull(load, load.panel.spacing, scale * load.pressure);
  const pressedStep = step(
    'T_p',
    'pull of the film pressed in between the frames',
    'T = p s² / 8 f, T = T_1 + E t (8/3) (f/s)²',
    [
      given('p', 'pressure on the film', scale * load.pressure, 'pressure'),
      given('s', 'distance between the frames', load.panel.spacing, 'length'),
      given('f', 'sag', pressed.sag, 'length'),
    ],
    pressed.pull,
    'line-load',
    'parabola',
  );
  const straps = load.panel.cover.straps;
  let lifted: WorstPull;
  if (straps === undefined) {
    const { pull, radius } = liftedPull(load, scale * load.suction.middle);
    lifted = {
      pull,
      what: 'suction lifts it off the frames',
      steps: [
        step(
          'T',
          'pull of the film lifted off the frames',
          'T = p R',
          [
            given('p', 'suction on the film', scale * load.suction.middle, 'pressure'),
            given('R', 'radius of the arc its length makes between its edges', radius, 'length'),
          ],
          pull,
          'line-load',
          'membrane-arc',
        ),
      ],
    };
  } else {
    const { pull, sag } = stripPull(load, straps.spacing, scale * load.suction.middle);
    lifted = {
      pull,
      what: 'suction lifts it between the straps',
      steps: [
        step(
          'T',
          'pull of the film lifted between the straps',
          'T = p s² / 8 f, T = T_1 + E t (8/3) (f/s)²',
          [
            given('p', 'suction on the film', scale * load.suction.middle, 'pressure'),
            given('s', 'distance between the straps', straps.spacing, 'length'),
            given('f', 'bulge', sag, 'length'),
          ],
          pull,
          'line-load',
          'parabola',
        ),
      ],
    };
  }
  return lifted.pull >= pressed.pull
    ? lifted
    : { pull: pressed.pull, what: 'wind presses it in between the frames', steps: [pressedStep] };
}
