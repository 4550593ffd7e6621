import { cornersOf, outlinesOverlap, plainShapes } from './bounds.ts';
import { textCorners } from './lettering.ts';
import { type Point, point, type Shape, type TextShape } from './shapes.ts';

/** Outlines of all texts among shapes, dimension texts included. */
export const textOutlines = (shapes: readonly Shape[]): readonly (readonly Point[])[] =>
  plainShapes(shapes).flatMap((shape) => (shape.kind === 'text' ? [cornersOf(shape)] : []));

/** Steps tried around the wished place, page units, nearest first. */
const STEPS = [0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6, -6];

/**
 * Each text at its place, or moved the least distance that clears the texts already there and the ones
 * before it. A text that finds no room within some 100 units stays where it was.
 */
export function placeTexts(texts: readonly TextShape[], drawn: readonly Shape[]): readonly TextShape[] {
  const taken = [...textOutlines(drawn)];
  const moves = STEPS.flatMap((i) => STEPS.map((j) => point(j * 16, i * 8)));
  moves.sort((a, b) => Math.hypot(a.x, a.y) - Math.hypot(b.x, b.y));
  return texts.map((wished) => {
    const free = moves
      .map((by): TextShape => ({ ...wished, at: point(wished.at.x + by.x, wished.at.y + by.y) }))
      .find((text) => !taken.some((other) => outlinesOverlap(textCorners(text), other, 0)));
    const placed = free ?? wished;
    taken.push(textCorners(placed));
    return placed;
  });
}
