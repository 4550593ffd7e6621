/** Small tables on a sheet, wrapped into several blocks side by side. */
import { textWidth } from './lettering.ts';
import { line, type Point, point, type Shape, text } from './shapes.ts';

export interface TableRow {
  readonly part: string;
  readonly cells: readonly string[];
}

const SIZE = 10;
const ROW = 14;
const BETWEEN = 22;
/** Fewer rows than this are not split. */
const FEWEST = 8;

const columnWidths = (head: readonly string[], rows: readonly TableRow[]): readonly number[] =>
  head.map(
    (title, i) =>
      Math.max(textWidth(title, SIZE, true), ...rows.map(({ cells }) => textWidth(cells[i] ?? '', SIZE))) +
      14,
  );

const sum = (widths: readonly number[]): number => widths.reduce((a, b) => a + b, 0);

/** A table in as many blocks side by side as fit the room (page units). */
export function tableWithin(
  at: Point,
  head: readonly string[],
  rows: readonly TableRow[],
  room: number,
): readonly Shape[] {
  const blocks = Math.max(1, Math.floor((room + BETWEEN) / (sum(columnWidths(head, rows)) + BETWEEN)));
  return table(at, head, rows, Math.max(FEWEST, Math.ceil(rows.length / blocks)));
}

/** Draws a table with its top left corner at `at`; after `rows` rows it goes on in a new block to the right. */
export function table(
  at: Point,
  head: readonly string[],
  rows: readonly TableRow[],
  perBlock: number,
): readonly Shape[] {
  const widths = columnWidths(head, rows);
  const wide = sum(widths);
  const shapes: Shape[] = [];
  for (let start = 0, block = 0; start < rows.length; start += perBlock, block++) {
    const left = at.x + block * (wide + BETWEEN);
    const cell = (i: number): number => left + sum(widths.slice(0, i));
    head.forEach((title, i) => {
      shapes.push(text('table', 'note', point(cell(i), at.y), title, { size: SIZE, bold: true }));
    });
    shapes.push(line('table', 'table-rule', point(left, at.y + 4), point(left + wide - 8, at.y + 4)));
    rows.slice(start, start + perBlock).forEach(({ part, cells }, r) => {
      cells.forEach((words, i) => {
        shapes.push(text(part, 'note', point(cell(i), at.y + (r + 1) * ROW + 3), words, { size: SIZE }));
      });
    });
  }
  return shapes;
}
