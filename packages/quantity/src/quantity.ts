/** Values with their dimension: reading them from parts, calculating with them, fitting them to a kind. */
import {
  type Dimension,
  dimension,
  NONE,
  productDimension,
  quotientDimension,
  sameDimension,
} from './dimension.ts';
import { type KindName, kinds, nounOf } from './kinds.ts';
import {
  addRational,
  compareRational,
  divideRational,
  multiplyRational,
  negateRational,
  parseNumber,
  parseRatio,
  type Rational,
  rational,
  toNumber,
} from './rational.ts';
import { suggestUnits, type Unit, unitOf } from './units.ts';

export interface Quantity {
  /** SI; a temperature reading is in °C. */
  readonly si: number;
  readonly dimension: Dimension;
  /** The same value as a fraction, where it is still known exactly. */
  readonly exact?: Rational;
  /** A reading on a temperature scale: it can be compared, but not added or multiplied. */
  readonly reading?: true;
}

export type Result<T> = ({ readonly ok: true } & T) | { readonly ok: false; readonly reason: string };

export interface QuantityPart {
  readonly number: Rational;
  /** Empty for a plain number. */
  readonly unit: string;
}

const fail = (reason: string): { readonly ok: false; readonly reason: string } => ({ ok: false, reason });

function exactly(exact: Rational, of: Dimension, reading = false): Result<Quantity> {
  const si = toNumber(exact);
  if (!Number.isFinite(si)) return fail('the number is too large');
  return {
    ok: true,
    si,
    dimension: of,
    exact,
    ...(reading ? { reading: true as const } : {}),
  };
}

function unknownUnit(symbol: string): string {
  const meant = suggestUnits(symbol);
  const ask = meant.length === 0 ? '' : `; did you mean ${meant.map((one) => `'${one}'`).join(' or ')}?`;
  return `unknown unit '${symbol}'${ask}`;
}

/**
 * Puts the parts of a written quantity together: one number and unit, or several of the same dimension
 * with falling units, as in `7 ft 6 in`. The double is the one nearest to the exact value. A minus sign
 * at the front counts for the whole. Never throws; the reason is worded for the writer.
 */
export function toSi(parts: readonly QuantityPart[]): Result<Quantity> {
  const [first, ...rest] = parts;
  if (!first) return fail('a number is missing');
  const unit = first.unit === '' ? undefined : unitOf(first.unit);
  if (first.unit !== '' && !unit) return fail(unknownUnit(first.unit));
  if (!unit) {
    if (rest.length > 0) return fail('a unit is missing after the first number');
    return exactly(first.number, NONE);
  }
  if (unit.offset) {
    if (rest.length > 0) return fail('a temperature is written with one unit, e.g. 23 degC');
    return exactly(
      addRational(multiplyRational(first.number, unit.factor), unit.offset),
      unit.dimension,
      true,
    );
  }
  const negative = first.number.numerator < 0n;
  let total = multiplyRational(first.number, unit.factor);
  let before: Unit = unit;
  for (const part of rest) {
    const next = unitOf(part.unit);
    if (!next)
      return fail(part.unit === '' ? 'a unit is missing after the last number' : unknownUnit(part.unit));
    if (!sameDimension(next.dimension, unit.dimension)) {
      return fail(
        `${first.unit} is ${nounOf(unit.dimension)} and ${part.unit} is ${nounOf(next.dimension)}: they cannot be written together`,
      );
    }
    if (compareRational(next.factor, before.factor) >= 0) {
      return fail(`write the larger unit first: ${part.unit} comes before ${before.symbol}`);
    }
    if (part.number.numerator < 0n) return fail('only the first number may have a minus sign');
    const value = multiplyRational(part.number, next.factor);
    total = addRational(total, negative ? negateRational(value) : value);
    before = next;
  }
  return exactly(total, unit.dimension);
}

const PART =
  /^\s*(-?(?:\d+(?:-| +)\d+\/\d+|\d+\/\d+|\d*\.?\d+(?:[eE][+-]?\d+)?))(?:\s*([A-Za-z%°µμ][^\s]*|1\/[^\s]+))?/;

/** Reads a whole text such as `7 ft 6 in`, `1:4`, `1-3/8 in`, `25°`. Never throws. */
export function parseQuantity(text: string): Result<Quantity> {
  const ratio = parseRatio(text);
  if (ratio) return exactly(ratio, NONE);
  const parts: QuantityPart[] = [];
  let left = text.slice(0, 200);
  while (left.trim() !== '') {
    const match = PART.exec(left);
    const number = match && parseNumber(match[1] as string);
    if (!number) return fail(`'${text.trim().slice(0, 40)}' is no quantity`);
    parts.push({ number, unit: match[2] ?? '' });
    left = left.slice(match[0].length);
  }
  return toSi(parts);
}

const noReading = (a: Quantity, b?: Quantity): boolean => a.reading === true || b?.reading === true;
const READING = 'a temperature on a scale cannot be calculated with';

