/** Pictures of lists: how stock lengths are cut, and rows of numbers as bars. */
import type { KindName } from '@tautline/quantity';
import { format, type System } from '@tautline/quantity';
import { textWidth, wrapWords } from '../scene/lettering.ts';
import { hatch } from '../scene/outline.ts';
import { box, type Drawing, line, type Point, path, point, type Shape, text } from '../scene/shapes.ts';
import { finishSheet } from '../scene/sheet.ts';
import { exactLength } from '../views/exact.ts';

export interface CutPiece {
  readonly part: string;
  readonly label: string;
  /** m */
  readonly length: number;
}

/** One way to cut a stock length, and how many bars are cut that way. */
export interface CutBar {
  readonly item: string;
  readonly title: string;
  /** m */
  readonly stock: number;
  readonly count: number;
  readonly pieces: readonly CutPiece[];
}

export interface CutList {
  readonly title: string;
  readonly bars: readonly CutBar[];
  /** Lost at each cut, m. */
  readonly kerf: number;
}

/** Width of the longest bar, page units: with what is said beside it, as wide as a printed page. */
const WIDE = 470;
/** Width of lines of words over and under a bar. */
const WORDS = 590;
const TALL = 24;
/** How much wider bold letters run than plain ones. */
const BOLD = 1.12;

const rectangle = (x: number, y: number, wide: number, tall: number): readonly Point[] => [
  point(x, y),
  point(x + wide, y),
  point(x + wide, y + tall),
  point(x, y + tall),
];

/** Bars of stock with their pieces in order and the offcut hatched. Throws RangeError when pieces exceed the stock. */
export function cutBars(list: CutList, options: { readonly system: System }): Drawing {
  const m = (si: number): string => exactLength(si, options.system);
  const longest = Math.max(...list.bars.map(({ stock }) => stock), 0.1);
  const scale = WIDE / longest;
  const shapes: Shape[] = [];
  const spoken: string[] = [];
  let y = 0;
  for (const bar of list.bars) {
    const used = bar.pieces.reduce((sum, piece) => sum + piece.length, 0);
    const rest = bar.stock - used - list.kerf * bar.pieces.length;
    // The last piece may end at the bar's end, where no cut is made.
    if (rest < -list.kerf - 1e-6)
      throw new RangeError(`pieces of ${m(used)} do not fit a bar of ${m(bar.stock)}`);
    for (const words of wrapWords(`${bar.count} of ${bar.title}, ${m(bar.stock)} long`, 11 * BOLD, WORDS)) {
      shapes.push(text(bar.item, 'note', point(0, y), words, { size: 11, bold: true }));
      y += 14;
    }
    y += 7 - 14;
    let x = 0;
    bar.pieces.forEach((piece) => {
      const wide = piece.length * scale;
      shapes.push(box(piece.part, 'bar', point(x, y), point(x + wide, y + TALL)));
      const full = `${piece.label} ${m(piece.length)}`;
      const words = [full, m(piece.length)].find((words) => textWidth(words, 10) + 6 <= wide);
      if (words)
        shapes.push(
          text(piece.part, 'note', point(x + wide / 2, y + TALL / 2 + 3.6), words, {
            size: 10,
            anchor: 'middle',
          }),
        );
      x += wide + list.kerf * scale;
    });
    if (rest > 1e-4) {
      const from = Math.min(x, bar.stock * scale);
      const outline = rectangle(from, y, bar.stock * scale - from, TALL);
      shapes.push(
        box(bar.item, 'offcut', outline[0] as Point, outline[2] as Point),
        path(bar.item, 'offcut-hatch', hatch(outline, -45, 7)),
      );
    }
    const left = rest > 1e-4 ? `offcut ${m(rest)}` : 'no offcut';
    shapes.push(
      text(bar.item, 'note', point(bar.stock * scale + 10, y + TALL / 2 + 3.6), left, { size: 10 }),
    );
    const small = bar.pieces.filter((piece) => textWidth(m(piece.length), 10) + 6 > piece.length * scale);
    const below =
      small.length === 0
        ? []
        : wrapWords(
            `small pieces, from the left: ${small.map((piece) => `${piece.label} ${m(piece.length)}`).join('; ')}`,
            10,
            WORDS,
          );
    below.forEach((words, n) => {
      shapes.push(text(bar.item, 'note', point(0, y + TALL + 13 + 13 * n), words, { size: 10 }));
    });
    spoken.push(
      `${bar.count} of ${bar.title}: ${bar.pieces.map((piece) => m(piece.length)).join(' + ')}, ${left}`,
    );
    y += TALL + 26 + 12 * below.length;
  }
  const labels = new Map(
    list.bars.flatMap((bar) => [
      ...bar.pieces.map((piece) => [piece.part, piece.label] as const),
      [bar.item, bar.title] as const,
    ]),
  );
  return finishSheet(shapes, {
    view: 'cut-list',
    title: list.title,
    description: spoken.join('. '),
    labels: [...labels].map(([part, label]) => ({ part, label })),
    notes: [
      `Cut from the left; each cut is taken to lose ${format(list.kerf, 'thickness', options.system)}.`,
    ],
  });
}

