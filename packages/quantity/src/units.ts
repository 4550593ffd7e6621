/**
 * Units by symbol. Factors are exact fractions of SI, as their definitions are
 * (NIST SP 811:2008, Appendix B; UCUM for the symbols). Products and quotients (`N/mm2`, `lbf.ft`,
 * `1/m`) are worked out from their factors, so that every combination reads.
 */
import { type Dimension, dimension, NONE, powerDimension, productDimension } from './dimension.ts';
import { multiplyRational, parseNumber, powerRational, type Rational, rational } from './rational.ts';
import { listedProducts, spoken, table } from './unit-table.ts';

export type System = 'metric' | 'us';

export interface Unit {
  /** As it is written in a spec, e.g. `um`, `m2`, `lbf.ft`. */
  readonly symbol: string;
  /** As it is printed, e.g. `µm`, `m²`, `lbf·ft`. */
  readonly display: string;
  readonly dimension: Dimension;
  /** How many SI units it is; for an angle, radians (degrees through fifty digits of pi). */
  readonly factor: Rational;
  /** For a temperature reading: degrees Celsius at zero of this unit. */
  readonly offset?: Rational;
}

function exact(text: string): Rational {
  return text
    .split('*')
    .map((part) => {
      const value = parseNumber(part);
      if (!value) throw new Error(`unit table: '${part}' is no number`);
      return value;
    })
    .reduce(multiplyRational);
}

/** Prints powers and products the way a book does: `m2` as m², `N.m` as N·m. */
function displayOf(symbol: string): string {
  return symbol
    .replace(/\bum\b/g, 'µm')
    .replace(/\bdeg(?=[CF])/g, '°')
    .replace(/2\b/g, '²')
    .replace(/3\b/g, '³')
    .replace(/4\b/g, '⁴')
    .replace(/\./g, '·');
}

const simple = new Map<string, Unit>();
for (const [symbol, factor, exponents, offset] of table) {
  simple.set(symbol, {
    symbol,
    display: symbol === 'deg' ? '°' : displayOf(symbol),
    dimension: dimension(exponents),
    factor: exact(factor),
    ...(offset === undefined ? {} : { offset: exact(offset) }),
  });
}

/** Brings printed forms back to the written ones: `m²`, `µm`, `°C`, `N·m`, `m^2`. */
function written(symbol: string): string {
  return symbol
    .replace(/[µμ]/g, 'u')
    .replace(/°(?=[CF])/g, 'deg')
    .replace(/°/g, 'deg')
    .replace(/²/g, '2')
    .replace(/³/g, '3')
    .replace(/⁴/g, '4')
    .replace(/[·⋅*]/g, '.')
    .replace(/\^/g, '')
    .replace(/^months$/, 'month');
}

function factorOf(text: string): Unit | undefined {
  const known = simple.get(text);
  if (known) return known;
  const match = /^([A-Za-z]+)(-?[1-9])$/.exec(text);
  const base = match && simple.get(match[1] as string);
  if (!base) return undefined;
  const power = Number((match as RegExpExecArray)[2]);
  return {
    symbol: text,
    display: text,
    dimension: powerDimension(base.dimension, power),
    factor: powerRational(base.factor, power),
  };
}

const compounds = new Map<string, Unit | undefined>();

/**
 * The unit with this symbol, or undefined. Reads products with `.` and one or more `/`, and powers as
 * trailing digits. Never throws.
 */
export function unitOf(symbol: string): Unit | undefined {
  const text = written(symbol);
  const known = simple.get(text);
  if (known) return known;
  if (text.length === 0 || text.length > 24) return undefined;
  if (compounds.has(text)) return compounds.get(text);
  const unit = compoundOf(text);
  if (compounds.size < 1000) compounds.set(text, unit);
  return unit;
}

function compoundOf(text: string): Unit | undefined {
  let total: { dimension: Dimension; factor: Rational } = {
    dimension: NONE,
    factor: rational(1n),
  };
  let parts = 0;
  for (const [index, side] of text.split('/').entries()) {
    if (index === 0 && side === '1') continue;
    for (const piece of side.split('.')) {
      const factor = factorOf(piece);
      if (!factor) return undefined;
      const power = index === 0 ? 1 : -1;
      total = {
        dimension: productDimension(total.dimension, powerDimension(factor.dimension, power)),
        factor: multiplyRational(total.factor, powerRational(factor.factor, power)),
      };
      parts += 1;
    }
  }
  return parts === 0 ? undefined : { symbol: text, display: displayOf(text), ...total };
}

/** Every symbol worth offering, in the order of the table. */
export function unitSymbols(): readonly string[] {
  return [...simple.keys(), ...listedProducts];
}

function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const swap = (row[j - 1] as number) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(swap, (row[j] as number) + 1, (next[j - 1] as number) + 1));
    }
    row = next;
  }
  return row[b.length] as number;
}

/** Up to three symbols the writer may have meant by an unknown one: spoken names, letter case, slips. */
export function suggestUnits(symbol: string): readonly string[] {
  const text = written(symbol.trim().slice(0, 24));
  const lower = text.toLowerCase().replace(/\.$/, '');
  const meant = spoken.get(lower) ?? spoken.get(lower.replace(/s$/, ''));
  if (meant) return [meant];
  const all = unitSymbols();
  const sameLetters = all.filter((known) => known.toLowerCase() === lower);
  if (sameLetters.length > 0) return sameLetters.slice(0, 3);
  if (lower.length < 2) return [];
  return all
    .map((known) => ({ known, far: distance(lower, known.toLowerCase()) }))
    .filter(({ known, far }) => far <= 1 && known.length > 1)
    .slice(0, 3)
    .map(({ known }) => known);
}
