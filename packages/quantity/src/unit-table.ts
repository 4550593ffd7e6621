/**
 * The units themselves. Factors: NIST SP 811:2008, Appendix B.8 and B.9, exact by definition (inch
 * 25.4 mm, pound 0.453 592 37 kg, standard gravity 9.806 65 m/s2). The year is the Julian year of
 * 365.25 days, as UCUM's `a`; the month a twelfth of it. Gallon and ounce are the US liquid gallon of
 * 231 in3 and the avoirdupois ounce; the acre is 43 560 international square feet.
 */
import type { Dimension } from './dimension.ts';

/** Symbol, factor to SI (a product of exact numbers), exponents, and degrees Celsius at zero. */
export type UnitRow = readonly [
  symbol: string,
  factor: string,
  exponents: Partial<Dimension>,
  offset?: string,
];

const PI = '3.14159265358979323846264338327950288419716939937510';
const POUND = '0.45359237';
const GRAVITY = '9.80665';
const POUND_FORCE = `${POUND}*${GRAVITY}`;
const INCH = '0.0254';
const FOOT = '0.3048';

const length = { length: 1 };
const area = { length: 2 };
const volume = { length: 3 };
const time = { time: 1 };
const mass = { mass: 1 };
const force = { mass: 1, length: 1, time: -2 };
const stress = { mass: 1, length: -1, time: -2 };
const speed = { length: 1, time: -1 };

export const table: readonly UnitRow[] = [
  ['m', '1', length],
  ['cm', '0.01', length],
  ['mm', '0.001', length],
  ['um', '1e-6', length],
  ['km', '1000', length],
  ['in', INCH, length],
  ['ft', FOOT, length],
  ['yd', '0.9144', length],
  ['mi', '1609.344', length],
  ['mil', '0.0000254', length],
  ['ha', '10000', area],
  ['acre', `43560*${FOOT}*${FOOT}`, area],
  ['L', '0.001', volume],
  ['mL', '1e-6', volume],
  ['gal', `231*${INCH}*${INCH}*${INCH}`, volume],
  ['rad', '1', { angle: 1 }],
  ['deg', `${PI}*1/180`, { angle: 1 }],
  ['%', '0.01', {}],
  ['kg', '1', mass],
  ['g', '0.001', mass],
  ['t', '1000', mass],
  ['lb', POUND, mass],
  ['oz', `${POUND}*1/16`, mass],
  ['N', '1', force],
  ['kN', '1000', force],
  ['lbf', POUND_FORCE, force],
  ['kip', `1000*${POUND_FORCE}`, force],
  ['Pa', '1', stress],
  ['kPa', '1000', stress],
  ['MPa', '1e6', stress],
  ['GPa', '1e9', stress],
  ['psi', `${POUND_FORCE}*10000/254*10000/254`, stress],
  ['ksi', `1000*${POUND_FORCE}*10000/254*10000/254`, stress],
  ['psf', `${POUND_FORCE}*10000/3048*10000/3048`, stress],
  ['plf', `${POUND_FORCE}*10000/3048`, { mass: 1, time: -2 }],
  ['mph', '0.44704', speed],
  ['kn', '1852/3600', speed],
  ['s', '1', time],
  ['min', '60', time],
  ['h', '3600', time],
  ['d', '86400', time],
  ['month', '365.25*86400*1/12', time],
  ['yr', '365.25*86400', time],
  ['Hz', '1', { time: -1 }],
  ['W', '1', { mass: 1, length: 2, time: -3 }],
  ['J', '1', { mass: 1, length: 2, time: -2 }],
  ['K', '1', { temperature: 1 }, '-273.15'],
  ['degC', '1', { temperature: 1 }, '0'],
  ['degF', '5/9', { temperature: 1 }, '-160/9'],
];

/** Products and quotients worth offering in completion; any other combination reads as well. */
export const listedProducts: readonly string[] = [
  ...['m2', 'cm2', 'mm2', 'ft2', 'in2', 'yd2', 'm3', 'ft3', 'yd3', 'in3', 'cm3', 'mm3', 'cm4', 'mm4', 'in4'],
  ...['N/m', 'kN/m', 'N/mm', 'kg/m', 'g/m', 'lb/ft', 'lbf/in', 'lb/in'],
  ...['N/m2', 'kN/m2', 'N/mm2', 'kg/m2', 'g/m2', 'lb/ft2', 'oz/yd2', 'kg/m3', 'lb/ft3'],
  ...['N.m', 'kN.m', 'lbf.ft', 'lbf.in', 'N.m/rad', 'lbf.ft/rad', 'N.m2', 'lbf.in2'],
  ...['m/s', 'km/h', 'ft/s', 'mm/h', 'in/h', 'L/s', 'L/min', 'L/h', 'L/d', 'm3/h', 'gal/min', 'gal/h'],
  ...['1/m', '1/ft', '1/K', '1/degF', 'W/m2'],
];

/** Names and slips growers write for a unit; a plural `s` is taken off before looking here. */
export const spoken: ReadonlyMap<string, string> = new Map([
  ...entries('ft', ['feet', 'foot', "'"]),
  ...entries('in', ['inch', 'inche', '"', "''"]),
  ...entries('yd', ['yard']),
  ...entries('m', ['meter', 'metre', 'mtr']),
  ...entries('mm', ['millimeter', 'millimetre']),
  ...entries('cm', ['centimeter', 'centimetre']),
  ...entries('um', ['micron', 'micrometer', 'micrometre', 'mu']),
  ...entries('mil', ['thou']),
  ...entries('deg', ['degree', 'degree.', 'dg']),
  ...entries('degC', ['c', 'celsius', 'centigrade']),
  ...entries('degF', ['f', 'fahrenheit']),
  ...entries('kg', ['kilo', 'kilogram', 'kgs']),
  ...entries('g', ['gram', 'gr', 'gm']),
  ...entries('lb', ['pound', '#']),
  ...entries('oz', ['ounce']),
  ...entries('t', ['tonne', 'ton']),
  ...entries('N', ['newton']),
  ...entries('Pa', ['pascal']),
  ...entries('m/s', ['mps', 'm/sec']),
  ...entries('km/h', ['kph', 'kmh', 'km/hr']),
  ...entries('kn', ['knot', 'kt', 'kts']),
  ...entries('mm/h', ['mm/hr', 'mm/hour']),
  ...entries('in/h', ['in/hr', 'in/hour', 'iph']),
  ...entries('h', ['hour', 'hr']),
  ...entries('min', ['minute']),
  ...entries('s', ['second', 'sec']),
  ...entries('d', ['day']),
  ...entries('month', ['mo', 'mth']),
  ...entries('yr', ['year', 'a', 'y']),
  ...entries('g/m2', ['gsm']),
  ...entries('m2', ['sqm', 'm^2']),
  ...entries('ft2', ['sqft', 'sf']),
  ...entries('L', ['l', 'litre', 'liter', 'ltr']),
  ...entries('gal', ['gallon']),
  ...entries('ha', ['hectare']),
  ...entries('%', ['percent', 'pct']),
  ...entries('gal/min', ['gpm']),
  ...entries('lbf.ft', ['ft.lb', 'ft-lb', 'lb.ft', 'ft.lbf']),
  ...entries('N.m', ['nm']),
]);

function entries(symbol: string, names: readonly string[]): readonly (readonly [string, string])[] {
  return names.map((name) => [name, symbol] as const);
}
