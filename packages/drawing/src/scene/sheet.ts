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
    facts.wide === undefined ? 420 : Math.min(420, facts.wide - 2 * MARGIN),
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
  for (const entry of facts.key ?? []) {
    const words = wrapWords(entry.words, KEY_SIZE, wide - 30);
    shapes.push(
      circle(entry.part, 'balloon', point(left + 8, y - 4), 8),
      text(entry.part, 'note', point(left + 8, y - 0.4), `${entry.number}`, {
        size: 10,
        anchor: 'middle',
        bold: true,
      }),
    );
    for (const words_ of words) {
      shapes.push(
        text(entry.part, 'note', point(left + 24, y), words_, {
          size: KEY_SIZE,
        }),
      );
      y += KEY_LINE;
    }
    y += 4;
  }
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
  const all = [...body, ...shapes];
  const outer = boundsOf(all);
  const dx = MARGIN - outer.left;
  const dy = MARGIN - outer.top;
  return {
    view: facts.view,
    title: facts.title,
    description: facts.description,
    width: Math.ceil(outer.right - outer.left + 2 * MARGIN),
    height: Math.ceil(outer.bottom - outer.top + 2 * MARGIN),
    ...(facts.scale ? { scale: facts.scale, origin: point(dx, dy) } : {}),
    shapes: all.map((shape) => moved(shape, dx, dy)),
    labels: facts.labels,
  };
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