export interface ChartRow {
  readonly part: string;
  readonly label: string;
  /** SI */
  readonly value: number;
  /** After the number, e.g. 'first'. */
  readonly note?: string;
}

export interface BarChart {
  readonly title: string;
  readonly description: string;
  /** Kind of quantity of the values. */
  readonly kind: KindName;
  readonly rows: readonly ChartRow[];
  /** Length of the longest bar on the page; 420 without it. */
  readonly reach?: number;
  /** A line to compare with, e.g. the design gust. Bars that end short of it are hatched. */
  readonly mark?: { readonly value: number; readonly label: string };
}

/** Horizontal bars with their numbers. Throws RangeError when a value is negative or not finite. */
export function barChart(chart: BarChart, options: { readonly system: System }): Drawing {
  const show = (si: number): string => format(si, chart.kind, options.system);
  const wide = Math.max(...chart.rows.map(({ label }) => textWidth(label, 11)), 40) + 12;
  const top = Math.max(...chart.rows.map(({ value }) => value), chart.mark?.value ?? 0, Number.MIN_VALUE);
  const scale = (chart.reach ?? 420) / top;
  const shapes: Shape[] = [];
  const step = 24;
  chart.rows.forEach((row, i) => {
    if (!(row.value >= 0) || !Number.isFinite(row.value))
      throw new RangeError(`${row.label}: ${row.value} cannot be a bar`);
    const y = i * step;
    const length = row.value * scale;
    const short = chart.mark !== undefined && row.value < chart.mark.value;
    const outline = rectangle(wide, y, length, 15);
    shapes.push(text(row.part, 'note', point(wide - 8, y + 11.5), row.label, { size: 11, anchor: 'end' }));
    shapes.push(box(row.part, 'bar', outline[0] as Point, outline[2] as Point));
    if (short) shapes.push(path(row.part, 'bar-hatch', hatch(outline, 45, 5)));
    shapes.push(
      text(
        row.part,
        'note',
        point(wide + length + 7, y + 11.5),
        `${show(row.value)}${row.note ? `, ${row.note}` : ''}`,
        { size: 11, bold: short },
      ),
    );
  });
  const bottom = chart.rows.length * step;
  shapes.push(line('axis', 'table-rule', point(wide, -6), point(wide, bottom - 3)));
  if (chart.mark) {
    const x = wide + chart.mark.value * scale;
    shapes.push(
      line('mark', 'deflected', point(x, -6), point(x, bottom - 1)),
      text('mark', 'note', point(x, bottom + 13), `${chart.mark.label} ${show(chart.mark.value)}`, {
        size: 11,
        anchor: 'middle',
        bold: true,
      }),
    );
  }
  return finishSheet(shapes, {
    view: 'bar-chart',
    title: chart.title,
    description: `${chart.description} ${chart.rows.map((row) => `${row.label} ${show(row.value)}`).join('; ')}.`,
    labels: chart.rows.map(({ part, label }) => ({ part, label })),
    notes:
      chart.mark && chart.rows.some(({ value }) => value < (chart.mark?.value ?? 0))
        ? [`Hatched bars end short of the ${chart.mark.label}.`]
        : [],
  });
}
