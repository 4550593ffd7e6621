import { plainShapes } from '../src/scene/bounds.ts';
import { textCorners } from '../src/scene/lettering.ts';
import type { Drawing, Shape, Style, TextShape } from '../src/scene/shapes.ts';
import { runsThrough, strokesOf } from '../src/scene/strokes.ts';

/** Lines that a word must never lie over: what is built, and what covers it. */
const built: ReadonlySet<Style> = new Set<Style>([
  'member',
  'rail',
  'post',
  'cable',
  'film',
  'sheet',
  'ground',
  'joint',
  'peg',
  'concrete',
  'balloon',
  'arrow',
]);

/** Texts of a drawing that lie over a line of something built; numbers in balloons are left out. */
export function textsOverLines(drawing: Drawing): readonly string[] {
  const plain = plainShapes(drawing.shapes);
  const texts = plain.filter(
    (shape): shape is TextShape => shape.kind === 'text' && shape.style !== 'heading',
  );
  const lines = plain.filter(({ style }) => built.has(style));
  const balloons = plain.filter(({ style }) => style === 'balloon');
  return texts.flatMap((text) => {
    if (balloons.some((balloon) => holds(balloon, text))) return [];
    const corners = textCorners(text);
    const struck = lines.find((line) => strokesOf([line]).some((stroke) => runsThrough(stroke, corners)));
    return struck ? [`'${text.text}' over a ${struck.style} of ${struck.part}`] : [];
  });
}

/** A balloon or tag that the text stands in. */
function holds(shape: Shape, text: TextShape): boolean {
  if (shape.kind === 'circle')
    return Math.hypot(shape.centre.x - text.at.x, shape.centre.y - text.at.y) < shape.radius;
  return shape.kind === 'polygon' && shape.part === text.part;
}
