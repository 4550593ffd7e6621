/** Dimension lines: how one is drawn, and how many are stacked so that no text runs into another. */
import { textWidth } from './lettering.ts';
import { type DimensionShape, line, type Point, point, polygon, type Shape, text } from './shapes.ts';

export const DIMENSION_SIZE = 11;
export const ARROW = 8;
const TIER = 21;
export const ROOM = 8;

/** The plain shapes a dimension is drawn with; both file writers use this. */
export function dimensionParts(shape: DimensionShape): readonly Exclude<Shape, DimensionShape>[] {
  const { from, to, part, witness } = shape;
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const along = length === 0 ? point(1, 0) : point((to.x - from.x) / length, (to.y - from.y) / length);
  const outside = length < 2 * ARROW + 4;
  const parts: Exclude<Shape, DimensionShape>[] = [];
  [from, to].forEach((end, i) => {
    const measured = witness[i as 0 | 1];
    const reach = Math.hypot(end.x - measured.x, end.y - measured.y);
    if (reach > 1) {
      const u = point((end.x - measured.x) / reach, (end.y - measured.y) / reach);
      const gap = Math.min(3, reach / 3);
      parts.push(
        line(
          part,
          'witness',
          point(measured.x + u.x * gap, measured.y + u.y * gap),
          point(end.x + u.x * 3, end.y + u.y * 3),
        ),
      );
    }
    const inward = (i === 0 ? 1 : -1) * (outside ? -1 : 1);
    parts.push(arrow(part, end, point(along.x * inward, along.y * inward)));
  });
  const tail = outside ? ARROW + 6 : 0;
  const width = textWidth(shape.text, DIMENSION_SIZE) + ROOM;
  const beside = tail + (shape.textGap ?? 0);
  const before = shape.textAt === 'before' ? beside + width : tail;
  const after = shape.textAt === 'after' ? beside + width : tail;
  const move = (p: Point, by: number): Point => point(p.x + along.x * by, p.y + along.y * by);
  parts.push(line(part, 'dimension', move(from, -before), move(to, after)));
  const middle =
    shape.textAt === 'middle'
      ? move(from, length * (shape.textShare ?? 0.5))
      : shape.textAt === 'after'
        ? move(to, beside + width / 2)
        : move(from, -beside - width / 2);
  parts.push(lettered(shape, middle, along));
  return parts;
}

function arrow(part: string, tip: Point, into: Point): Shape & { kind: 'polygon' } {
  const base = point(tip.x + into.x * ARROW, tip.y + into.y * ARROW);
  const side = point(-into.y * 2.2, into.x * 2.2);
  return polygon(part, 'arrow', [
    tip,
    point(base.x + side.x, base.y + side.y),
    point(base.x - side.x, base.y - side.y),
  ]);
}

/** Text reads from below or from the right, as on any building drawing. */
function lettered(shape: DimensionShape, at: Point, along: Point) {
  let turn = (Math.atan2(along.y, along.x) * 180) / Math.PI;
  if (turn >= 90 - 1e-6) turn -= 180;
  if (turn < -90 - 1e-6) turn += 180;
  const up = ((turn - 90) * Math.PI) / 180;
  const lift = shape.textBeyond ? -3 - 0.74 * DIMENSION_SIZE : 3;
  return text(
    shape.part,
    'dimension',
    point(at.x + Math.cos(up) * lift, at.y + Math.sin(up) * lift),
    shape.text,
    { size: DIMENSION_SIZE, anchor: 'middle', turn },
  );
}

/** One length to be dimensioned, with the two measured points on the page. */
export interface Measured {
  readonly part: string;
  readonly name: string;
  readonly value: number;
  readonly text: string;
  readonly from: Point;
  readonly to: Point;
}

/** Where the tiers grow: downward, upward, to the left or to the right of `start`. */
export type Side = 'below' | 'above' | 'left' | 'right';

/**
 * Stacks dimensions in tiers outward from `start` (a page coordinate across the side). Short ones lie
 * nearest; two share a tier only when neither lines nor texts overlap.
 */
export function stackDimensions(
  side: Side,
  start: number,
  items: readonly Measured[],
): readonly DimensionShape[] {
  const level = side === 'below' || side === 'above';
  const sign = side === 'below' || side === 'right' ? 1 : -1;
  const coordinate = (p: Point): number => (level ? p.x : p.y);
  const spans = items.map((item) => {
    const a = coordinate(item.from);
    const b = coordinate(item.to);
    return { item, low: Math.min(a, b), high: Math.max(a, b), swap: a > b };
  });
  spans.sort((a, b) => a.high - a.low - (b.high - b.low) || a.low - b.low);
  const ends = spans.flatMap((span) => [span.low, span.high]);
  const [least, most] = [Math.min(...ends), Math.max(...ends)];
  const tiers: (readonly [number, number])[][] = [];
  return spans.map(({ item, low, high, swap }) => {
    const need = textWidth(item.text, DIMENSION_SIZE) + ROOM;
    // A text between the arrows stands clear of both heads.
    const short = high - low < need + 2 * ARROW - 4;
    const tail = high - low < 2 * ARROW + 4 ? ARROW + 6 : 0;
    // A text beside its line should cross few witness lines, and not stick out sideways past the drawing.
    const crossed = (a: number, b: number): number =>
      ends.filter((e) => e > a + 1 && e < b - 1).length +
      (level && (a < least - 1 || b > most + 1) ? 2.5 : 0);
    const after = short && crossed(high, high + tail + need) <= crossed(low - tail - need, low);
    const taken: readonly [number, number] = [
      low - (short && !after ? need : 0) - tail,
      high + (after ? need : 0) + tail,
    ];
    let tier = 0;
    while (tiers[tier]?.some(([a, b]) => taken[0] < b - 0.01 && taken[1] > a + 0.01)) tier++;
    tiers[tier] = [...(tiers[tier] ?? []), taken];
    const across = start + sign * (tier * TIER + (level ? 16 : 14));
    const at = (p: Point): Point => (level ? point(p.x, across) : point(across, p.y));
    const [from, to] = swap ? [item.to, item.from] : [item.from, item.to];
    return {
      kind: 'dimension',
      part: item.part,
      style: 'dimension',
      from: at(from),
      to: at(to),
      witness: [from, to],
      name: item.name,
      value: item.value,
      text: item.text,
      textAt: short ? (after ? 'after' : 'before') : 'middle',
    };
  });
}
