/** Makes a finished drawing of loose shapes: heading, key, scale bar, margins. */
import { format, type System } from '@tautline/quantity';
import { boundsOf, moved } from './bounds.ts';
import { textWidth, wrapWords } from './lettering.ts';
import {
  box,
  circle,
  type Drawing,
  line,
  type PartLabel,
  type Point,
  point,
  type Shape,
  text,
} from './shapes.ts';

const MARGIN = 22;
const KEY_SIZE = 11;
const KEY_LINE = 15;
/** Lines of a key longer than this are hard to follow; a sheet twice as wide takes two columns. */
const KEY_WIDEST = 640;
const COLUMNS_FROM = 720;
const BETWEEN = 28;

export interface KeyEntry {
  readonly part: string;
  readonly number: number;
  readonly words: string;
}

export interface SheetFacts {
  readonly view: string;
  readonly title: string;
  readonly subtitle?: string;
  readonly description: string;
  readonly labels: readonly PartLabel[];
  readonly key?: readonly KeyEntry[];
  /** Lines of small print under the key. */
  readonly notes?: readonly string[];
  readonly scale?: number;
  readonly system?: System;
  /** Width to keep to, page units, where the body is not wider. */
  readonly wide?: number;
}

/** Adds what every sheet has and moves all into the page's positive quarter. */
export function finishSheet(body: readonly Shape[], facts: SheetFacts): Drawing {
  const bounds = boundsOf(body);
  const shapes: Shape[] = [];
  const wide = Math.max(
    bounds.right - bounds.left,
    facts.wide === undefined ? 420 : Math.min(KEY_WIDEST, facts.wide - 2 * MARGIN),
    ...(facts.wide === undefined
      ? [textWidth(facts.title, 16, true), textWidth(facts.subtitle ?? '', 11)]
      : []),
  );
  const subtitle = facts.subtitle ? wrapWords(facts.subtitle, 11, wide) : [];
  const left = (bounds.left + bounds.right) / 2 - wide / 2;
  const top = bounds.top - 34 - 16 * subtitle.length;
  shapes.push(
    text('sheet', 'heading', point(left, top + 6), facts.title, {
      size: 16,
      bold: true,
    }),
  );
  subtitle.forEach((words, i) => {
    shapes.push(text('sheet', 'note', point(left, top + 23 + 15 * i), words, { size: 11 }));
  });
  let y = bounds.bottom + 20;
  if (facts.scale && facts.system) {
    shapes.push(...scaleBar(point(left, y), facts.scale, facts.system));
    y += 34;
  }
  const keyed = keyShapes(facts.key ?? [], point(left, y), wide);
  shapes.push(...keyed.shapes);
  y = keyed.bottom;
  if (facts.notes?.length) {
    y += 2;
    shapes.push(line('sheet', 'table-rule', point(left, y - 12), point(left + wide, y - 12)));
    y += 5;
    for (const note of facts.notes) {
      for (const words of wrapWords(note, KEY_SIZE - 1, wide)) {
        shapes.push(text('sheet', 'note', point(left, y), words, { size: KEY_SIZE - 1 }));
        y += KEY_LINE - 1;
      }
    }
  }
  return onPage([...body, ...shapes], facts);
}

/** Shapes as a drawing with margins, without anything beside them. */
export function onPage(
  all: readonly Shape[],
  { view, title, description, scale, labels }: SheetFacts,
): Drawing {
  const outer = boundsOf(all);
  const dx = MARGIN - outer.left;
  const dy = MARGIN - outer.top;
  return {
    view,
    title,
    description,
    width: Math.ceil(outer.right - outer.left + 2 * MARGIN),
    height: Math.ceil(outer.bottom - outer.top + 2 * MARGIN),
    ...(scale ? { scale, origin: point(dx, dy) } : {}),
    shapes: all.map((shape) => moved(shape, dx, dy)),
    labels,
  };
}

/** The key, in two columns where the sheet is wide enough for both, and where it ends. */
function keyShapes(
  key: readonly KeyEntry[],
  at: Point,
  wide: number,
): { readonly shapes: readonly Shape[]; readonly bottom: number } {
  const columns = wide >= COLUMNS_FROM && key.length > 3 ? 2 : 1;
  const room = (wide - (columns - 1) * BETWEEN) / columns;
  const entries = key.map((entry) => ({ entry, lines: wrapWords(entry.words, KEY_SIZE, room - 30) }));
  const tall = (lines: readonly string[]): number => lines.length * KEY_LINE + 4;
  const whole = entries.reduce((sum, { lines }) => sum + tall(lines), 0);
  const shapes: Shape[] = [];
  let [x, y, bottom] = [at.x, at.y, at.y];
  for (const { entry, lines } of entries) {
    if (columns === 2 && x === at.x && y - at.y >= whole / 2) [x, y] = [at.x + room + BETWEEN, at.y];
    shapes.push(
      circle(entry.part, 'balloon', point(x + 8, y - 4), 8),
      text(entry.part, 'note', point(x + 8, y - 0.4), `${entry.number}`, {
        size: 10,
        anchor: 'middle',
        bold: true,
      }),
      ...lines.map((words, n) =>
        text(entry.part, 'note', point(x + 24, y + n * KEY_LINE), words, { size: KEY_SIZE }),
      ),
    );
    y += tall(lines);
    bottom = Math.max(bottom, y);
  }
  return { shapes, bottom };
}

/** Round lengths a scale bar may show, m (metric) and feet (US). */
const bars = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50];

function scaleBar(at: Point, scale: number, system: System): readonly Shape[] {
  const unit = system === 'us' ? 0.3048 : 1;
  const length = bars.find((bar) => bar * unit * scale >= 70) ?? 50;
  const cell = (length * unit * scale) / 4;
  const low = at.y + 5;
  return [
    ...[0, 1, 2, 3].map((i) =>
      box(
        'scale-bar',
        i % 2 === 0 ? 'scale-bar' : 'balloon',
        point(at.x + i * cell, at.y),
        point(at.x + (i + 1) * cell, low),
      ),
    ),
    text('scale-bar', 'note', point(at.x + 4 * cell + 8, low + 1), format(length * unit, 'length', system), {
      size: 10,
    }),
  ];
}
