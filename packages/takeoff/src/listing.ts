/** Material lists as CSV and JSON, for a spreadsheet or another program. */
import { format, type System } from '@tautline/quantity';
import { tell } from './line.ts';
import type { MaterialLine, Materials } from './materials.ts';

/**
 * One cell. Quoted where it must be; text that a spreadsheet would take for a formula (it begins with
 * = + - @, a tab or a line end) is led in by an apostrophe, as OWASP's note on CSV injection advises
 * (from memory).
 */
export function csvCell(text: string): string {
  const tame = /^[=+\-@\t\r\n]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(tame) ? `"${tame.replaceAll('"', '""')}"` : tame;
}

const header = ['group', 'item', 'title', 'quantity', 'value', 'unit', 'buy', 'cost', 'parts', 'how'];
const units = { length: 'm', area: 'm2', volume: 'm3', count: '1', mass: 'kg' } as const;

/** What to buy: `12 x 6.1 m`, or the pieces where it is not sold in lengths. */
export function buyText(line: MaterialLine, system: System): string {
  const lengths = line.cuts ? line.cuts.bought : line.pieces;
  const all = (lengths ?? []).map(({ length, count }) => `${count} x ${format(length, 'length', system)}`);
  const never = line.cuts?.impossible.map(
    ({ length, count }) => `${count} x ${format(length, 'length', system)} is longer than any sold`,
  );
  return [...all, ...(never ?? [])].join('; ');
}

/** Rows with a header, lines ended by CR LF (RFC 4180). Values in SI, quantities in words in one system. */
export function materialsCsv(materials: Materials, system: System): string {
  const rows = materials.lines.map((line) => [
    line.group,
    line.item?.id ?? '',
    line.title,
    format(line.total, line.kind, system),
    `${Number(line.total.toPrecision(9))}`,
    units[line.kind],
    buyText(line, system),
    line.cost === undefined ? '' : format(line.cost, 'money', system),
    line.parts.map((part) => part.id).join(' '),
    line.steps.map((step) => tell(step, system)).join('; '),
  ]);
  return [header, ...rows].map((row) => `${row.map(csvCell).join(',')}\r\n`).join('');
}

/** Everything in SI, two-space indented, keys in a fixed order; origins are left out. */
export function materialsJson(materials: Materials): string {
  const { cost, cutList, gaps, lines } = materials;
  return `${JSON.stringify(
    {
      lines: lines.map((line) => ({
        group: line.group,
        item: line.item?.id ?? null,
        title: line.title,
        kind: line.kind,
        total: line.total,
        pieces: line.pieces ?? [],
        cost: line.cost ?? null,
        parts: line.parts.map((part) => part.id),
      })),
      cutList: cutList.map(({ item, width, plan }) => ({ item: item.id, width: width ?? null, ...plan })),
      cost,
      gaps: gaps.map((gap) => gap.what),
    },
    null,
    2,
  )}\n`;
}
