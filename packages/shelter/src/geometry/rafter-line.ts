/** Centre lines of rafters, between the eave supports. */
import type { CurvePoint } from '../model/shelter.ts';
import { lineOf, type Stretch } from './line.ts';

/** A stretch over a chord, cambered to a flat arc whose middle stands `camber` over the chord. m. */
function cambered(chord: number, camber: number): { readonly stretch: Stretch; readonly swing: number } {
  if (!(camber > 0)) return { stretch: { length: chord, curvature: 0 }, swing: 0 };
  const swing = 2 * Math.atan2(2 * camber, chord);
  const radius = chord / (2 * Math.sin(swing));
  return { stretch: { length: 2 * swing * radius, curvature: 1 / radius }, swing };
}

/** A pair of rafters over a gable, from eave to ridge to eave. `rise` is of the ridge over the eaves. m. */
export function gableLine(span: number, rise: number, camber: number): CurvePoint[] {
  const slope = Math.atan2(rise, span / 2);
  const { stretch, swing } = cambered(Math.hypot(span / 2, rise), camber);
  return lineOf(0, 0, slope + swing, [stretch, { ...stretch, kink: 2 * (slope - swing) }]);
}

/** One rafter from the low side on the left to the high side on the right. m. */
export function singleSlopeLine(span: number, rise: number, camber: number): CurvePoint[] {
  const slope = Math.atan2(rise, span);
  const { stretch, swing } = cambered(Math.hypot(span, rise), camber);
  return lineOf(0, 0, slope + swing, [stretch]);
}
