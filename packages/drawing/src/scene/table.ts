/** Small tables on a sheet, wrapped into several blocks side by side. */
import { textWidth } from './lettering.ts';
import { line, type Point, point, type Shape, text } from './shapes.ts';

export interface TableRow {
  readonly part: string;
  readonly cells: readonly string[];
}

const SIZE = 10;
const ROW = 14;

/** Draws a table with its top left corner at `at`; after `rows` rows it goes on in a new block to the right. */
export function table(
  at: Point,
  head: readonly string[],
  rows: readonly TableRow[],
  perBlock: number,
): readonly Shape[] {
  const widths = head.map(
    (title, i) =>
      Math.max(textWidth(title, SIZE, true), ...rows.map(({ cells }) => textWidth(cells[i] ?? '', SIZE))) +
      14,
  );
  const wide = widths.reduce((a, b) => a + b, 0);
  const shapes: Shape[] = [];
  for (let start = 0, block = 0; start < rows.length; start += perBlock, block++) {
    const left = at.x + block * (wide + 22);
    const cell = (i: number): number => left + widths.slice(0, i).reduce((a, b) => a + b, 0);
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
