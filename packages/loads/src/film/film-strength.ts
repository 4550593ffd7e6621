/** Polyethylene film: stress it may have by heat and duration, its fastenings, its life, and flapping. */
import { along, type Curve } from '../interpolate.ts';
import type { Duration } from '../resistance/duration.ts';
import { given, type Step } from '../step.ts';

/** Yield stress of LDPE film by temperature, °C, over that at 23 °C (from memory of handbook curves). */
export const FILM_HEAT: Curve = [
  [-10, 1.5],
  [0, 1.35],
  [23, 1],
  [40, 0.74],
  [50, 0.6],
  [60, 0.47],
  [70, 0.35],
];

/**
 * Share of the yield stress that film may have so that it does not creep loose: a third for pull that stays,
 * two thirds in a gust. Common practice for polyethylene membranes.
 */
export const FILM_DURATION: Record<Duration, number> = {
  permanent: 0.33,
  season: 0.36,
  weeks: 0.4,
  days: 0.45,
  person: 0.45,
  gust: 0.67,
};

export interface FilmStress {
  /** Pa. */
  readonly allowable: number;
  readonly step: Step;
}

/** Stress film may have, Pa. `yieldStress` at 23 °C in Pa, temperature of the film in °C. */
export function filmStress(yieldStress: number, temperature: number, duration: Duration): FilmStress {
  const heat = along(FILM_HEAT, temperature);
  const share = FILM_DURATION[duration];
  const allowable = yieldStress * heat * share;
  return {
    allowable,
    step: {
      symbol: 'σ_a',
      meaning: 'stress the film may have',
      formula: 'σ_a = σ_y k_T k_d',
      inputs: [
        given('σ_y', 'yield stress at 23 °C', yieldStress, 'stress'),
        given('ϑ', 'temperature of the film', temperature, 'temperature'),
        given('k_T', 'kept at that temperature', heat, 'ratio'),
        given('k_d', 'share for the duration of the pull', share, 'ratio'),
      ],
      value: allowable,
      kind: 'stress',
      source: 'practice:film-creep',
    },
  };
}

/**
 * Pull that a film fastening may have (N or N/m as `holds`): hot film slips out of channels and tears at
 * staples, so the film's heat factor applies (at most 1), and half of the rated pull for pull that stays.
 */
export function fasteningPull(holds: number, temperature: number, duration: Duration): FilmStress {
  return pullWhenHot(holds, temperature, duration === 'gust' ? 0.67 : 0.5, {
    symbol: 'F_a',
    meaning: 'pull the fastening may have',
    rated: 'rated pull',
    shared: 'share for the duration',
    source: 'practice:film-creep',
  });
}

/** Words of the step that `pullWhenHot` tells. */
interface PullWords {
  readonly symbol: string;
  readonly meaning: string;
  readonly rated: string;
  readonly shared: string;
  readonly source: string;
}

/** A share of a rated pull (N or N/m), less what heat takes of polyethylene; cold adds nothing. Temperature in °C. */
export function pullWhenHot(
  rated: number,
  temperature: number,
  share: number,
  words: PullWords,
): { readonly allowable: number; readonly step: Step } {
  const heat = Math.min(1, along(FILM_HEAT, temperature));
  const allowable = rated * heat * share;
  const { symbol, meaning, source } = words;
  return {
    allowable,
    step: {
      symbol,
      meaning,
      formula: `${symbol} = F k_T k_d`,
      inputs: [
        given('F', words.rated, rated, 'line-load'),
        given('ϑ', 'temperature of the film', temperature, 'temperature'),
        given('k_T', 'kept at that temperature', heat, 'ratio'),
        given('k_d', words.shared, share, 'ratio'),
      ],
      value: allowable,
      kind: 'line-load',
      source,
    },
  };
}

/** One kilolangley, J/m²: by definition 1000 thermochemical calories on a square centimetre. */
export const KILOLANGLEY = 41.84e6;

/** Seasonal dose that rated lives refer to, J/m² a year: 140 kLy (EN 13206 names sunny Mediterranean sites so). */
export const RATED_DOSE = 140 * KILOLANGLEY;

export interface FilmLife {
  /** s. */
  readonly life: number;
  readonly step: Step;
}

/**
 * Life of film in the sun of a site, s: the rated life times the rated yearly dose over the site's
 * (horizontal global radiation, J/m² a year), at most 1.5 times the rated life.
 */
export function filmLife(ratedLife: number, yearlyDose: number): FilmLife {
  if (!(yearlyDose > 0)) throw new RangeError('a film life needs a yearly dose above zero');
  const life = ratedLife * Math.min(1.5, RATED_DOSE / yearlyDose);
  return {
    life,
    step: {
      symbol: 't',
      meaning: 'life of the film in this sun',
      formula: 't = t_rated · 140 kLy / dose, at most 1.5 t_rated',
      inputs: [
        given('t_rated', 'rated life', ratedLife, 'time'),
        given('dose', 'yearly dose over the rated one', yearlyDose / RATED_DOSE, 'ratio'),
      ],
      value: life,
      kind: 'time',
      source: 'en13206:life',
    },
  };
}

/** Least tension coefficient T/(q s) of a film with wind along it: below, it cannot stay in one curve (Nielsen 1963, from memory). */
export const LEAST_TENSION_COEFFICIENT = 1.727;

export interface Flutter {
  /** Tension below which the film flaps, N/m. */
  readonly tension: number;
  readonly step: Step;
}

/**
 * Tension under which film between supports a distance s apart flaps in wind that runs along it on both
 * sides: T = 1.727 q s (two-dimensional sail: Thwaites 1961, Nielsen 1963). q is the velocity pressure, Pa;
 * result in N/m. With wind on one side only half the pressure acts: half of it.
 */
export function flutterTension(velocityPressure: number, spacing: number, sides: 1 | 2): Flutter {
  const tension = LEAST_TENSION_COEFFICIENT * velocityPressure * spacing * (sides / 2);
  return {
    tension,
    step: {
      symbol: 'T_f',
      meaning: 'tension below which the film flaps',
      formula: sides === 2 ? 'T_f = 1.727 q s' : 'T_f = 1.727 q s / 2',
      inputs: [
        given('q', 'velocity pressure', velocityPressure, 'pressure'),
        given('s', 'distance between supports along the wind', spacing, 'length'),
      ],
      value: tension,
      kind: 'line-load',
      source: 'nielsen:1963',
    },
  };
}
