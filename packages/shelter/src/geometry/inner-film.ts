/** The lower of two films that a fan blows apart. */
import type { CurvePoint, Inflated } from '../model/shelter.ts';
import { circularLine } from './round-bows.ts';

/** Line of the inner film from left to right: an arc that hangs below the rails, m. */
export function innerFilm(roof: Inflated): readonly CurvePoint[] {
  const left = roof.line[0]!.x;
  return circularLine(roof.span, roof.hang).map(({ s, x, y, angle, curvature }) => ({
    s,
    x: x + left,
    y: roof.springing - y,
    angle: -angle,
    curvature: -curvature,
  }));
}
