import { cornersOf, outlinesOverlap, plainShapes } from './bounds.ts';
import { textCorners } from './lettering.ts';
import { type Point, point, type Shape, type TextShape } from './shapes.ts';
import { runsThrough, type Stroke, strokesNear, strokesOf } from './strokes.ts';

/** Outlines of all texts among shapes, dimension texts included. */
export const textOutlines = (shapes: readonly Shape[]): readonly (readonly Point[])[] =>
  plainShapes(shapes).flatMap((shape) => (shape.kind === 'text' ? [cornersOf(shape)] : []));

/** Steps tried around the wished place. */
const STEPS = [0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6, -6];
/** Page units that a text rather moves than lie over one line. */
const OVER_A_LINE = 30;

/**
 * Each text at its place, or moved so that it stands clear of the texts already there and the ones before
 * it, and over as few lines as may be without going far. One that finds no room within some 100 units stays.
 */
export function placeTexts(texts: readonly TextShape[], drawn: readonly Shape[]): readonly TextShape[] {
  const taken = [...textOutlines(drawn)];
  const strokes = strokesOf(drawn);
  const moves = STEPS.flatMap((i) => STEPS.map((j) => point(j * 16, i * 8)));
  return texts.map((wished) => {
    const tries = moves.map(
      (by): TextShape => ({ ...wished, at: point(wished.at.x + by.x, wished.at.y + by.y) }),
    );
    const placed = clearest(tries, taken, strokes) ?? wished;
    taken.push(textCorners(placed));
    return placed;
  });
}

/**
 * The text of a few that lies over the fewest lines and nearest to the first; undefined when all of them
 * lie over other texts.
 */
export function clearest(
  tries: readonly TextShape[],
  taken: readonly (readonly Point[])[],
  strokes: readonly Stroke[],
): TextShape | undefined {
  const wished = tries[0];
  if (!wished) return undefined;
  const near = strokesNear(wished.at, 260, strokes);
  let best: TextShape | undefined;
  let least = Infinity;
  for (const text of tries) {
    let cost = Math.hypot(text.at.x - wished.at.x, text.at.y - wished.at.y);
    if (cost >= least) continue;
    const corners = textCorners(text);
    if (taken.some((other) => outlinesOverlap(corners, other, 0))) continue;
    for (const stroke of near) {
      if (runsThrough(stroke, corners)) cost += OVER_A_LINE;
      if (cost >= least) break;
    }
    if (cost < least) {
      least = cost;
      best = text;
    }
  }
  return best;
}
