/**
 * Kinds of quantity: what a value means, beyond its dimension, and the units it is shown in. A wall
 * thickness and a row spacing are both lengths, but one is read in mil and the other in feet.
 */
import { type Dimension, dimension, NONE, sameDimension } from './dimension.ts';
import type { System } from './units.ts';

/** How a number is put before its unit. */
export type Style = 'number' | 'inches' | 'feet-inches';

/** A unit and the SI magnitude from which it is used. */
export interface Rung {
  readonly unit: string;
  readonly from: number;
  readonly style?: Style;
}

export interface Kind {
  readonly dimension: Dimension;
  /** For hover: what it is, and how it is written. */
  readonly description: string;
  /** `a length`, for messages. */
  readonly noun: string;
  /** Ascending; the first starts at 0. An empty unit is a plain number. */
  readonly metric: readonly Rung[];
  readonly us: readonly Rung[];
  /** How far apart two readings of a scale are: the zero of the scale does not count. */
  readonly difference?: true;
  /** Digits after the point, where a fixed number is the custom. */
  readonly decimals?: number;
}

const rungs = (...pairs: readonly (readonly [unit: string, from: number])[]): readonly Rung[] =>
  pairs.map(([unit, from]) => ({ unit, from }));

const plain = rungs(['', 0]);
const metre = dimension({ length: 1 });
const stress = dimension({ mass: 1, length: -1, time: -2 });
const force = dimension({ mass: 1, length: 1, time: -2 });
const moment = dimension({ mass: 1, length: 2, time: -2 });
const perLength = dimension({ mass: 1, time: -2 });

function kind(
  noun: string,
  of: Dimension,
  description: string,
  metric: readonly Rung[],
  us: readonly Rung[] = metric,
  decimals?: number,
): Kind {
  return {
    noun,
    dimension: of,
    description,
    metric,
    us,
    ...(decimals === undefined ? {} : { decimals }),
  };
}

