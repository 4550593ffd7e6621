/** How much room words take. The program has no font engine, so widths come from a published metric. */
import { type Point, point, type TextShape } from './shapes.ts';

/**
 * Advance widths of Helvetica in 1/1000 em, for the characters from space to tilde
 * (Adobe Core 14 font metrics, `Helvetica.afm`; from memory). Arial and Liberation Sans share them.
 */
const advances: readonly number[] = [
  278, 278, 355, 556, 556, 889, 667, 222, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556,
  556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278,
  500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469,
  556, 222, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500,
  278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
];
/** Other faces run wider than Helvetica; boxes are kept this much larger. */
const ALLOWANCE = 1.1;

/** Width of a line of text, page units, on the generous side. */
export function textWidth(words: string, size: number, bold = false): number {
  let sum = 0;
  for (const letter of words) sum += advances[(letter.codePointAt(0) ?? 0) - 32] ?? 600;
  return (sum / 1000) * size * ALLOWANCE * (bold ? 1.07 : 1);
}

/** The four corners of the box a text fills, turned as the text is. */
export function textCorners(shape: TextShape): readonly Point[] {
  const width = textWidth(shape.text, shape.size, shape.bold);
  const left = shape.anchor === 'start' ? 0 : shape.anchor === 'middle' ? -width / 2 : -width;
  const top = -0.74 * shape.size;
  const bottom = 0.22 * shape.size;
  const turn = (shape.turn * Math.PI) / 180;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return [
    [left, top],
    [left + width, top],
    [left + width, bottom],
    [left, bottom],
  ].map(([x = 0, y = 0]) => point(shape.at.x + x * c - y * s, shape.at.y + x * s + y * c));
}

/** Breaks words into lines no wider than asked; a single word that is too long stays whole. */
export function wrapWords(words: string, size: number, width: number): readonly string[] {
  const lines: string[] = [];
  let current = '';
  for (const word of words.split(' ')) {
    const longer = current === '' ? word : `${current} ${word}`;
    if (current !== '' && textWidth(longer, size) > width) {
      lines.push(current);
      current = word;
    } else current = longer;
  }
  if (current !== '') lines.push(current);
  return lines;
}
