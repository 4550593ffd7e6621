/** The shape of a bow, to lay out on a floor. */
import type { System } from '@tautline/quantity';
import type { Bows } from '@tautline/shelter';
import { depthOf } from '../describe.ts';
import { boundsOf } from '../scene/bounds.ts';
import { type Measured, stackDimensions } from '../scene/dimension.ts';
import { frameFor } from '../scene/frame.ts';
import { band, heightAt } from '../scene/outline.ts';
import { line, type Point, point, polygon, type Shape, text } from '../scene/shapes.ts';
import { exactLength } from './exact.ts';

/** Where a bow is lower than this, page units, its height is longer in letters and stands over it. */
const LOW = 66;

/** The bow above ground with heights over a base line at even steps from the left end. */
export function floorShape(roof: Bows, top: number, system: System, room: number): readonly Shape[] {
  const xs = roof.line.map((p) => p.x);
  const ys = roof.line.map((p) => p.y);
  const [left, right, low] = [Math.min(...xs), Math.max(...xs), Math.min(...ys)];
  const high = Math.max(...ys);
  const frame = frameFor(right - left, high - low, room, 300);
  // Heights that stand over a low bow stand under the heading.
  const heading = (high - low) * frame.scale < LOW + 20 ? 76 : 20;
  const move = (p: Point): Point => point(p.x + 80, p.y + top + (high - low) * frame.scale + heading);
  const at = (x: number, y: number): Point => move(frame.at(x - left, y - low));
  const shapes: Shape[] = [
    text(roof.id, 'note', point(0, top), 'Floor shape: heights of the centre line over the base line', {
      size: 12,
      bold: true,
    }),
    polygon(
      roof.id,
      'member',
      band(
        roof.line.map((p) => at(p.x, p.y)),
        Math.max(2.4, depthOf(roof.member) * frame.scale),
      ),
    ),
    line('base-line', 'dimension', at(left, low), at(right, low)),
  ];
  const unit = system === 'us' ? 0.3048 : 1;
  const steps = system === 'us' ? [0.5, 1, 2, 4, 5, 10] : [0.1, 0.2, 0.25, 0.5, 1, 2, 5];
  const step = (steps.find((s) => s * unit * frame.scale >= 26) ?? 10) * unit;
  const crown = roof.line[ys.indexOf(high)]?.x ?? (left + right) / 2;
  const places: number[] = [];
  for (let x = left + step; x < right - step * 0.3; x += step)
    if (Math.abs(x - crown) > step * 0.4) places.push(x);
  places.push(crown);
  for (const x of places.sort((a, b) => a - b)) {
    const y = heightAt(roof.line, x);
    if (y === undefined) continue;
    const foot = at(x, low);
    shapes.push(
      line(roof.id, 'witness', foot, at(x, y)),
      text(
        roof.id,
        'dimension',
        (y - low) * frame.scale < LOW
          ? point(foot.x + 3.6, at(x, y).y - 10 - depthOf(roof.member) * frame.scale * 2)
          : point(foot.x - 3, foot.y - 8),
        exactLength(y - low, system),
        { size: 10, turn: -90 },
      ),
      text(roof.id, 'dimension', point(foot.x + 3.6, foot.y + 6), exactLength(x - left, system), {
        size: 10,
        anchor: 'end',
        turn: -90,
      }),
    );
  }
  const whole = (name: string, value: number, from: Point, to: Point): Measured => ({
    part: roof.id,
    name,
    value,
    text: `${name} ${exactLength(value, system)}`,
    from,
    to,
  });
  const { bottom, right: edge } = boundsOf(shapes.filter(({ kind }) => kind !== 'text'));
  shapes.push(
    ...stackDimensions('below', Math.max(bottom, at(left, low).y + 62), [
      whole('base', right - left, at(left, low), at(right, low)),
    ]),
    ...stackDimensions('right', edge, [whole('height', high - low, at(right, low), at(crown, high))]),
  );
  return shapes;
}
