/** Results drawn over the section: deflected shape, moments, ponded water, how hard each part works. */
import { format, type System, usedText } from '@tautline/quantity';
import { outlinesOverlap } from '../scene/bounds.ts';
import type { Frame } from '../scene/frame.ts';
import { textOutlines } from '../scene/free-text.ts';
import { halo } from '../scene/halo.ts';
import { textWidth } from '../scene/lettering.ts';
import { hatch } from '../scene/outline.ts';
import {
  box,
  line,
  type Point,
  path,
  point,
  polygon,
  polyline,
  type Shape,
  type Style,
  type TextShape,
  text,
} from '../scene/shapes.ts';
import { square } from '../scene/strokes.ts';
import type { Anchor } from './anchors.ts';

/** All coordinates in the model's section axes, m. */
export interface SectionOverlays {
  /** Displaced centre lines, already drawn `factor` times too large where `factor` is not 1. */
  readonly deflected?: {
    readonly lines: readonly (readonly Point[])[];
    readonly factor: number;
  };
  /** Bending moments, all to one measure. */
  readonly moments?: readonly MomentLine[];
  /** Numbers beside members that are seen end on. */
  readonly along?: readonly { readonly part: string; readonly at: Point; readonly text: string }[];
  /** Standing water: outline half way between two frames, volume on one frame (m3) and greatest depth (m). */
  readonly ponds?: readonly {
    readonly part: string;
    readonly outline: readonly Point[];
    readonly volume: number;
    readonly depth: number;
  }[];
  readonly utilisation?: readonly Utilisation[];
  /** Sentences for the foot of the sheet: which load case this is. */
  readonly captions?: readonly string[];
}

/** Bending moments along a line, N·m; positive is drawn to the left of travel (outside of a bow from left to right). */
export interface MomentLine {
  readonly part: string;
  readonly points: readonly (Point & { readonly moment: number })[];
}

export interface Utilisation {
  readonly part: string;
  /** Demand over capacity. */
  readonly value: number;
}

export const NEAR_LIMIT = 0.85;

/** Deflected shape, moment diagram, water, and halos around parts that work hard; texts come later. */
export function overlayShapes(
  overlays: SectionOverlays,
  body: readonly Shape[],
  frame: Frame,
): readonly Shape[] {
  const shapes: Shape[] = [];
  for (const { part, value } of overlays.utilisation ?? []) {
    const style: Style | undefined = value > 1 ? 'fails' : value > NEAR_LIMIT ? 'near' : undefined;
    if (style) shapes.push(...body.flatMap((shape) => (shape.part === part ? halo(shape, style) : [])));
  }
  for (const pond of overlays.ponds ?? []) {
    const outline = frame.all(pond.outline);
    shapes.push(polygon('water', 'water', outline), path('water', 'water-hatch', hatch(outline, 0, 4)));
  }
  for (const points of overlays.deflected?.lines ?? [])
    shapes.push(polyline('deflected', 'deflected', frame.all(points)));
  const largest = largestOf(overlays.moments);
  for (const moment of overlays.moments ?? []) {
    const tips = momentTips(moment, largest, frame);
    if (tips.length < 2) continue;
    const page = frame.all(moment.points);
    shapes.push(
      path(
        moment.part,
        'moment-hatch',
        tips.map(({ tip }, i) => [page[i] as Point, tip]),
      ),
      polyline(moment.part, 'moment', [
        page[0] as Point,
        ...tips.map(({ tip }) => tip),
        page[page.length - 1] as Point,
      ]),
    );
  }
  return shapes;
}

/** What the overlays say in words and numbers, at the places they would like best. */
export function overlayTexts(overlays: SectionOverlays, frame: Frame, system: System): readonly TextShape[] {
  const texts: TextShape[] = [];
  const bold = { size: 11, anchor: 'middle', bold: true } as const;
  for (const pond of overlays.ponds ?? []) {
    const outline = frame.all(pond.outline);
    const xs = outline.map((p) => p.x);
    const at = point((Math.min(...xs) + Math.max(...xs)) / 2, Math.max(...outline.map((p) => p.y)) + 24);
    texts.push(text('water', 'note', at, `water ${format(pond.volume, 'water', system)} on a frame`, bold));
  }
  const largest = largestOf(overlays.moments);
  for (const moment of overlays.moments ?? []) texts.push(...peakTexts(moment, largest, frame, system));
  for (const { part, at, text: words } of overlays.along ?? []) {
    // Beside what carries it, which mostly stands right below.
    const page = frame.at(at.x, at.y);
    texts.push(
      text(part, 'note', point(page.x + textWidth(words, 11) / 2 + 14, page.y + 30), words, {
        size: 11,
        anchor: 'middle',
      }),
    );
  }
  if (overlays.deflected) {
    const { lines, factor } = overlays.deflected;
    const longest = [...lines].sort((a, b) => b.length - a.length)[0] ?? [];
    const at = longest[Math.floor(longest.length * 0.3)];
    if (at) {
      const page = frame.at(at.x, at.y);
      const words = factor === 1 ? 'deflected, true size' : `deflected, ${factor} times`;
      texts.push(text('deflected', 'note', point(page.x + 12, page.y + 20), words, { size: 11 }));
    }
  }
  return texts;
}

