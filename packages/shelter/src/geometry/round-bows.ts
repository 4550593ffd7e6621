/** Bows made to a shape: circular, pointed, and cold-bent with straight legs. Plain circle geometry. */
import type { CurvePoint } from '../model/shelter.ts';
import { lineOf, type Stretch } from './line.ts';

/** Part of a circle through both feet, `rise` high; more than a half circle bulges out over its feet. m. */
export function circularLine(span: number, rise: number): CurvePoint[] {
  const radius = (span * span) / (8 * rise) + rise / 2;
  const half = 2 * Math.atan2(2 * rise, span);
  return lineOf(0, 0, half, [{ length: 2 * half * radius, curvature: 1 / radius }]);
}

/**
 * Two equal arcs that meet in a point at the ridge. They rise upright from the feet where that still leaves
 * a ridge at least half as steep as the straight line from foot to ridge; else the arcs are flatter. m.
 */
export function pointedLine(span: number, rise: number): CurvePoint[] {
  const chord = Math.hypot(span / 2, rise);
  const slope = Math.atan2(rise, span / 2);
  const swing = Math.min(Math.PI / 2 - slope, slope / 2);
  const radius = chord / (2 * Math.sin(swing));
  const arc: Stretch = { length: 2 * swing * radius, curvature: 1 / radius };
  return lineOf(0, 0, slope + swing, [arc, { ...arc, kink: 2 * (slope - swing) }]);
}

export interface ColdBent {
  readonly line: readonly CurvePoint[];
  /** Radius of the bend above each leg, and of the crown, m. */
  readonly cornerRadius: number;
  readonly crownRadius: number;
}

/**
 * Upright legs, a bend above each, and a flatter crown between, all tangent: the three-centred arch whose
 * two radii differ least. With a half circle above the legs both are half the span. `rise` counts from the
 * foot of the legs. Undefined when the bent part is higher than half the span, or not there at all. m.
 */
export function coldBentLine(span: number, rise: number, leg: number): ColdBent | undefined {
  const half = span / 2;
  const bent = rise - leg;
  if (!(bent > 0) || bent > half * (1 + 1e-6)) return undefined;
  const corner = bent >= half * (1 - 1e-6) ? half : gentlestCorner(half, bent);
  const crown = corner === half ? half : crownRadius(half, bent, corner);
  const flat = corner === half ? 0 : Math.asin((half - corner) / (crown - corner));
  const straight: Stretch = { length: leg, curvature: 0 };
  const bend: Stretch = { length: corner * (Math.PI / 2 - flat), curvature: 1 / corner };
  const top: Stretch = { length: 2 * flat * crown, curvature: 1 / crown };
  return {
    line: lineOf(0, 0, Math.PI / 2, [straight, bend, top, bend, straight]),
    cornerRadius: corner,
    crownRadius: crown,
  };
}

/** Centres of crown and corner lie apart by the difference of their radii. */
function crownRadius(half: number, bent: number, corner: number): number {
  return ((half - corner) ** 2 + bent ** 2 - corner ** 2) / (2 * (bent - corner));
}

/** Corner radius for which crown radius over corner radius is least, by ternary search. */
function gentlestCorner(half: number, bent: number): number {
  let low = bent * 1e-3;
  let high = bent * (1 - 1e-6);
  for (let n = 0; n < 200; n++) {
    const third = (high - low) / 3;
    const left = low + third;
    const right = high - third;
    if (crownRadius(half, bent, left) / left < crownRadius(half, bent, right) / right) high = right;
    else low = left;
  }
  return (low + high) / 2;
}
