/**
 * Exact fractions. A length typed as `14 ft` and one typed as `4.2672 m` must end as the very same
 * double, or a changed unit would show as a changed design; so text is carried as a fraction and
 * rounded once, at the end.
 */

export interface Rational {
  readonly numerator: bigint;
  /** Always positive. */
  readonly denominator: bigint;
}

/** Longest number text read, and largest power of ten: beyond it no shelter has a use for the number. */
const LONGEST = 60;
const LARGEST_POWER = 300;

function gcd(a: bigint, b: bigint): bigint {
  let x = a < 0n ? -a : a;
  let y = b;
  while (y !== 0n) [x, y] = [y, x % y];
  return x;
}

/** The fraction in lowest terms. Throws RangeError on a zero denominator. */
export function rational(numerator: bigint | number, denominator: bigint | number = 1n): Rational {
  let n = BigInt(numerator);
  let d = BigInt(denominator);
  if (d === 0n) throw new RangeError('a fraction needs a denominator other than zero');
  if (d < 0n) [n, d] = [-n, -d];
  const common = gcd(n, d);
  return common === 1n || common === 0n
    ? { numerator: n, denominator: d }
    : { numerator: n / common, denominator: d / common };
}

export const addRational = (a: Rational, b: Rational): Rational =>
  rational(a.numerator * b.denominator + b.numerator * a.denominator, a.denominator * b.denominator);

export const negateRational = (a: Rational): Rational => ({
  numerator: -a.numerator,
  denominator: a.denominator,
});

export const multiplyRational = (a: Rational, b: Rational): Rational =>
  rational(a.numerator * b.numerator, a.denominator * b.denominator);

/** Throws RangeError when `b` is zero. */
export const divideRational = (a: Rational, b: Rational): Rational =>
  rational(a.numerator * b.denominator, a.denominator * b.numerator);

/** Whole powers only; throws RangeError for a negative power of zero. */
export function powerRational(a: Rational, power: number): Rational {
  const size = BigInt(Math.abs(power));
  return power >= 0
    ? rational(a.numerator ** size, a.denominator ** size)
    : rational(a.denominator ** size, a.numerator ** size);
}

/** -1, 0 or 1. */
export function compareRational(a: Rational, b: Rational): -1 | 0 | 1 {
  const left = a.numerator * b.denominator;
  const right = b.numerator * a.denominator;
  return left < right ? -1 : left > right ? 1 : 0;
}

const bits = (n: bigint): number => n.toString(2).length;

/**
 * The double nearest to the fraction (ties to even), for results in the normal range of doubles.
 * May be Infinity for a fraction beyond that range; callers that show or store it refuse it.
 */
export function toNumber(value: Rational): number {
  if (value.numerator === 0n) return 0;
  const negative = value.numerator < 0n;
  const n = negative ? -value.numerator : value.numerator;
  const d = value.denominator;
  // A quotient of at least 55 bits, and one more bit that says whether anything was left over:
  // enough for Number(), which rounds a bigint to the nearest double, to round correctly.
  const shift = bits(d) - bits(n) + 56;
  const top = shift >= 0 ? n << BigInt(shift) : n;
  const bottom = shift >= 0 ? d : d << BigInt(-shift);
  const quotient = top / bottom;
  const sticky = top % bottom === 0n ? 0n : 1n;
  let result = Number((quotient << 1n) | sticky);
  let power = -(shift + 1);
  // In steps, so that no factor of its own leaves the range of doubles.
  while (power < -1000) {
    result *= 2 ** -1000;
    power += 1000;
  }
  while (power > 1000) {
    result *= 2 ** 1000;
    power -= 1000;
  }
  result *= 2 ** power;
  return negative ? -result : result;
}

/** The fraction that a finite double stands for, exactly. Throws RangeError otherwise. */
export function rationalOf(value: number): Rational {
  if (!Number.isFinite(value)) throw new RangeError(`${value} is not a number to calculate with`);
  let scaled = value;
  let power = 0;
  while (!Number.isInteger(scaled)) {
    scaled *= 2;
    power += 1;
  }
  return rational(BigInt(scaled), 1n << BigInt(power));
}

function decimal(text: string): Rational | undefined {
  const match = /^(\d+(?:\.\d+)?|\.\d+)(?:[eE]([+-]?\d{1,3}))?$/.exec(text);
  if (!match) return undefined;
  const power = Number(match[2] ?? '0');
  if (Math.abs(power) > LARGEST_POWER) return undefined;
  const [whole = '', part = ''] = (match[1] as string).split('.');
  const digits = rational(BigInt(`${whole}${part}` || '0'), 10n ** BigInt(part.length));
  return multiplyRational(digits, powerRational(rational(10n), power));
}

/**
 * Reads `14`, `2.5`, `.5`, `2.8e9`, `3/4`, `1-3/8`, `1 3/8`, each with an optional leading `-`.
 * Undefined when the text is no number; never throws.
 */
export function parseNumber(text: string): Rational | undefined {
  let body = text.trim();
  if (body.length === 0 || body.length > LONGEST) return undefined;
  const negative = body.startsWith('-') || body.startsWith('\u2212');
  if (negative) body = body.slice(1).trimStart();
  const fraction = /^(?:(\d+)(?:-| +))?(\d+)\/(\d+)$/.exec(body);
  let value: Rational | undefined;
  if (fraction) {
    const [, whole = '0', top = '0', bottom = '0'] = fraction;
    if (BigInt(bottom) === 0n) return undefined;
    value = addRational(rational(BigInt(whole)), rational(BigInt(top), BigInt(bottom)));
  } else {
    value = decimal(body);
  }
  return value && negative ? negateRational(value) : value;
}

/** Reads a slope or proportion such as `1:4` as rise over run; undefined when it is none. Never throws. */
export function parseRatio(text: string): Rational | undefined {
  const [left, right, ...more] = text.split(':');
  if (left === undefined || right === undefined || more.length > 0) return undefined;
  const rise = parseNumber(left);
  const run = parseNumber(right);
  return rise && run && run.numerator !== 0n ? divideRational(rise, run) : undefined;
}
