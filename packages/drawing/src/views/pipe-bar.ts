/** The straight pipe with its marks. */

import type { System } from '@tautline/quantity';
import { type Bows, jointReach } from '@tautline/shelter';
import { BALLOON_RADIUS } from '../scene/balloons.ts';
import { placeTexts } from '../scene/free-text.ts';
import { hatch } from '../scene/outline.ts';
import { box, circle, path, point, type Shape, type TextShape, text } from '../scene/shapes.ts';
import type { BendRun } from './bend-runs.ts';
import { exactLength } from './exact.ts';

/** A, B, ... Z, AA, AB ... */
export function letter(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : `${letter(Math.floor(index / 26) - 1)}${last}`;
}

export function pipeBar(
  roof: Bows,
  runs: readonly BendRun[],
  total: number,
  system: System,
  room: number,
): readonly Shape[] {
  const scale = room / total;
  const half = 9;
  const shapes: Shape[] = [box(roof.id, 'bar', point(0, -half), point(room, half))];
  for (const run of runs)
    if (run.radius !== undefined) {
      const outline = [
        point(run.from * scale, -half),
        point(run.to * scale, -half),
        point(run.to * scale, half),
        point(run.from * scale, half),
      ];
      shapes.push(path(roof.id, 'bar-hatch', hatch(outline, 60, 5)));
    }
  const letters: TextShape[] = [];
  roof.joints.forEach((joint, i) => {
    const at = (joint.at + roof.legDriven) * scale;
    const wide = Math.max(4, jointReach(joint.item, roof.member) * scale);
    shapes.push(box(joint.id, 'joint', point(at - wide, -half - 3), point(at + wide, half + 3)));
    letters.push(
      text(joint.id, 'dimension', point(at, half + 17), `J${i + 1}`, { size: 10.5, anchor: 'middle' }),
    );
  });
  const marks = [...runs.map(({ from }) => from), total];
  const drawn = spread(
    marks.map((at) => at * scale),
    2 * BALLOON_RADIUS + 3,
  );
  marks.forEach((at, i) => {
    const x = at * scale;
    const shown = drawn[i] ?? x;
    shapes.push(
      path(roof.id, 'leader', [
        [point(x, -half - 4), point(x, half + 4)],
        [point(x, -half - 4), point(shown, -half - 16)],
        [point(x, half + 4), point(shown, half + 14)],
      ]),
      circle(roof.id, 'balloon', point(shown, -half - 16 - BALLOON_RADIUS), BALLOON_RADIUS),
      text(roof.id, 'note', point(shown, -half - 12 - BALLOON_RADIUS), letter(i), {
        size: 10,
        anchor: 'middle',
        bold: true,
      }),
      text(roof.id, 'dimension', point(shown + 3.8, half + 18), exactLength(at, system), {
        size: 10.5,
        anchor: 'end',
        turn: -90,
      }),
    );
  });
  return [...shapes, ...placeTexts(letters, shapes)];
}

/** Positions moved apart until neighbours have the gap, keeping their order and about their places. */
export function spread(places: readonly number[], gap: number): readonly number[] {
  const groups: { sum: number; count: number; low: number }[] = [];
  places.forEach((at, i) => {
    groups.push({ sum: at - i * gap, count: 1, low: at - i * gap });
    for (let k = groups.length - 1; k > 0; k--) {
      const [before, after] = [
        groups[k - 1] as (typeof groups)[number],
        groups[k] as (typeof groups)[number],
      ];
      if (before.low <= after.low) break;
      before.sum += after.sum;
      before.count += after.count;
      before.low = before.sum / before.count;
      groups.pop();
    }
  });
  return groups.flatMap(({ count, low }) => Array<number>(count).fill(low)).map((low, i) => low + i * gap);
}
