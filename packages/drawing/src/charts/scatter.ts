/** Choices as points between two measures, with those that no other beats joined by a line. */
import type { KindName } from '@tautline/quantity';
import { format, type System } from '@tautline/quantity';
import { outlinesOverlap } from '../scene/bounds.ts';
import { textOutlines } from '../scene/free-text.ts';
import {
  circle,
  type Drawing,
  line,
  type Point,
  path,
  point,
  polyline,
  type Shape,
  type TextShape,
  text,
} from '../scene/shapes.ts';
import { finishSheet } from '../scene/sheet.ts';

export interface ScatterAxis {
  readonly label: string;
  /** Kind of quantity of the values. */
  readonly kind: KindName;
  /** The unit that the steps of the scale are round in, SI. */
  readonly unit: number;
}

export interface ScatterPoint {
  readonly part: string;
  /** Short, drawn beside the mark. */
  readonly name: string;
  /** In words, spoken and shown as a tool tip. */
  readonly label: string;
  readonly x: number;
  readonly y: number;
  /** Which mark: no other beats it; nothing fails in it; something fails in it. */
  readonly mark: 'front' | 'holds' | 'fails';
}

export interface ScatterChart {
  readonly title: string;
  readonly description: string;
  readonly x: ScatterAxis;
  readonly y: ScatterAxis;
  readonly points: readonly ScatterPoint[];
  readonly notes?: readonly string[];
}

const WIDE = 460;
const TALL = 270;

/** The chart with its key. Throws RangeError without points, or with one that is not finite. */
export function scatterChart(chart: ScatterChart, { system }: { readonly system: System }): Drawing {
  const { points } = chart;
  if (points.length === 0 || !points.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y)))
    throw new RangeError('a chart needs points with finite places');
  const xs = scaleOf(
    points.map(({ x }) => x),
    chart.x.unit,
  );
  const ys = scaleOf(
    points.map(({ y }) => y),
    chart.y.unit,
  );
  const px = (x: number): number => ((x - xs.low) / (xs.high - xs.low)) * WIDE;
  const py = (y: number): number => TALL - ((y - ys.low) / (ys.high - ys.low)) * TALL;
  const shapes: Shape[] = [];
  for (const tick of xs.ticks)
    shapes.push(
      line('axis', 'table-rule', point(px(tick), TALL), point(px(tick), TALL + 5)),
      text('axis', 'note', point(px(tick), TALL + 18), format(tick, chart.x.kind, system), {
        size: 10,
        anchor: 'middle',
      }),
    );
  for (const tick of ys.ticks)
    shapes.push(
      line('axis', 'witness', point(0, py(tick)), point(WIDE, py(tick))),
      text('axis', 'note', point(-8, py(tick) + 3.5), format(tick, chart.y.kind, system), {
        size: 10,
        anchor: 'end',
      }),
    );
  shapes.push(
    polyline('axis', 'table-rule', [point(0, 0), point(0, TALL), point(WIDE, TALL)]),
    text('axis', 'note', point(WIDE, TALL + 36), chart.x.label, { size: 11, anchor: 'end', bold: true }),
    text('axis', 'note', point(0, -12), chart.y.label, { size: 11, bold: true }),
  );
  const at = (one: ScatterPoint): Point => point(px(one.x), py(one.y));
  const front = points.filter(({ mark }) => mark === 'front').sort((a, b) => a.x - b.x || a.y - b.y);
  if (front.length > 1) shapes.push(polyline('front', 'deflected', front.map(at)));
  // Those one looks for are drawn last, over the others.
  const order = { fails: 0, holds: 1, front: 2 } as const;
  const drawn = [...points].sort((a, b) => order[a.mark] - order[b.mark]);
  for (const one of drawn) shapes.push(...markOf(one.part, one.mark, at(one)));
  shapes.push(...names([...drawn].reverse(), at, shapes), ...key(points));
  return finishSheet(shapes, {
    view: 'scatter-chart',
    title: chart.title,
    description: `${chart.description} ${points.map(({ label }) => label).join('; ')}.`,
    labels: points.map(({ part, label }) => ({ part, label })),
    notes: chart.notes ?? [],
  });
}