interface Tip {
  readonly tip: Point;
  /** Outward direction on the page. */
  readonly n: Point;
}

/** Largest ordinate of the moment diagram, page units. */
const TALL = 46;
/** Share of the largest moment below which no number is put beside a diagram. */
const WORTH_A_NUMBER = 0.04;

const largestOf = (moments: SectionOverlays['moments']): number =>
  Math.max(...(moments ?? []).flatMap(({ points }) => points.map(({ moment }) => Math.abs(moment))), 0);

/** The largest moment to either side, with its number; small ones beside large ones are left without. */
function peakTexts(moment: MomentLine, largest: number, frame: Frame, system: System): readonly TextShape[] {
  const { points, part } = moment;
  const tips = momentTips(moment, largest, frame);
  return ([1, -1] as const).flatMap((sign) => {
    const peak = points.reduce(
      (best, p, i) => (p.moment * sign > (points[best]?.moment ?? 0) * sign ? i : best),
      0,
    );
    const value = points[peak]?.moment ?? 0;
    const place = tips[peak];
    if (value * sign <= WORTH_A_NUMBER * largest || !place) return [];
    const words = format(Math.abs(value), 'moment', system);
    const out = 6 + Math.abs(place.n.x) * textWidth(words, 11) * 0.5;
    const at = point(place.tip.x + place.n.x * out * sign, place.tip.y + place.n.y * sign * 10 + 4);
    return [text(part, 'note', at, words, { size: 11, anchor: 'middle', bold: true })];
  });
}

function momentTips({ points }: MomentLine, largest: number, frame: Frame): readonly Tip[] {
  if (largest === 0) return [];
  const page = frame.all(points);
  return page.map((p, i) => {
    const a = page[Math.max(0, i - 1)] as Point;
    const b = page[Math.min(page.length - 1, i + 1)] as Point;
    const size = Math.hypot(b.x - a.x, b.y - a.y) || 1;
    // Left of travel with y up is right-handed on the page, where y is down.
    const n = point((b.y - a.y) / size, -(b.x - a.x) / size);
    const by = ((points[i]?.moment ?? 0) / largest) * TALL;
    return { tip: point(p.x + n.x * by, p.y + n.y * by), n };
  });
}

/** Boxed percentages beside the parts, each with a word for its verdict, moved clear of other texts. */
export function tagShapes(
  values: readonly Utilisation[],
  anchors: readonly Anchor[],
  drawn: readonly Shape[],
): readonly Shape[] {
  const taken = [...textOutlines(drawn)];
  const shapes: Shape[] = [];
  const size = 11;
  for (const { part, value } of values) {
    const anchor = anchors.find((one) => one.part === part);
    if (!anchor) continue;
    const verdict = value > 1 ? ' fails' : value > NEAR_LIMIT ? ' near its limit' : '';
    const words = `${usedText(value)}${verdict}`;
    const width = textWidth(words, size, true) + 8;
    const outline = (at: Point): readonly Point[] => [
      point(at.x - width / 2, at.y - 9),
      point(at.x + width / 2, at.y - 9),
      point(at.x + width / 2, at.y + 9),
      point(at.x - width / 2, at.y + 9),
    ];
    let at = point(anchor.at.x, anchor.at.y - 18);
    // What other parts are pointed at by stays in sight.
    const pointed = anchors.filter((one) => one !== anchor).map((one) => square(one.at, 3));
    search: for (const reach of [26, 40, 56, 76, 100, 130])
      for (let i = 0; i < 12; i++) {
        const turn = -Math.PI / 2 + ((i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2) * Math.PI) / 6;
        at = point(anchor.at.x + reach * 1.3 * Math.cos(turn), anchor.at.y + reach * Math.sin(turn));
        const here = outline(at);
        if (
          !taken.some((other) => outlinesOverlap(here, other, -4)) &&
          !pointed.some((other) => outlinesOverlap(here, other))
        )
          break search;
      }
    const corners = outline(at);
    taken.push(corners);
    shapes.push(
      line(part, 'leader', anchor.at, at),
      { ...box(part, 'balloon', corners[0] as Point, corners[2] as Point) },
      text(part, 'note', point(at.x, at.y + 4), words, {
        size,
        anchor: 'middle',
        bold: value > NEAR_LIMIT,
      }),
    );
  }
  return shapes;
}
