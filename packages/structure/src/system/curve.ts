import type { CurvePoint } from '@tautline/shelter';

/**
 * Point of a centre line at arc length `s`, by cubic Hermite interpolation through the line's points
 * (their angles are the tangents), so that inserted nodes stay on the curve.
 */
export function pointAt(line: readonly CurvePoint[], s: number): CurvePoint {
  const last = line.length - 1;
  if (s <= line[0]!.s) return line[0]!;
  if (s >= line[last]!.s) return line[last]!;
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (line[middle]!.s <= s) low = middle;
    else high = middle;
  }
  const a = line[low]!;
  const b = line[high]!;
  const h = b.s - a.s;
  const t = (s - a.s) / h;
  const h00 = (1 + 2 * t) * (1 - t) ** 2;
  const h10 = t * (1 - t) ** 2;
  const h01 = t * t * (3 - 2 * t);
  const h11 = t * t * (t - 1);
  return {
    s,
    x: h00 * a.x + h10 * h * Math.cos(a.angle) + h01 * b.x + h11 * h * Math.cos(b.angle),
    y: h00 * a.y + h10 * h * Math.sin(a.angle) + h01 * b.y + h11 * h * Math.sin(b.angle),
    angle: a.angle + t * (b.angle - a.angle),
    curvature: a.curvature + t * (b.curvature - a.curvature),
  };
}

/** Arc length of the highest point of a line. */
export function crownAt(line: readonly CurvePoint[]): number {
  let best = line[0]!;
  for (const point of line) if (point.y > best.y) best = point;
  return best.s;
}

/**
 * Evenly divided arc lengths with the given places moved in: each place becomes a node, and the
 * nearest even division gives way to it when the two are closer than half a division.
 */
export function divide(length: number, parts: number, places: readonly number[]): number[] {
  const step = length / parts;
  const divisions: number[] = [];
  for (let i = 0; i <= parts; i++) divisions.push((length * i) / parts);
  const inside = [...new Set(places)].filter((place) => place > step / 4 && place < length - step / 4);
  const kept = divisions.filter(
    (s, index) => index === 0 || index === parts || inside.every((place) => Math.abs(place - s) >= step / 2),
  );
  return [...kept, ...inside].sort((a, b) => a - b);
}
