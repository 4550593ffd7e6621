/** Drawn lines as pieces, for whatever looks for a clear place beside them. */
import { cornersOf, type PlainShape, plainShapes } from './bounds.ts';
import { type Point, point, type Shape, type Style } from './shapes.ts';

export type Stroke = readonly [Point, Point];

/** Fine lines that letters and balloons may cover. */
const coverable: ReadonlySet<Style> = new Set<Style>([
  'earth-hatch',
  'film-hatch',
  'mesh-hatch',
  'crop-hatch',
  'thing-hatch',
  'water-hatch',
  'moment-hatch',
  'bar-hatch',
  'offcut-hatch',
  'centre-line',
]);

/** Every line of the shapes that a word should not lie over: no hatches, no letters. */
export const strokesOf = (shapes: readonly Shape[]): readonly Stroke[] =>
  plainShapes(shapes).flatMap(strokesOfPlain);

function strokesOfPlain(shape: PlainShape): readonly Stroke[] {
  if (coverable.has(shape.style) || shape.kind === 'text') return [];
  if (shape.kind === 'circle') {
    const corners = square(shape.centre, shape.radius);
    return corners.map((p, i) => [p, corners[(i + 1) % 4] as Point] as const);
  }
  if (shape.kind === 'path') return shape.strokes.flatMap((stroke) => pairs(stroke));
  const points = cornersOf(shape);
  return shape.kind === 'polygon' ? closed(points) : pairs(points);
}

export const pairs = (points: readonly Point[]): readonly Stroke[] =>
  points.slice(1).map((p, i) => [points[i] as Point, p] as const);

const closed = (points: readonly Point[]): readonly Stroke[] => pairs([...points, points[0] as Point]);

export const square = (at: Point, half: number): readonly Point[] => [
  point(at.x - half, at.y - half),
  point(at.x + half, at.y - half),
  point(at.x + half, at.y + half),
  point(at.x - half, at.y + half),
];

/** Whether a stroke runs through a convex outline: across an edge of it or wholly inside. */
export function runsThrough([a, b]: Stroke, outline: readonly Point[]): boolean {
  return (
    isInside(a, outline) || isInside(b, outline) || closed(outline).some(([c, d]) => crosses(a, b, c, d))
  );
}

const side = (p: Point, q: Point, r: Point): number => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);

/** Whether a point lies inside a convex outline. */
export function isInside(p: Point, outline: readonly Point[]): boolean {
  const sides = closed(outline).map(([a, b]) => side(a, b, p));
  return sides.every((s) => s >= -1e-9) || sides.every((s) => s <= 1e-9);
}

export const crosses = (a: Point, b: Point, c: Point, d: Point): boolean =>
  side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;

/** Distance of a point from a stroke, page units. */
export function distanceTo(p: Point, [a, b]: Stroke): number {
  const size = (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
  const t =
    size === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / size));
  return Math.hypot(p.x - a.x - t * (b.x - a.x), p.y - a.y - t * (b.y - a.y));
}

/** Strokes that come within a reach of a point: the others need not be looked at. */
export const strokesNear = (at: Point, reach: number, strokes: readonly Stroke[]): readonly Stroke[] =>
  strokes.filter(
    ([a, b]) =>
      Math.min(a.x, b.x) < at.x + reach &&
      Math.max(a.x, b.x) > at.x - reach &&
      Math.min(a.y, b.y) < at.y + reach &&
      Math.max(a.y, b.y) > at.y - reach,
  );
