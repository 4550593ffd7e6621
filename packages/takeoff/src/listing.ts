/** Material lists as CSV and JSON, for a spreadsheet or another program. */
import { format, type System } from '@tautline/quantity';
import { type TakeoffLine, tell } from './line.ts';
import type { MaterialLine, Materials } from './materials.ts';
import { priceKey } from './prices.ts';

/**
 * One cell. Quoted where it must be; text that a spreadsheet would take for a formula (it begins with
 * = + - @, a tab or a line end) is led in by an apostrophe, as OWASP's note on CSV injection advises
 * (from memory).
 */
export function csvCell(text: string): string {
  const tame = /^[=+\-@\t\r\n]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(tame) ? `"${tame.replaceAll('"', '""')}"` : tame;
}

const header = [
  'group',
  'item',
  'title',
  'quantity',
  'value',
  'unit',
  'buy',
  'cost',
  'currency',
  'parts',
  'how',
];
const units = { length: 'm', area: 'm2', volume: 'm3', count: '1', mass: 'kg' } as const;

/** A length as someone with a saw needs it: to the millimetre, or the sixteenth of an inch. */
export function cutText(length: number, system: System): string {
  if (system === 'us') return format(length, 'length', system, { inchParts: 16 });
  return length < 0.1 ? `${Math.round(length * 1000)} mm` : `${length.toFixed(3)} m`;
}

/** What one of a supply is called that holds more than one piece or a measure. */
const packWords: Partial<Readonly<Record<TakeoffLine['kind'], string>>> = {
  volume: 'bag',
  length: 'roll',
  area: 'can',
};

/** `12 bags of 0.6 ft³`, `2 packs of 100`. */
function packsText(count: number, pack: number, kind: TakeoffLine['kind'], system: System): string {
  const word = packWords[kind] ?? 'pack';
  return `${count} ${word}${count === 1 ? '' : 's'} of ${format(pack, kind, system, kind === 'volume' && system === 'us' ? { unit: 'ft3' } : {})}`;
}

/** What to buy: `12 x 6.096 m`, `1 roll of 7.32 m x 30.5 m`, `3 bags of 0.6 ft³`, or the pieces where it is not sold in lengths. */
export function buyText(line: MaterialLine, system: System): string {
  if (line.tied) return 'nothing: it is tied, and its cord is counted';
  if (line.pack !== undefined) {
    return line.buy === undefined || line.buy === 0 ? '' : packsText(line.buy, line.pack, line.kind, system);
  }
  const each = ({ length, count }: { readonly length: number; readonly count: number }): string => {
    const long = line.width === undefined ? cutText(length, system) : format(length, 'length', system);
    if (line.width === undefined) return `${count} x ${long}`;
    const what = line.item?.kind === 'sheet' ? 'sheet' : 'roll';
    return `${count} ${what}${count === 1 ? '' : 's'} of ${format(line.width, 'length', system)} x ${long}`;
  };
  const all = (line.cuts ? line.cuts.bought : (line.pieces ?? [])).map(each);
  const never = line.cuts?.impossible.map(
    ({ length, count }) => `${count} x ${cutText(length, system)} is longer than any sold`,
  );
  return [...all, ...(never ?? [])].join('; ');
}

/** What is taken from stock on hand: `6 x 3.048 m`, `4`; empty when nothing is. */
export function handText(line: MaterialLine, system: System): string {
  if (line.fromHand !== undefined) return `${line.fromHand}`;
  const lengths = new Map<number, number>();
  for (const bar of line.cuts?.bars ?? []) {
    if (bar.onHand) lengths.set(bar.length, (lengths.get(bar.length) ?? 0) + bar.count);
  }
  return [...lengths].map(([length, count]) => `${count} x ${cutText(length, system)}`).join('; ');
}

/**
 * Header and rows of the material list, values in SI, quantities in words in one system. The column `item`
 * holds the name that a price list may use.
 */
export function materialsTable(
  materials: Materials,
  system: System,
): { readonly header: readonly string[]; readonly rows: readonly (readonly (string | number)[])[] } {
  const rows = materials.lines.map((line) => [
    line.group,
    priceKey(line),
    line.title,
    format(line.total, line.kind, system),
    Number(line.total.toPrecision(9)),
    units[line.kind],
    buyText(line, system),
    line.cost === undefined ? '' : Math.round(line.cost * 1e4) / 1e4,
    line.cost === undefined ? '' : (materials.currency ?? ''),
    line.parts.map((part) => part.id).join(' '),
    line.steps.map((step) => tell(step, system)).join('; '),
  ]);
  return { header, rows };
}

/** The material list as text with lines ended by CR LF (RFC 4180). */
export function materialsCsv(materials: Materials, system: System): string {
  const { rows } = materialsTable(materials, system);
  return [header, ...rows].map((row) => `${row.map((cell) => csvCell(`${cell}`)).join(',')}\r\n`).join('');
}

/** Everything in SI as plain data, keys in a fixed order; origins are left out. */
export function materialsPlain(materials: Materials): object {
  const { cost, cutList, currency, gaps, lines } = materials;
  return {
    lines: lines.map((line) => ({
      group: line.group,
      item: line.item?.id ?? null,
      title: line.title,
      kind: line.kind,
      total: line.total,
      pieces: line.pieces ?? [],
      pack: line.pack ?? null,
      fromHand: line.fromHand ?? 0,
      buy: line.buy ?? null,
      cost: line.cost ?? null,
      parts: line.parts.map((part) => part.id),
    })),
    cutList: cutList.map(({ item, width, plan }) => ({ item: item.id, width: width ?? null, ...plan })),
    currency: currency ?? null,
    cost,
    gaps: gaps.map((gap) => gap.what),
  };
}

/** The same as text, two-space indented. */
export function materialsJson(materials: Materials): string {
  return `${JSON.stringify(materialsPlain(materials), null, 2)}\n`;
}
