/** Pull in the roof film in a gust and in the cold, N/m, at the level of the site's combinations. */
import { claddingSuction, type Step } from '@tautline/loads';
import type { Cover, Inflated, Origin, Shelter } from '@tautline/shelter';
import {
  type FilmPanel,
  filmPanel,
  innerArc,
  outerArc,
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
  /** Width of the strip along edges and ends in which the edge's suction acts, m. */
  readonly edgeWidth: number;
  readonly pressure: number;
  /** What a fan blows it up with all the time, Pa; 0 without one. The wind's suction comes on top. */
  readonly fan: number;
  /** Pull of an inner film held by the same edge, N/m; 0 without one. */
  readonly inner: number;
  /** Straps over the film, and where they were said. */
  readonly straps?: NonNullable<Cover['straps']> & { readonly origin: Origin };
  /** Length of the film over the frame and the straight way between its edges, m. */
  readonly length: number;
  readonly chord: number;
  readonly steps: readonly Step[];
}

/** What acts on the film of a roof, or why that cannot be told. */
export function filmLoad(shelter: Shelter, cover: Cover): FilmLoad | { readonly reason: string } {
  const { roof, site } = shelter;
  if (roof.type === 'cap') return { reason: 'a cap is no film between frames' };
  const panel = filmPanel(cover, roof.spacing);
  if (panel === undefined) return { reason: 'the covering is no film' };
  const factor = windFactor(site);
  const cladding = claddingSuction(site, windShape(shelter));
  const at = (place: string): number =>
    factor * Math.max(0, -(cladding.zones.find((zone) => zone.place === place)?.suction ?? 0));
  const first = roof.line[0]!;
  const last = roof.line[roof.line.length - 1]!;
  const blown = roof.type === 'inflated' ? roof : undefined;
  const straps = cover.straps ?? blown?.straps;
  return {
    panel,
    resting: blown ? blown.pressure * outerArc(blown).radius : pullAt(panel, stormTemperature).pull,
    fan: blown?.pressure ?? 0,
    inner: blown ? blown.pressure * innerArc(blown).radius : 0,
    ...(straps === undefined
      ? {}
      : { straps: { ...straps, origin: cover.straps === undefined ? roof.origin : cover.origin } }),
    suction: { middle: at('middle'), edge: at('edge') },
    edgeWidth: cladding.edgeWidth,
    pressure: factor * (cladding.zones.find((zone) => zone.place === 'middle')?.pressure ?? 0),
    length: last.s - first.s,
    chord: Math.hypot(last.x - first.x, last.y - first.y),
    steps: blown === undefined ? cladding.steps : [...cladding.steps, ...blownSteps(blown)],
  };
}

function blownSteps(roof: Inflated): Step[] {
  const outer = outerArc(roof);
  const inner = innerArc(roof);
  const pull = (symbol: string, meaning: string, radius: number): Step =>
    step(
      symbol,
      meaning,
      'T = p R',
      [
        given('p', 'pressure of the fan', roof.pressure, 'pressure'),
        given('R', 'radius of the arc, S² / 8 f + f / 2', radius, 'length'),
      ],
      roof.pressure * radius,
      'line-load',
      'membrane-arc',
    );
  return [
    pull('T_o', 'pull of the fan in the outer film', outer.radius),
    pull('T_i', 'pull of the fan in the inner film', inner.radius),
  ];
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

/**
 * Mean suction on what a strap near an end holds down, Pa: the edge's over the width of the edge strip, that of the
 * middle over the rest of its spacing. `breadth` is how far apart the straps are, m.
 */
export function strapSuction({ suction, edgeWidth }: FilmLoad, breadth: number): number {
  const share = Math.min(1, edgeWidth / breadth);
  return Math.max(suction.middle, share * suction.edge + (1 - share) * suction.middle);
}

/** Pull of a strip of film over a span between frames or straps under a pressure p (Pa), N/m: T = p s² / 8 f. */
export function stripPull(
  load: { readonly panel: Pick<FilmPanel, 'stiffness'>; readonly resting: number },
  span: number,
  pressure: number,
): { pull: number; sag: number } {
  const panel = { stiffness: load.panel.stiffness, spacing: span };
  const sag = sagUnder(panel, { pull: load.resting, slack: 0 }, Math.max(pressure, 1e-9));
  return { pull: (pressure * span * span) / (8 * sag), sag };
}

export interface WorstPull {
  readonly pull: number;
  readonly what: string;
  readonly steps: readonly Step[];
}

/**
 * Greatest pull in the film itself in a gust: at an end of the house, where the local suction of the edge strip acts
 * on the film from side to side. `scale` multiplies the wind pressure, for other gusts than the
 * site's. Suction: T = p R where nothing lies over the film, a strip between straps where straps do.
 * Pressure: a strip between the frames.
 */
export function gustPull(load: FilmLoad, scale = 1): WorstPull {
  // A fan has to be overcome before the wind presses the film in.
  const inwards = Math.max(0, scale * load.pressure - load.fan);
  const outwards = load.fan + scale * Math.max(load.suction.middle, load.suction.edge);
  const pressed = inwards === 0 ? { pull: 0, sag: 0 } : stripPull(load, load.panel.spacing, inwards);
  const pressedStep = step(
    'T_p',
    'pull of the film pressed in between the frames',
    'T = p s² / (8 f)',
    [
      given('p', 'pressure on the film', inwards, 'pressure'),
      given('s', 'distance between the frames', load.panel.spacing, 'length'),
      given('f', 'sag', pressed.sag, 'length'),
    ],
    pressed.pull,
    'line-load',
    'parabola',
  );
  const { straps } = load;
  let lifted: WorstPull;
  if (straps === undefined) {
    const { pull, radius } = liftedPull(load, outwards);
    lifted = {
      pull,
      what:
        load.fan > 0 ? 'suction near an end adds to the fan' : 'suction near an end lifts it off the frames',
      steps: [
        step(
          'T',
          'pull of the film lifted off the frames',
          'T = p R',
          [
            given(
              'p',
              load.fan > 0 ? 'fan, and suction in the edge strip' : 'suction in the edge strip',
              outwards,
              'pressure',
            ),
            given('R', 'radius of the arc its length makes between its edges', radius, 'length'),
          ],
          pull,
          'line-load',
          'membrane-arc',
        ),
      ],
    };
  } else {
    const { pull, sag } = stripPull(load, straps.spacing, outwards);
    lifted = {
      pull,
      what: 'suction near an end lifts it between the straps',
      steps: [
        step(
          'T',
          'pull of the film lifted between the straps',
          'T = p s² / (8 f)',
          [
            given(
              'p',
              load.fan > 0 ? 'fan, and suction in the edge strip' : 'suction in the edge strip',
              outwards,
              'pressure',
            ),
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
