/** What age leaves of a strength: film in the sun, wood and bamboo in the soil, PVC in the sun. */
import { given, type Step } from '../step.ts';
import type { Family } from './member-input.ts';

/** Julian year, s: by definition. */
const year = 365.25 * 86_400;

/** What is left of a strength, and how it was found. */
export interface Ageing {
  /** Over the strength when new, 0 to 1. */
  readonly share: number;
  readonly step: Step;
}

/** Below this share nobody can say: it stands for two lives and more. Own choice. */
const least = 0.25;

/** Half is left at the end of a life, a quarter after another, which is as far as it is followed. */
function halved(age: number, life: number, meaning: string, source: string): Ageing {
  if (!(life > 0 && age >= 0)) throw new RangeError('ageing needs a life above zero and an age');
  const share = Math.max(least, 0.5 ** (age / life));
  return {
    share,
    step: {
      symbol: 'η',
      meaning,
      formula: 'η = max(0.25, 0.5^(t / t_life))',
      inputs: [given('t', 'age', age, 'time'), given('t_life', 'life', life, 'time')],
      value: share,
      kind: 'percent',
      source,
    },
  };
}

/**
 * Strength left in film after `age` s in the sun, of a life of `life` s. A film's life is over when it stretches
 * half as far before it breaks as when new (EN 13206); that the strength goes the same way, and evenly, is common
 * practice. Throws a RangeError for a negative age or no life.
 */
export function agedFilm(age: number, life: number): Ageing {
  return halved(age, life, 'strength left in the film at its age', 'en13206:life');
}

/** Fibres of straps and ropes. */
export type Fibre = 'polyester' | 'polypropylene' | 'nylon';

/** Strength that polyester webbing loses in its first year in the sun, then little more: WSTDA tests of 1997 to 2004. */
const POLYESTER_LOSS = 0.3;

/**
 * Strength left in a strap, rope or plastic clip after `age` s in the sun, of a life of `life` s: half at the end of
 * a life, as yarns are rated; polyester no more than 0.7 from its first year on. Throws a RangeError for a negative
 * age or no life.
 */
export function agedFastener(fibre: Fibre | undefined, age: number, life: number): Ageing {
  const even = halved(age, life, 'strength left in it at its age', 'practice:fastener-life');
  if (fibre !== 'polyester') return even;
  const first = 1 - POLYESTER_LOSS * Math.min(1, age / year);
  if (even.share <= first) return even;
  return {
    share: first,
    step: {
      ...even.step,
      inputs: [...even.step.inputs, given('t_1', 'its first year, which takes most', year, 'time')],
      formula: 'η = 1 - 0.3 min(1, t / t_1)',
      value: first,
      source: 'wstda:sun',
    },
  };
}

/**
 * Time after which untreated stock in warm wet soil has half its strength at the ground, s: common practice;
 * bamboo 1 to 3 years in Janssen, Building with Bamboo. Undefined for what does not rot.
 */
export function lifeInSoil(family: Family, treated: boolean): number | undefined {
  const years: Partial<Record<Family, number>> = { timber: 4, bamboo: 2, 'green-wood': 2 };
  const life = years[family];
  return treated || life === undefined ? undefined : life * year;
}

/** Strength left at the ground in untreated wood or bamboo after `age` s in the soil; undefined for what does not rot. */
export function agedInSoil(family: Family, treated: boolean, age: number): Ageing | undefined {
  const life = lifeInSoil(family, treated);
  return life === undefined
    ? undefined
    : halved(
        age,
        life,
        'strength left where it comes out of the soil',
        family === 'bamboo' ? 'janssen:bamboo-life' : 'practice:wood-in-soil',
      );
}

/**
 * Strength left in PVC pipe after `age` s in the sun: all of it. Two years of exposure changed neither tensile
 * strength nor modulus; it took toughness, so that old pipe breaks under a blow.
 */
export function agedPvc(age: number): Ageing {
  return {
    share: 1,
    step: {
      symbol: 'η',
      meaning: 'strength left in PVC after its years in the sun; what it loses is toughness against a blow',
      formula: 'η = 1, measured over two years',
      prose: true,
      inputs: [given('t', 'age', age, 'time')],
      value: 1,
      kind: 'percent',
      source: 'uni-tr-5',
    },
  };
}
