/** Values as they are written into a line, keeping the units the line already uses. */
import {
  asKind,
  inUnit,
  isKind,
  type KindName,
  kinds,
  parseQuantity,
  type System,
  toSpecText,
  unitOf,
} from '@tautline/quantity';
import type { SpecValue } from '@tautline/shelter';
import { quoted } from '../text/literals.ts';
import { scanQuantity } from '../text/quantity-text.ts';
import { systemOfUnit } from '../text/written-system.ts';

/** Whether a text reads as exactly this value. */
function readsAs(text: string, si: number, kind: KindName): boolean {
  const read = parseQuantity(text);
  const fitted = read.ok ? asKind(read, kind) : undefined;
  return fitted?.ok === true && fitted.si === si;
}

/** The shortest decimal in a unit that reads as exactly this value, or undefined. */
function inOneUnit(si: number, unit: string, kind: KindName, digits: number): string | undefined {
  const known = unit === '' ? undefined : unitOf(unit);
  if (unit !== '' && !known) return undefined;
  const value = known ? inUnit(si, known) : si;
  for (let places = 1; places <= digits; places += 1) {
    const text = `${Number(value.toPrecision(places))}${unit === '' ? '' : ` ${unit}`}`;
    if (readsAs(text, si, kind)) return text;
  }
  return undefined;
}

/** The system a written quantity is in, where its units tell. */
function systemOf(text: string): System | undefined {
  const unit = scanQuantity(text, 0)?.parts[0]?.unit;
  return unit === undefined ? undefined : systemOfUnit(unit);
}

/**
 * A quantity as text that reads back as the same SI value (angles in degrees to the last bit or two): handy
 * feet and inches or decimals where they are exact, else as many digits as it takes. `old` is the text it replaces: its units are kept.
 * Throws RangeError for a value that is not finite or of no known kind.
 */
export function quantityText(si: number, kind: KindName, system: System, old?: string): string {
  if (!isKind(kind)) throw new RangeError(`'${kind}' is no kind of quantity`);
  const own = (old === undefined ? undefined : systemOf(old)) ?? system;
  const oldUnit = old === undefined ? undefined : scanQuantity(old, 0)?.parts;
  if (oldUnit?.length === 1 && oldUnit[0]?.unit !== undefined) {
    const same = inOneUnit(si, oldUnit[0].unit, kind, 4);
    if (same !== undefined) return same;
  }
  const handy = toSpecText(si, kind, own);
  if (readsAs(handy.text, si, kind)) return handy.text;
  const other: System = own === 'us' ? 'metric' : 'us';
  const size = Math.abs(si);
  const rung = kinds[kind][own].findLast(({ from }) => size >= from)?.unit ?? '';
  const units = [
    rung,
    ...kinds[kind][own].map(({ unit }) => unit),
    ...kinds[kind][other].map(({ unit }) => unit),
  ];
  for (const digits of [6, 17]) {
    for (const unit of units) {
      const text = inOneUnit(si, unit, kind, digits);
      if (text !== undefined) return text;
    }
  }
  // Degrees and the like, whose factor is no finite fraction: as near as a double can be written.
  const known = unitOf(rung);
  return `${Number((known ? inUnit(si, known) : si).toPrecision(17))}${known ? ` ${rung}` : ''}`;
}

/** Any value of a slot as text. */
export function valueText(value: SpecValue, system: System, old?: string): string {
  switch (value.type) {
    case 'quantity':
      return quantityText(value.si, value.kind, system, old);
    case 'word':
      return value.word;
    case 'item':
      return value.id;
    case 'text':
      return quoted(value.text);
    case 'date':
      return value.date;
  }
}