const table = {
  length: kind(
    'a length',
    metre,
    'A length, e.g. `4.2 m`, `14 ft`, `7 ft 6 in`, `3/4 in`.',
    rungs(['mm', 0], ['m', 0.1], ['km', 10_000]),
    [
      { unit: 'in', from: 0, style: 'inches' },
      { unit: 'ft', from: 0.3048, style: 'feet-inches' },
      { unit: 'ft', from: 91.44 },
      { unit: 'mi', from: 1609.344 },
    ],
  ),
  thickness: kind(
    'a thickness',
    metre,
    'A wall or small diameter, e.g. `3.4 mm`, `0.133 in`.',
    rungs(['mm', 0]),
    rungs(['in', 0]),
  ),
  'film-thickness': kind(
    'a film thickness',
    metre,
    'A film thickness, e.g. `200 um`, `6 mil`.',
    rungs(['um', 0]),
    rungs(['mil', 0]),
  ),
  area: kind(
    'an area',
    dimension({ length: 2 }),
    'An area, e.g. `60 m2`, `650 ft2`.',
    rungs(['mm2', 0], ['cm2', 1e-3], ['m2', 0.1], ['ha', 10_000]),
    rungs(['in2', 0], ['ft2', 0.09290304], ['acre', 4046.8564224]),
  ),
  volume: kind(
    'a volume',
    dimension({ length: 3 }),
    'A volume, e.g. `0.4 m3`, `40 L`.',
    rungs(['L', 0], ['m3', 1]),
    rungs(['in3', 0], ['ft3', 0.028316846592], ['yd3', 0.764554857984]),
  ),
  water: kind(
    'a volume of water',
    dimension({ length: 3 }),
    'A volume of water, e.g. `40 L`, `10 gal` (US gallons).',
    rungs(['L', 0], ['m3', 10]),
    rungs(['gal', 0]),
  ),
  angle: kind(
    'an angle',
    dimension({ angle: 1 }),
    'An angle, e.g. `25 deg`; a slope such as `1:4` is taken too.',
    rungs(['deg', 0]),
  ),
  slope: kind(
    'a slope',
    NONE,
    'A slope as rise to run, e.g. `1:4`, `25 %`; an angle such as `14 deg` is taken too.',
    rungs(['%', 0]),
  ),
  mass: kind(
    'a mass',
    dimension({ mass: 1 }),
    'A mass, e.g. `25 kg`, `50 lb`.',
    rungs(['g', 0], ['kg', 1], ['t', 10_000]),
    rungs(['oz', 0], ['lb', 0.45359237]),
  ),
  force: kind(
    'a force',
    force,
    'A force, e.g. `900 N`, `200 lbf`.',
    rungs(['N', 0], ['kN', 1000]),
    rungs(['lbf', 0]),
  ),
  moment: kind(
    'a moment',
    moment,
    'A bending moment, e.g. `40 N.m`, `30 lbf.ft`.',
    rungs(['N.m', 0], ['kN.m', 1000]),
    rungs(['lbf.ft', 0]),
  ),
  stress: kind(
    'a stress',
    stress,
    'A stress, strength or modulus, e.g. `2.8 GPa`, `50 N/mm2`, `400 ksi`.',
    rungs(['kPa', 0], ['MPa', 1e5], ['GPa', 1e9]),
    rungs(['psi', 0], ['ksi', 6.894757e7]),
  ),
  pressure: kind(
    'a load on an area',
    stress,
    'A load on an area, e.g. `300 Pa`, `30 psf`; `15 kg/m2` is taken as its weight.',
    rungs(['Pa', 0], ['kPa', 1000]),
    rungs(['psf', 0]),
  ),
  'line-load': kind(
    'a load on a length',
    perLength,
    'A load or pull on a length, e.g. `150 N/m`, `10 plf`; `2 kg/m` is taken as its weight.',
    rungs(['N/m', 0], ['kN/m', 1000]),
    rungs(['plf', 0]),
  ),
  speed: kind(
    'a speed',
    dimension({ length: 1, time: -1 }),
    'A wind speed, e.g. `40 m/s`, `90 mph`, `140 km/h`, `75 kn`.',
    rungs(['m/s', 0]),
    rungs(['mph', 0]),
  ),
  'rain-rate': kind(
    'a rate of rain',
    dimension({ length: 1, time: -1 }),
    'A rate of rain, e.g. `110 mm/h`, `4 in/h`.',
    rungs(['mm/h', 0]),
    rungs(['in/h', 0]),
  ),
  time: kind(
    'a time',
    dimension({ time: 1 }),
    'A length of time, e.g. `4 yr`, `6 month`.',
    rungs(['s', 0], ['min', 60], ['h', 3600], ['d', 86_400], ['month', 2_629_800], ['yr', 31_557_600]),
  ),
  temperature: kind(
    'a temperature',
    dimension({ temperature: 1 }),
    'A temperature, e.g. `23 degC`, `73 degF`. Carried in °C.',
    rungs(['degC', 0]),
    rungs(['degF', 0]),
  ),
  'temperature-difference': {
    ...kind(
      'a difference of temperature',
      dimension({ temperature: 1 }),
      'How much warmer one thing is than another, e.g. `8 degC`.',
      rungs(['degC', 0]),
      rungs(['degF', 0]),
    ),
    difference: true,
  },
  'mass-per-area': kind(
    'a mass per area',
    dimension({ mass: 1, length: -2 }),
    'A mass per area, e.g. `120 g/m2`, `4 oz/yd2`.',
    rungs(['g/m2', 0], ['kg/m2', 1]),
    rungs(['oz/yd2', 0], ['lb/ft2', 2]),
  ),
  'mass-per-length': kind(
    'a mass per length',
    dimension({ mass: 1, length: -1 }),
    'A mass per length, e.g. `0.9 kg/m`, `1.2 lb/ft`.',
    rungs(['g/m', 0], ['kg/m', 0.1]),
    rungs(['lb/ft', 0]),
  ),
  density: kind(
    'a density',
    dimension({ mass: 1, length: -3 }),
    'A density, e.g. `1400 kg/m3`, `90 lb/ft3`.',
    rungs(['kg/m3', 0]),
    rungs(['lb/ft3', 0]),
  ),
  curvature: kind(
    'a curvature',
    dimension({ length: -1 }),
    'A curvature: one over the radius, e.g. `0.5 1/m`.',
    rungs(['1/m', 0]),
    rungs(['1/ft', 0]),
  ),
  stiffness: kind(
    'a stiffness',
    perLength,
    'A force for each length of movement, e.g. `20 kN/m`, `100 lbf/in`.',
    rungs(['N/m', 0], ['kN/m', 1000]),
    rungs(['lbf/in', 0]),
  ),
  'rotational-stiffness': kind(
    'a rotational stiffness',
    dimension({ mass: 1, length: 2, time: -2, angle: -1 }),
    'A moment for each turn, e.g. `300 N.m/rad`.',
    rungs(['N.m/rad', 0], ['kN.m/rad', 1000]),
    rungs(['lbf.ft/rad', 0]),
  ),
  'flexural-rigidity': kind(
    'a bending stiffness',
    dimension({ mass: 1, length: 3, time: -2 }),
    'Modulus times second moment, EI, e.g. `60 N.m2`.',
    rungs(['N.m2', 0], ['kN.m2', 1000]),
    rungs(['lbf.in2', 0]),
  ),
  'section-modulus': kind(
    'a section modulus',
    dimension({ length: 3 }),
    'A section modulus, e.g. `2.1 cm3`, `0.13 in3`.',
    rungs(['mm3', 0], ['cm3', 1e-7]),
    rungs(['in3', 0]),
  ),
  'second-moment': kind(
    'a second moment of area',
    dimension({ length: 4 }),
    'A second moment of area, e.g. `3.6 cm4`, `0.087 in4`.',
    rungs(['mm4', 0], ['cm4', 1e-9]),
    rungs(['in4', 0]),
  ),
  ratio: kind('a plain number', NONE, 'A plain number, e.g. `0.6`, `3/4`.', plain),
  count: kind('a count', NONE, 'A whole number of pieces, e.g. `12`.', plain, plain, 0),
  percent: kind('a share', NONE, 'A share, e.g. `45 %` or `0.45`.', rungs(['%', 0])),
  flow: kind(
    'a flow of water',
    dimension({ length: 3, time: -1 }),
    'A flow of water, e.g. `4 L/h`, `10 gal/min`.',
    rungs(['L/h', 0], ['L/min', 1e-3 / 60], ['L/s', 1e-3]),
    rungs(['gal/h', 0], ['gal/min', 6.30901964e-5]),
  ),
  expansion: kind(
    'a thermal expansion',
    dimension({ temperature: -1 }),
    'Growth in length per degree, e.g. `7e-5 1/K`.',
    rungs(['1/K', 0]),
    rungs(['1/degF', 0]),
  ),
  'heat-loss': kind(
    'a loss of heat',
    dimension({ mass: 1, time: -3, temperature: -1 }),
    'Heat through an area for each degree between its sides, e.g. `6.5 W/m2/K`.',
    rungs(['W/m2/K', 0]),
  ),
  irradiance: kind(
    'a heat flow on an area',
    dimension({ mass: 1, time: -3 }),
    'Sun or heat on an area, e.g. `900 W/m2`.',
    rungs(['W/m2', 0]),
  ),
  money: kind(
    'an amount of money',
    dimension({ money: 1 }),
    "An amount in the project's currency, e.g. `4.20`.",
    plain,
    plain,
    2,
  ),
} as const satisfies Record<string, Kind>;

