/** Extents of shapes, moving them, and free room beside them. */
import { dimensionParts } from './dimension.ts';
import { textCorners } from './lettering.ts';
import { type DimensionShape, type Point, point, type Shape } from './shapes.ts';

export type PlainShape = Exclude<Shape, DimensionShape>;

/** Dimensions taken apart into the lines and texts they are drawn with. */
export const plainShapes = (shapes: readonly Shape[]): readonly PlainShape[] =>
  shapes.flatMap((shape) => (shape.kind === 'dimension' ? dimensionParts(shape) : [shape]));

/** Points that bound a shape. */
export function cornersOf(shape: PlainShape): readonly Point[] {
  switch (shape.kind) {
    case 'line':
      return [shape.from, shape.to];
    case 'polyline':
    case 'polygon':
      return shape.points;
    case 'path':
      return shape.strokes.flat();
    case 'circle':
      return [
        point(shape.centre.x - shape.radius, shape.centre.y - shape.radius),
        point(shape.centre.x + shape.radius, shape.centre.y + shape.radius),
      ];
    case 'text':
      return textCorners(shape);
  }
}

export interface Bounds {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The box around all shapes, annotation included; a point at 0,0 when there are none. */
export function boundsOf(shapes: readonly Shape[]): Bounds {
  const points = plainShapes(shapes).flatMap(cornersOf);
  if (points.length === 0) return { left: 0, top: 0, right: 0, bottom: 0 };
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y } of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  return { left, top, right, bottom };
}

/** The shape moved on the page. */
export function moved(shape: Shape, dx: number, dy: number): Shape {
  const to = (p: Point): Point => point(p.x + dx, p.y + dy);
  switch (shape.kind) {
    case 'line':
      return { ...shape, from: to(shape.from), to: to(shape.to) };
    case 'polyline':
    case 'polygon':
      return { ...shape, points: shape.points.map(to) };
    case 'path':
      return {
        ...shape,
        strokes: shape.strokes.map((stroke) => stroke.map(to)),
      };
    case 'circle':
      return { ...shape, centre: to(shape.centre) };
    case 'text':
      return { ...shape, at: to(shape.at) };
    case 'dimension':
      return {
        ...shape,
        from: to(shape.from),
        to: to(shape.to),
        witness: [to(shape.witness[0]), to(shape.witness[1])],
      };
  }
}

/** Whether two convex outlines overlap by more than a hair (separating axes). */
export function outlinesOverlap(a: readonly Point[], b: readonly Point[], slack = 0.5): boolean {
  for (const outline of [a, b]) {
    for (let i = 0; i < outline.length; i++) {
      const p = outline[i] as Point;
      const q = outline[(i + 1) % outline.length] as Point;
      const size = Math.hypot(q.x - p.x, q.y - p.y);
      if (size === 0) continue;
      const axis = point(-(q.y - p.y) / size, (q.x - p.x) / size);
      const [aLow, aHigh] = reach(a, axis);
      const [bLow, bHigh] = reach(b, axis);
      if (aHigh <= bLow + slack || bHigh <= aLow + slack) return false;
    }
  }
  return true;
}

function reach(points: readonly Point[], axis: Point): readonly [number, number] {
  const along = points.map((p) => p.x * axis.x + p.y * axis.y);
  return [Math.min(...along), Math.max(...along)];
}
