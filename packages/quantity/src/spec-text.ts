/** Values as text that goes into a spec: round numbers that read back exactly. */
import { inUnit } from './format.ts';
import { type KindName, kindOf, rungFor } from './kinds.ts';
import { parseQuantity } from './quantity.ts';
import { multiplyRational, powerRational, type Rational, rational, toNumber } from './rational.ts';
import { type System, unitOf } from './units.ts';

export type Rounding = 'down' | 'up' | 'nearest';

export interface SpecText {
  readonly text: string;
  /** What the text reads as, SI. */
  readonly si: number;
}

/** A unit to write in up to a size (SI), and the step in that unit: what a grower would measure out. */
interface Step {
  readonly upTo: number;
  readonly unit: string;
  readonly step: Rational;
  /** Written as a fraction of an inch, or as feet and inches; a decimal otherwise. */
  readonly as?: 'inches' | 'feet-inches';
}

const r = rational;
const handy: Partial<Record<KindName, Readonly<Record<System, readonly Step[]>>>> = {
  length: {
    metric: [
      { upTo: 0.1, unit: 'mm', step: r(1) },
      { upTo: 1, unit: 'm', step: r(1, 100) },
      { upTo: 10, unit: 'm', step: r(1, 20) },
      { upTo: Infinity, unit: 'm', step: r(1, 10) },
    ],
    us: [
      { upTo: 0.3048, unit: 'in', step: r(1, 4), as: 'inches' },
      { upTo: 9.144, unit: 'in', step: r(1), as: 'feet-inches' },
      { upTo: Infinity, unit: 'in', step: r(6), as: 'feet-inches' },
    ],
  },
  angle: both({ upTo: Infinity, unit: 'deg', step: r(1) }),
  slope: both({ upTo: Infinity, unit: '%', step: r(1) }),
  percent: both({ upTo: Infinity, unit: '%', step: r(1) }),
  count: both({ upTo: Infinity, unit: '', step: r(1) }),
  ratio: both({ upTo: Infinity, unit: '', step: r(1, 100) }),
  money: both({ upTo: Infinity, unit: '', step: r(1, 100) }),
  temperature: {
    metric: [{ upTo: Infinity, unit: 'degC', step: r(1) }],
    us: [{ upTo: Infinity, unit: 'degF', step: r(1) }],
  },
  speed: {
    metric: [{ upTo: Infinity, unit: 'm/s', step: r(1, 2) }],
    us: [{ upTo: Infinity, unit: 'mph', step: r(1) }],
  },
};

function both(step: Step): Readonly<Record<System, readonly Step[]>> {
  return { metric: [step], us: [step] };
}

/** Two significant digits in the unit that suits the size. */
function twoDigits(si: number, kind: KindName, system: System): Step {
  const { unit } = rungFor(si, kindOf(kind), system);
  const known = unitOf(unit);
  const size = Math.abs(known ? inUnit(si, known) : si);
  const power = size === 0 ? 0 : Math.floor(Math.log10(size)) - 1;
  return { upTo: Infinity, unit, step: powerRational(r(10), power) };
}

/** A fraction whose denominator divides a power of ten, as a plain decimal. */
function decimalText(value: Rational): string {
  let places = 0;
  let top = value.numerator;
  while (top % value.denominator !== 0n) {
    top *= 10n;
    places += 1;
  }
  const digits = (top / value.denominator).toString();
  if (places === 0) return digits;
  const bare = digits.replace('-', '').padStart(places + 1, '0');
  return `${digits.startsWith('-') ? '-' : ''}${bare.slice(0, -places)}.${bare.slice(-places)}`;
}

/** Inches as `3-1/4 in`, or with `feet` as `3 ft 11 in`. */
function inchText(value: Rational, feet: boolean): string {
  const sign = value.numerator < 0n ? '-' : '';
  const size = {
    ...value,
    numerator: value.numerator < 0n ? -value.numerator : value.numerator,
  };
  const whole = size.numerator / size.denominator;
  const top = size.numerator % size.denominator;
  const fraction = top === 0n ? '' : `${top}/${size.denominator}`;
  const foot = feet ? whole / 12n : 0n;
  const inch = whole - foot * 12n;
  const inchPart = fraction === '' ? `${inch}` : inch === 0n ? fraction : `${inch}-${fraction}`;
  const parts = [foot > 0n ? `${foot} ft` : '', foot > 0n && inchPart === '0' ? '' : `${inchPart} in`];
  return `${sign}${parts.filter((part) => part !== '').join(' ')}`;
}

function write(steps: bigint, by: Step): string {
  const value = multiplyRational(rational(steps), by.step);
  if (by.as) return inchText(value, by.as === 'feet-inches');
  return by.unit === '' ? decimalText(value) : `${decimalText(value)} ${by.unit}`;
}

function read(text: string): number {
  const result = parseQuantity(text);
  if (!result.ok) throw new Error(`wrote '${text}', which does not read back: ${result.reason}`);
  return result.si;
}

/**
 * The value rounded to a handy step (0.05 m or 1 in for a length of a few metres, two digits for most
 * kinds) and written for a spec. `down` never reads back above the value, `up` never below. A value
 * that would become 0 is given a finer step. Throws RangeError when the value is not finite, larger than
 * 1e12 or smaller than 1e-15 (no shelter has such a thing), or the kind unknown.
 */
export function toSpecText(
  si: number,
  kind: KindName,
  system: System,
  round: Rounding = 'nearest',
): SpecText {
  const size = Math.abs(si);
  if (!Number.isFinite(si) || size > 1e12 || (size > 0 && size < 1e-15))
    throw new RangeError(`${si} cannot be written into a spec`);
  kindOf(kind);
  if (si === 0 && kind === 'length') return { text: system === 'us' ? '0 ft' : '0 m', si: 0 };
  const table = handy[kind as KindName]?.[system];
  let by = table?.find((step) => Math.abs(si) < step.upTo) ?? twoDigits(si, kind, system);
  for (let finer = 0; finer < 40; finer += 1) {
    const result = rounded(si, by, round);
    const vanished = result.si === 0 && si !== 0 && kind !== 'count' && kind !== 'temperature';
    if (!vanished) return result;
    by = { ...by, step: multiplyRational(by.step, by.as ? r(1, 4) : r(1, 10)) };
  }
  return rounded(si, by, round);
}

function rounded(si: number, by: Step, round: Rounding): SpecText {
  const unit = by.unit === '' ? undefined : unitOf(by.unit);
  const middle = BigInt(Math.round((unit ? inUnit(si, unit) : si) / toNumber(by.step)));
  const near = [middle - 1n, middle, middle + 1n].map((steps) => {
    const text = write(steps, by);
    return { text, si: read(text) };
  });
  const allowed = near.filter((one) =>
    round === 'nearest' ? true : round === 'down' ? one.si <= si : one.si >= si,
  );
  return allowed.reduce((best, one) => (Math.abs(one.si - si) < Math.abs(best.si - si) ? one : best));
}
