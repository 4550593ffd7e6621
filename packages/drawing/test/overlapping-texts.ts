import { outlinesOverlap, plainShapes } from '../src/scene/bounds.ts';
import { textCorners } from '../src/scene/lettering.ts';
import type { Drawing } from '../src/scene/shapes.ts';

/** Pairs of texts in a drawing whose boxes run into one another. */
export function overlappingTexts(drawing: Drawing): readonly string[] {
  const texts = plainShapes(drawing.shapes).flatMap((shape) => (shape.kind === 'text' ? [shape] : []));
  const boxes = texts.map(textCorners);
  return texts.flatMap((a, i) =>
    texts
      .slice(i + 1)
      .filter((_, k) => outlinesOverlap(boxes[i]!, boxes[i + 1 + k]!))
      .map((b) => `'${a.text}' and '${b.text}'`),
  );
}