function calculated(si: number, of: Dimension, exact: Rational | undefined): Result<Quantity> {
  if (exact) return exactly(exact, of);
  return Number.isFinite(si) ? { ok: true, si, dimension: of } : fail('the result is too large');
}

function sum(a: Quantity, b: Quantity, sign: 1 | -1): Result<Quantity> {
  if (!sameDimension(a.dimension, b.dimension)) {
    return fail(`expected ${nounOf(a.dimension)}, found ${nounOf(b.dimension)}`);
  }
  if (noReading(a, b)) return fail(READING);
  const exact =
    a.exact && b.exact ? addRational(a.exact, sign === 1 ? b.exact : negateRational(b.exact)) : undefined;
  return calculated(a.si + sign * b.si, a.dimension, exact);
}

/** Sum of two quantities of one dimension. Never throws. */
export const add = (a: Quantity, b: Quantity): Result<Quantity> => sum(a, b, 1);

/** Difference of two quantities of one dimension. Never throws. */
export const subtract = (a: Quantity, b: Quantity): Result<Quantity> => sum(a, b, -1);

export function multiply(a: Quantity, b: Quantity): Result<Quantity> {
  if (noReading(a, b)) return fail(READING);
  const exact = a.exact && b.exact ? multiplyRational(a.exact, b.exact) : undefined;
  return calculated(a.si * b.si, productDimension(a.dimension, b.dimension), exact);
}

export function divide(a: Quantity, b: Quantity): Result<Quantity> {
  if (noReading(a, b)) return fail(READING);
  if (b.si === 0) return fail('division by zero');
  const exact = a.exact && b.exact ? divideRational(a.exact, b.exact) : undefined;
  return calculated(a.si / b.si, quotientDimension(a.dimension, b.dimension), exact);
}

export function negate(a: Quantity): Result<Quantity> {
  const { exact } = a;
  return {
    ok: true,
    ...a,
    si: a.si === 0 ? 0 : -a.si,
    ...(exact ? { exact: negateRational(exact) } : {}),
  };
}

/** -1, 0 or 1; exact where both values are known exactly. */
export function compare(a: Quantity, b: Quantity): Result<{ readonly order: -1 | 0 | 1 }> {
  if (!sameDimension(a.dimension, b.dimension)) {
    return fail(`expected ${nounOf(a.dimension)}, found ${nounOf(b.dimension)}`);
  }
  if (a.exact && b.exact) return { ok: true, order: compareRational(a.exact, b.exact) };
  return { ok: true, order: a.si < b.si ? -1 : a.si > b.si ? 1 : 0 };
}

/** Standard acceleration of gravity, m/s2, exact (NIST SP 811:2008, B.8). */
export const STANDARD_GRAVITY = 9.80665;
const gravity = rational(980665n, 100000n);
const massPerArea = dimension({ mass: 1, length: -2 });
const massPerLength = dimension({ mass: 1, length: -1 });
const massOnly = dimension({ mass: 1 });
const angle = dimension({ angle: 1 });

/** Weight under standard gravity. */
function weight(of: Quantity): Result<{ readonly si: number }> {
  if (!of.exact) return { ok: true, si: of.si * STANDARD_GRAVITY };
  return { ok: true, si: toNumber(multiplyRational(of.exact, gravity)) };
}

/**
 * The SI value of a quantity taken as this kind. Besides the kind's own dimension: a load on an area
 * or a length may be given as the mass that weighs it, a slope as an angle and the other way round,
 * money as a plain number. Never throws; the reason is worded for the writer.
 */
export function asKind(value: Quantity, name: KindName): Result<{ readonly si: number }> {
  const kind = kinds[name];
  const found = value.dimension;
  if (sameDimension(found, kind.dimension)) {
    if (name === 'count' && (!Number.isInteger(value.si) || value.si < 0)) {
      return fail('expected a whole number of pieces');
    }
    return { ok: true, si: value.si };
  }
  if (name === 'pressure' && sameDimension(found, massPerArea)) return weight(value);
  if (name === 'line-load' && sameDimension(found, massPerLength)) return weight(value);
  if (name === 'angle' && sameDimension(found, NONE)) return { ok: true, si: Math.atan(value.si) };
  if (name === 'slope' && sameDimension(found, angle)) {
    if (Math.abs(value.si) >= Math.PI / 2) return fail('a slope must be less than upright (90 deg)');
    return { ok: true, si: Math.tan(value.si) };
  }
  if (name === 'money' && sameDimension(found, NONE)) return { ok: true, si: value.si };
  if (name === 'force' && sameDimension(found, massOnly)) {
    return fail('expected a force, found a mass: write its weight in N, kN or lbf (1 kg weighs 9.81 N)');
  }
  const example = /`([^`]+)`/.exec(kind.description)?.[1];
  const unitless = sameDimension(found, NONE) ? ' without a unit' : '';
  const noun = unitless ? 'a number' : nounOf(found);
  return fail(`expected ${kind.noun}${example ? `, e.g. ${example}` : ''}, found ${noun}${unitless}`);
}
