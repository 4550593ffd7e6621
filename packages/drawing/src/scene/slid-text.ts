import { ARROW, DIMENSION_SIZE, dimensionParts, ROOM } from './dimension.ts';
import { clearest, textOutlines } from './free-text.ts';
import { textWidth } from './lettering.ts';
import type { DimensionShape, Shape } from './shapes.ts';
import { strokesOf } from './strokes.ts';

/** Places on a dimension line, the middle first. */
const SHARES = [0.5, 0.58, 0.42, 0.66, 0.34, 0.74, 0.26, 0.82, 0.18];

/** The dimension with its text slid along its line, or to its other side, to where it stands clear of texts and over the fewest lines. */
export function slidText(shape: DimensionShape, drawn: readonly Shape[]): DimensionShape {
  const length = Math.hypot(shape.to.x - shape.from.x, shape.to.y - shape.from.y);
  const half = (textWidth(shape.text, DIMENSION_SIZE) + ROOM) / 2;
  if (shape.textAt !== 'middle') return shape;
  const tries = SHARES.filter(
    (share) => share === 0.5 || Math.min(share, 1 - share) * length >= half + ARROW,
  ).map((textShare): DimensionShape => ({ ...shape, textShare }));
  const both = [...tries, ...tries.map((one): DimensionShape => ({ ...one, textBeyond: true }))];
  const texts = both.flatMap((one) =>
    dimensionParts(one).flatMap((part) => (part.kind === 'text' ? [part] : [])),
  );
  const best = clearest(texts, textOutlines(drawn), strokesOf(drawn));
  return both[best ? texts.indexOf(best) : 0] ?? shape;
}