export type KindName = keyof typeof table;

export const kinds: Readonly<Record<KindName, Kind>> = table;

export const isKind = (name: string): name is KindName => Object.hasOwn(table, name);

/** The kind with this name. Throws RangeError: a wrong kind is a slip in the program, not in a spec. */
export function kindOf(name: string): Kind {
  if (!isKind(name)) throw new RangeError(`'${name}' is no kind of quantity`);
  return kinds[name];
}

/** The units a kind is shown in, metric before US, e.g. `mm, m or in, ft`; empty for plain numbers. */
export function unitsOfKind(name: string): string {
  const { metric, us } = kindOf(name);
  const listed = (ladder: readonly Rung[]): string =>
    [...new Set(ladder.map(({ unit }) => unit).filter((unit) => unit !== ''))].join(', ');
  const both = [...new Set([listed(metric), listed(us)])].filter((text) => text !== '');
  return both.join(' or ');
}

/** `a length`, `an angle`, `a plain number`; for a dimension no kind has, its SI exponents. */
export function nounOf(of: Dimension): string {
  if (sameDimension(of, NONE)) return 'a plain number';
  const known = Object.values(kinds).find((one) => sameDimension(one.dimension, of));
  if (known) return known.noun;
  const symbols = {
    length: 'm',
    mass: 'kg',
    time: 's',
    temperature: 'K',
    angle: 'rad',
    money: 'money',
  };
  const parts = (Object.keys(symbols) as (keyof Dimension)[])
    .filter((base) => of[base] !== 0)
    .map((base) => (of[base] === 1 ? symbols[base] : `${symbols[base]}${of[base]}`));
  return `a quantity in ${parts.join('·')}`;
}

/** The unit a value of this size is shown in. */
export function rungFor(si: number, of: Kind, system: System): Rung {
  const size = Math.abs(si);
  const ladder = of[system];
  return ladder.findLast((rung) => size >= rung.from * (1 - 1e-12)) ?? (ladder[0] as Rung);
}
