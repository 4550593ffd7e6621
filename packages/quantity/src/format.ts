/** Values as text for people. Nothing here is read back; for that see `toSpecText`. */
import type { KindName } from './kinds.ts';
import { kindOf, type Rung, rungFor } from './kinds.ts';
import { toNumber } from './rational.ts';
import { type System, type Unit, unitOf } from './units.ts';

export interface FormatOptions {
  /** Significant digits, 3 unless said. Digits before the point are never rounded away. */
  readonly digits?: number;
  /** Show in this unit (a symbol `unitOf` knows) instead of the one that suits the size. */
  readonly unit?: string;
  /** Parts an inch is divided into: 16 unless said. */
  readonly inchParts?: number;
}

function finite(value: number): void {
  if (!Number.isFinite(value)) throw new RangeError(`${value} cannot be shown as a quantity`);
}

/**
 * A number with so many significant digits, without trailing zeros; whole digits are kept, and very
 * large or small numbers use a power of ten. Throws RangeError unless finite.
 */
export function formatNumber(value: number, digits = 3): string {
  finite(value);
  const size = Math.abs(value);
  if (size === 0) return '0';
  if (size >= 1e9 || size < 1e-4) {
    const [mantissa = '', power = ''] = value.toExponential(digits - 1).split('e');
    return `${trim(mantissa)}e${power.replace('+', '')}`;
  }
  const whole = Math.floor(Math.log10(size)) + 1;
  return trim(value.toFixed(Math.min(100, Math.max(0, digits - whole))));
}

function trim(text: string): string {
  const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return short === '-0' ? '0' : short;
}

/** Inches with a fraction in lowest terms: `1-3/8`, `3/4`, `6`. */
function inches(parts: number, perInch: number): string {
  const whole = Math.floor(parts / perInch);
  let top = parts % perInch;
  let bottom = perInch;
  while (top > 0 && top % 2 === 0 && bottom % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  if (top === 0) return `${whole}`;
  return whole === 0 ? `${top}/${bottom}` : `${whole}-${top}/${bottom}`;
}

/** `7 ft 6 in`, `14 ft`, `1-3/8 in`. Beyond 30 ft a sixteenth says more than is known: whole inches. */
function feetAndInches(si: number, style: 'inches' | 'feet-inches', asked: number | undefined): string {
  const sign = si < 0 ? '-' : '';
  const size = Math.abs(si) / 0.0254;
  const perInch = asked ?? (size > 360 ? 1 : 16);
  const parts = Math.round(size * perInch);
  if (parts === 0) return size === 0 ? '0 in' : `${sign}${formatNumber(size, 2)} in`;
  const feet = style === 'feet-inches' || parts >= 12 * perInch ? Math.floor(parts / (12 * perInch)) : 0;
  const rest = parts - feet * 12 * perInch;
  const text = [...(feet > 0 ? [`${feet} ft`] : []), ...(rest > 0 ? [`${inches(rest, perInch)} in`] : [])];
  return `${sign}${text.join(' ')}`;
}

/** The value in this unit: the inverse of reading it. */
export function inUnit(si: number, unit: Unit): number {
  const offset = unit.offset ? toNumber(unit.offset) : 0;
  return (si - offset) / toNumber(unit.factor);
}

/**
 * An SI value as text in one system, e.g. `4.27 m`, `7 ft 6 in`, `150 µm`, `38.5 m/s`, `86 mph`.
 * Throws RangeError when the value is not finite, the kind unknown or the asked unit unknown.
 */
export function format(si: number, kind: KindName, system: System, options: FormatOptions = {}): string {
  finite(si);
  // Nothing of a length has no size that would tell the unit: the one a house is measured in.
  if (si === 0 && kind === 'length' && options.unit === undefined) return system === 'us' ? '0 ft' : '0 m';
  const of = kindOf(kind);
  const rung: Rung = options.unit === undefined ? rungFor(si, of, system) : { unit: options.unit, from: 0 };
  if (rung.style === 'inches' || rung.style === 'feet-inches') {
    return feetAndInches(si, rung.style, options.inchParts);
  }
  const show = (value: number): string =>
    of.decimals === undefined ? formatNumber(value, options.digits ?? 3) : fixed(value, of.decimals);
  if (rung.unit === '') return show(si);
  const unit = unitOf(rung.unit);
  if (!unit) throw new RangeError(`'${rung.unit}' is no unit`);
  const text = show(of.difference === true ? si / toNumber(unit.factor) : inUnit(si, unit));
  if (unit.display === '°') return `${text}°`;
  // The only unit written out as a word takes its plural.
  return unit.display === 'month' && text !== '1' ? `${text} months` : `${text} ${unit.display}`;
}

/** Share of a capacity that is used up, for a person: past ten times it only matters that it is far too much. */
export function usedText(share: number): string {
  return share > 10 ? 'over 1000 %' : `${Math.round(share * 100)} %`;
}

function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

/** Both systems, the user's own first: `4.27 m (14 ft)`. One only, where both would say the same. */
export function formatBoth(
  si: number,
  kind: KindName,
  first: System = 'metric',
  options: FormatOptions = {},
): string {
  const own = format(si, kind, first, options);
  const other = format(si, kind, first === 'metric' ? 'us' : 'metric', options);
  return own === other ? own : `${own} (${other})`;
}
