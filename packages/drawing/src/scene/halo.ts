/** Outlines laid over a part to draw the eye to it. */
import { type Drawing, line, type Point, point, polyline, type Shape, type Style } from './shapes.ts';

/** The shape's own lines once more, in another style; nothing for texts, dimensions and hatches. */
export function halo(shape: Shape, style: Style): readonly Shape[] {
  switch (shape.kind) {
    case 'polygon':
      return [polyline(shape.part, style, [...shape.points, shape.points[0] as Point])];
    case 'polyline':
      return shape.style === 'centre-line' ? [] : [polyline(shape.part, style, shape.points)];
    case 'line':
      return [line(shape.part, style, shape.from, shape.to)];
    case 'circle': {
      const { centre, radius } = shape;
      const ring = Array.from({ length: 17 }, (_, i) => {
        const turn = (i * Math.PI) / 8;
        return point(centre.x + (radius + 2) * Math.cos(turn), centre.y + (radius + 2) * Math.sin(turn));
      });
      return [polyline(shape.part, style, ring)];
    }
    default:
      return [];
  }
}

/** The drawing with one part outlined, e.g. the part a finding is about. Unchanged when it is not shown. */
export function highlightPart(drawing: Drawing, part: string): Drawing {
  const marks = drawing.shapes.flatMap((shape) =>
    shape.part === part && shape.style !== 'leader' && shape.style !== 'balloon'
      ? halo(shape, 'highlight')
      : [],
  );
  return { ...drawing, shapes: [...drawing.shapes, ...marks] };
}