/** Marks that differ in shape and filling, so that no colour is needed. */
function markOf(part: string, mark: ScatterPoint['mark'], { x, y }: Point): readonly Shape[] {
  if (mark === 'front') return [circle(part, 'scale-bar', point(x, y), 5.5)];
  if (mark === 'holds') return [circle(part, 'peg', point(x, y), 4.5)];
  return [
    path(part, 'peg', [
      [point(x - 4, y - 4), point(x + 4, y + 4)],
      [point(x - 4, y + 4), point(x + 4, y - 4)],
    ]),
  ];
}

/** Names beside their marks where there is room; those of the front are never left out. */
function names(
  points: readonly ScatterPoint[],
  at: (one: ScatterPoint) => Point,
  drawn: readonly Shape[],
): readonly TextShape[] {
  const taken = [...textOutlines(drawn), ...points.map((one) => square(at(one)))];
  return points.flatMap(({ part, name, mark }, index): TextShape[] => {
    const { x, y } = at(points[index] as ScatterPoint);
    const size = mark === 'front' ? 12 : 10;
    const places = [
      [point(x + 8, y - 6), 'start'],
      [point(x - 8, y - 6), 'end'],
      [point(x + 8, y + 15), 'start'],
      [point(x - 8, y + 15), 'end'],
      [point(x, y - 12), 'middle'],
      [point(x, y + 22), 'middle'],
    ] as const;
    const wished = places.map(([place, anchor]) =>
      text(part, 'note', place, name, { size, anchor, bold: mark === 'front' }),
    );
    const free = wished.find((one) =>
      textOutlines([one]).every((outline) => !taken.some((other) => outlinesOverlap(outline, other))),
    );
    const chosen = free ?? (mark === 'front' ? wished[0] : undefined);
    if (chosen === undefined) return [];
    taken.push(...textOutlines([chosen]));
    return [chosen];
  });
}

const square = ({ x, y }: Point): readonly Point[] => [
  point(x - 5, y - 5),
  point(x + 5, y - 5),
  point(x + 5, y + 5),
  point(x - 5, y + 5),
];

const meanings = [
  ['front', 'no other beats it'],
  ['holds', 'nothing fails'],
  ['fails', 'something fails'],
] as const;

function key(points: readonly ScatterPoint[]): readonly Shape[] {
  const y = TALL + 58;
  return meanings
    .filter(([mark]) => points.some((one) => one.mark === mark))
    .flatMap(([mark, words], index) => {
      const x = 8 + index * 150;
      return [
        ...markOf('key', mark, point(x, y - 4)),
        text('key', 'note', point(x + 12, y), words, { size: 11 }),
      ];
    });
}

interface Scale {
  readonly low: number;
  readonly high: number;
  readonly ticks: readonly number[];
}

/** About five round steps around the values; the ends are steps too. */
function scaleOf(values: readonly number[], unit: number): Scale {
  const [least, most] = [Math.min(...values) / unit, Math.max(...values) / unit];
  // Values that differ by less than a label shows are drawn as one.
  const shown = Math.max(Math.abs(most) * 1e-4, 0.05);
  const room = most - least > shown ? most - least : Math.max(Math.abs(most) * 0.2, 1);
  const rough = room / 4;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((one) => one * power).find((one) => one >= rough) ?? 10 * power;
  const low = Math.floor(least / step - 0.15) * step;
  const count = Math.max(1, Math.ceil((most - low) / step + 0.15));
  const ticks = Array.from({ length: count + 1 }, (_, at) => (low + at * step) * unit).filter(
    (tick) => tick >= 0 || least < 0,
  );
  return { low: ticks[0] as number, high: ticks.at(-1) as number, ticks };
}
