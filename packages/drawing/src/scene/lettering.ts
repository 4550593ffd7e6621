/** How much room words take. The program has no font engine, so widths come from a published metric. */
import { type Point, point, type TextShape } from './shapes.ts';

/**
 * Advance widths in 1/1000 em, for the characters from space to tilde: of each the wider of Helvetica (Adobe Core 14
 * font metrics, from memory; Arial and Liberation Sans share them) and of DejaVu Sans (its own horizontal metrics),
 * which a reader without those gets.
 */
const plain: readonly number[] = [
  318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337, 636, 636, 636, 636, 636,
  636, 636, 636, 636, 636, 337, 337, 838, 838, 838, 556, 1015, 684, 686, 722, 770, 667, 611, 778, 752, 295,
  500, 667, 557, 863, 748, 787, 667, 787, 722, 667, 611, 732, 684, 989, 685, 667, 685, 390, 337, 390, 838,
  556, 500, 613, 635, 550, 635, 615, 352, 635, 634, 278, 278, 579, 278, 974, 634, 612, 635, 635, 411, 521,
  392, 634, 592, 818, 592, 592, 525, 636, 337, 636, 838,
];
/** The same of the bold faces. */
const bolder: readonly number[] = [
  348, 456, 521, 838, 696, 1002, 872, 306, 457, 457, 523, 838, 380, 415, 380, 365, 696, 696, 696, 696, 696,
  696, 696, 696, 696, 696, 400, 400, 838, 838, 838, 595, 1086, 774, 762, 773, 830, 714, 683, 832, 837, 372,
  535, 775, 637, 995, 837, 850, 733, 850, 773, 720, 682, 812, 774, 1103, 771, 724, 725, 457, 365, 457, 838,
  595, 500, 675, 716, 593, 716, 678, 435, 716, 712, 343, 343, 665, 343, 1042, 712, 687, 716, 716, 493, 595,
  478, 712, 652, 924, 645, 652, 582, 712, 365, 712, 838,
];
/** A letter outside the tables: the degree sign, superscripts and the like are narrower. */
const OTHER = 700;

/** Width of a line of text, page units, on the generous side. */
export function textWidth(words: string, size: number, bold = false): number {
  const advances = bold ? bolder : plain;
  let sum = 0;
  for (const letter of words) sum += advances[(letter.codePointAt(0) ?? 0) - 32] ?? OTHER;
  return (sum / 1000) * size;
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
