import type { BowGiven } from './bow.ts';
import { positive, type Refusal, refuse } from './outcome.ts';

/** A circular arc over level ends. Lengths in m, angles in rad. */
export interface Arc {
  readonly ok: true;
  readonly span: number;
  readonly rise: number;
  readonly length: number;
  readonly radius: number;
  /** half the opening angle: also the tangent at the ends against the horizontal */
  readonly halfAngle: number;
}

/** The circular arc of any two of span, rise and length: span = 2R sin a, rise = R(1 - cos a), length = 2Ra. */
export function arcOf(given: BowGiven): Arc | Refusal {
  const { span, rise, length } = given;
  const named = [span, rise, length].filter((value) => value !== undefined);
  if (named.length !== 2) return refuse('give exactly two of span, rise and length');
  if (!named.every(positive)) return refuse('span, rise and length must be above zero');
  let a: number;
  if (span !== undefined && rise !== undefined) a = 2 * Math.atan2(2 * rise, span);
  else if (span !== undefined) {
    if (span >= length!) return refuse('the span is not shorter than the length: there is nothing to bend');
    a = bisect((angle) => Math.sin(angle) / angle - span / length!, 1e-9, Math.PI);
  } else {
    // rise/length = (1 - cos a)/(2a) grows up to a = 133.56 degrees, then the arc closes on itself
    const most = 2.331122370414423;
    if (rise! / length! > (1 - Math.cos(most)) / (2 * most))
      return refuse('an arc of this length is not that high');
    a = bisect((angle) => rise! / length! - (1 - Math.cos(angle)) / (2 * angle), 1e-9, most);
  }
  const radius = span !== undefined ? span / (2 * Math.sin(a)) : length! / (2 * a);
  return {
    ok: true,
    span: span ?? 2 * radius * Math.sin(a),
    rise: rise ?? radius * (1 - Math.cos(a)),
    length: length ?? 2 * radius * a,
    radius,
    halfAngle: a,
  };
}

/** One stretch of a cold-bent line: straight, or bent at a radius (m) through an angle (rad, positive turns right). */
export type Stretch =
  | { readonly kind: 'straight'; readonly length: number }
  | { readonly kind: 'arc'; readonly radius: number; readonly angle: number };

export interface BentPoint {
  readonly s: number;
  readonly x: number;
  readonly y: number;
  /** tangent against the horizontal, rad */
  readonly angle: number;
  /** 1/m, positive where the line arches */
  readonly curvature: number;
}

export interface BentLine {
  /** developed length along the centre line, m */
  readonly length: number;
  /** positions along the line where a bend begins and ends: the bend marks, m */
  readonly marks: readonly {
    readonly from: number;
    readonly to: number;
    readonly radius: number;
    readonly angle: number;
  }[];
  readonly line: readonly BentPoint[];
}

/**
 * The line that straights and arcs make one after another, starting at (0, 0) with tangent `startAngle`.
 * Points stand `spacing` apart or closer, and at every end of a stretch. Developed length along the centre line.
 */
export function bentLine(stretches: readonly Stretch[], startAngle: number, spacing: number): BentLine {
  let s = 0;
  let x = 0;
  let y = 0;
  let angle = startAngle;
  const marks: BentLine['marks'][number][] = [];
  const line: BentPoint[] = [];
  for (const stretch of stretches) {
    const straight = stretch.kind === 'straight';
    const length = straight ? stretch.length : stretch.radius * Math.abs(stretch.angle);
    const curvature = straight || stretch.angle === 0 ? 0 : Math.sign(stretch.angle) / stretch.radius;
    if (!straight) marks.push({ from: s, to: s + length, radius: stretch.radius, angle: stretch.angle });
    if (!(length > 0)) continue;
    const pieces = Math.max(1, Math.ceil(length / spacing - 1e-9));
    if (line.length === 0) line.push({ s, x, y, angle, curvature });
    const from = { s, x, y, angle };
    for (let n = 1; n <= pieces; n++) {
      const along = (length * n) / pieces;
      angle = from.angle - curvature * along;
      // chord of the arc so far: exact also when the curvature is zero
      const half = (curvature * along) / 2;
      const chord = half === 0 ? along : (along * Math.sin(half)) / half;
      x = from.x + chord * Math.cos(from.angle - half);
      y = from.y + chord * Math.sin(from.angle - half);
      s = from.s + along;
      line.push({ s, x, y, angle, curvature });
    }
  }
  return { length: s, marks, line };
}

/** An arc with straight legs that run on in its end tangents (no kink). */
export interface LeggedArc {
  readonly ok: true;
  readonly span: number;
  readonly rise: number;
  readonly length: number;
  readonly leg: number;
  readonly radius: number;
  /** half the opening angle of the arc, which is also the lean of the legs from the horizontal */
  readonly halfAngle: number;
}

/**
 * Straight legs of length `leg` tangent to one arc, from the legs and two of span, rise (of the whole) and
 * length (developed, of the whole). span = 2(leg cos a + R sin a), rise = leg sin a + R(1 - cos a).
 */
export function leggedArc(given: BowGiven, leg: number): LeggedArc | Refusal {
  if (leg === 0) {
    const arc = arcOf(given);
    return arc.ok ? { ...arc, leg } : arc;
  }
  if (!positive(leg)) return refuse('the legs must not be shorter than nothing');
  const { span, rise, length } = given;
  const named = [span, rise, length].filter((value) => value !== undefined);
  if (named.length !== 2) return refuse('give exactly two of span, rise and length');
  if (!named.every(positive)) return refuse('span, rise and length must be above zero');
  if (length !== undefined && length <= 2 * leg) return refuse('the legs use up the whole length');
  // radius from the first given that fixes it at angle a, then the other given as the equation for a
  const radiusAt = (a: number) =>
    length !== undefined ? (length - 2 * leg) / (2 * a) : (span! / 2 - leg * Math.cos(a)) / Math.sin(a);
  const spanAt = (a: number) => 2 * (leg * Math.cos(a) + radiusAt(a) * Math.sin(a));
  const riseAt = (a: number) => leg * Math.sin(a) + radiusAt(a) * (1 - Math.cos(a));
  const off = (a: number) =>
    length !== undefined && span !== undefined ? span - spanAt(a) : riseAt(a) - rise!;
  const a = firstRoot(off, 1e-6, Math.PI - 1e-6);
  if (a === undefined) return refuse('no arc fits those legs');
  const radius = radiusAt(a);
  if (!positive(radius)) return refuse('no arc fits those legs');
  return {
    ok: true,
    span: spanAt(a),
    rise: riseAt(a),
    length: 2 * (leg + radius * a),
    leg,
    radius,
    halfAngle: a,
  };
}

/** Smallest root between low and high: looks for the first change of sign in 2,000 parts, then bisects. */
function firstRoot(f: (x: number) => number, low: number, high: number): number | undefined {
  let before = low;
  for (let n = 1; n <= 2000; n++) {
    const here = low + ((high - low) * n) / 2000;
    if (f(before) * f(here) <= 0) return bisect(f, before, here);
    before = here;
  }
  return undefined;
}

function bisect(f: (x: number) => number, low: number, high: number): number {
  let below = low;
  let above = high;
  const sign = Math.sign(f(above)) || -Math.sign(f(below));
  for (let n = 0; n < 100 && above - below > 1e-16 * above; n++) {
    const middle = (below + above) / 2;
    if (Math.sign(f(middle)) === sign) above = middle;
    else below = middle;
  }
  return (below + above) / 2;
}
