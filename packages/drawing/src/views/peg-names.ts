/** Names of pegs and lengths of diagonals, each where it covers the fewest lines. */

import type { System } from '@tautline/quantity';
import type { Frame } from '../scene/frame.ts';
import { clearest, textOutlines } from '../scene/free-text.ts';
import { textCorners } from '../scene/lettering.ts';
import { point, type Shape, type TextShape, text } from '../scene/shapes.ts';
import { strokesOf } from '../scene/strokes.ts';
import { exactLength } from './exact.ts';
import type { Peg } from './pegs.ts';

/** Names and running distances, upright beside the outer lines; where pegs stand close, not every one. */
export function outerNames(
  pegs: readonly Peg[],
  frame: Frame,
  system: System,
  drawn: readonly Shape[],
): readonly Shape[] {
  const shapes: Shape[] = [];
  const strokes = strokesOf(drawn);
  for (const side of ['L', 'R'] as const) {
    const row = pegs.filter(({ name }) => name.startsWith(side));
    const gap = Math.min(...row.slice(1).map((peg, i) => (peg.along - (row[i]?.along ?? 0)) * frame.scale));
    const every = Math.max(1, Math.ceil(13 / gap));
    row.forEach((peg, i) => {
      if (i % every !== 0 && i !== row.length - 1) return;
      if (i === row.length - 1 && i % every !== 0 && every > 1 && (i % every) * gap < 13) return;
      const at = frame.at(peg.along, peg.across);
      const words = side === 'L' ? `${peg.name}  ${exactLength(peg.along, system)}` : peg.name;
      const y = side === 'L' ? at.y + 11 : at.y - 11;
      // Beside the middle where the peg of a guy stands right outside.
      const tries = [0, 14, -14].map((aside) =>
        text(peg.part, 'dimension', point((side === 'L' ? at.x + 3.8 : at.x - 3) + aside, y), words, {
          size: 10.5,
          anchor: side === 'L' ? 'end' : 'start',
          turn: -90,
        }),
      );
      shapes.push(clearest(tries, textOutlines(shapes), strokes) ?? (tries[0] as TextShape));
    });
  }
  return shapes;
}

/** Names of the pegs within the outer lines and beyond them: in the corner of the mark that is clear of lines. */
export function innerNames(pegs: readonly Peg[], frame: Frame, drawn: readonly Shape[]): readonly Shape[] {
  const inner = pegs.filter(({ name }) => !/^[LR]/.test(name));
  const taken = [...textOutlines(drawn)];
  const strokes = strokesOf(drawn);
  return inner.flatMap((peg) => {
    const at = frame.at(peg.along, peg.across);
    const tries = [
      [7, -6, 'start'],
      [7, 14, 'start'],
      [-7, -6, 'end'],
      [-7, 14, 'end'],
      [0, -11, 'middle'],
      [0, 19, 'middle'],
    ] as const;
    const found = clearest(
      tries.map(([dx, dy, anchor]) =>
        text(peg.part, 'dimension', point(at.x + dx, at.y + dy), peg.name, { size: 10.5, anchor }),
      ),
      taken,
      strokes,
    );
    if (found) taken.push(textCorners(found));
    return found ? [found] : [];
  });
}

/** Text along each diagonal, the first place from a quarter on that is free; the notes say it in any case. */
export function diagonalTexts(
  part: string,
  drawn: readonly Shape[],
  frame: Frame,
  length: number,
  width: number,
  words: string,
): readonly Shape[] {
  const steep = (Math.atan2(width, length) * 180) / Math.PI;
  const shares = Array.from(
    { length: 41 },
    (_, i) => 0.25 + (i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2) * 0.01,
  );
  const strokes = strokesOf(drawn);
  const placed: TextShape[] = [];
  for (const up of [true, false]) {
    const turn = up ? -steep : steep;
    const tilt = (turn * Math.PI) / 180;
    const tries = shares.map((share) => {
      const on = frame.at(length * share, width * (up ? share : 1 - share));
      const at = point(on.x + 5 * Math.sin(tilt), on.y - 5 * Math.cos(tilt));
      return text(part, 'dimension', at, words, { size: 11, anchor: 'middle', turn });
    });
    const found = clearest(tries, textOutlines([...drawn, ...placed]), strokes);
    if (found) placed.push(found);
  }
  return placed;
}
