/** Centre lines built of straight and round stretches, and what is read off any centre line. */
import type { CurvePoint } from '../model/shelter.ts';

/** A stretch of constant curvature; curvature is positive where the line arches (turns to the right). */
export interface Stretch {
  readonly length: number;
  readonly curvature: number;
  /** Angle by which the line breaks to the right before this stretch, rad. */
  readonly kink?: number;
}

/** Greatest turning between two points of a round stretch, rad. */
const STEP = Math.PI / 90;

/**
 * The line that starts at (x, y) under `angle` and runs through the stretches. Points lie at every end of
 * a stretch, and close enough between; at a kink two points share one place, one for each tangent.
 */
export function lineOf(x: number, y: number, angle: number, stretches: readonly Stretch[]): CurvePoint[] {
  const points: CurvePoint[] = [];
  let at: CurvePoint = { s: 0, x, y, angle, curvature: stretches[0]?.curvature ?? 0 };
  points.push(at);
  for (const [index, stretch] of stretches.entries()) {
    if (stretch.kink) {
      at = { ...at, angle: at.angle - stretch.kink, curvature: stretch.curvature };
      if (index > 0) points.push(at);
      else points[0] = at;
    }
    if (!(stretch.length > 0)) continue;
    // An even number of parts, so that a crown in the middle of a stretch is a point of the line.
    const parts = 2 * Math.max(4, Math.ceil((Math.abs(stretch.curvature) * stretch.length) / (2 * STEP)));
    const start = at;
    for (let n = 1; n <= parts; n++) {
      at = along(start, (stretch.length * n) / parts, stretch.curvature);
      points.push(at);
    }
  }
  return points;
}

/** The point a distance d further on a stretch of constant curvature. */
function along(from: CurvePoint, d: number, curvature: number): CurvePoint {
  const turn = curvature * d;
  const chord = Math.abs(turn) < 1e-9 ? d : (2 * Math.sin(turn / 2)) / curvature;
  const direction = from.angle - turn / 2;
  return {
    s: from.s + d,
    x: from.x + chord * Math.cos(direction),
    y: from.y + chord * Math.sin(direction),
    angle: from.angle - turn,
    curvature,
  };
}

/** Developed length of a line, m. */
export function lengthOf(line: readonly CurvePoint[]): number {
  return line.at(-1)?.s ?? 0;
}

/** The point of a line at arc length s (held to its ends), the tangent turning evenly between points. */
export function pointOn(line: readonly CurvePoint[], s: number): CurvePoint {
  const first = line[0]!;
  const last = line.at(-1)!;
  if (!(s > first.s)) return first;
  if (s >= last.s) return last;
  const next = line.findIndex((point) => point.s >= s);
  const a = line[next - 1]!;
  const b = line[next]!;
  const share = (s - a.s) / (b.s - a.s);
  const curvature = (a.angle - b.angle) / (b.s - a.s);
  const arc = along({ ...a, curvature }, s - a.s, curvature);
  // The even turning misses b by a hair on an elastica: close the gap in proportion.
  const end = along({ ...a, curvature }, b.s - a.s, curvature);
  return {
    s,
    x: arc.x + share * (b.x - end.x),
    y: arc.y + share * (b.y - end.y),
    angle: arc.angle,
    curvature: a.curvature + share * (b.curvature - a.curvature),
  };
}

/** The highest point. */
export function crownOf(line: readonly CurvePoint[]): CurvePoint {
  return line.reduce((best, point) => (point.y > best.y ? point : best), line[0]!);
}

/** Largest curvature in size, 1/m. */
export function sharpestOf(line: readonly CurvePoint[]): CurvePoint {
  return line.reduce(
    (best, point) => (Math.abs(point.curvature) > Math.abs(best.curvature) ? point : best),
    line[0]!,
  );
}

/**
 * Height of the line over the ground at a place across the house, m; undefined beside the line. Where a
 * bow bulges out over its feet the upper crossing counts, the one overhead.
 */
export function heightAt(line: readonly CurvePoint[], x: number): number | undefined {
  let height: number | undefined;
  for (let n = 1; n < line.length; n++) {
    const a = line[n - 1]!;
    const b = line[n]!;
    if ((x < a.x && x < b.x) || (x > a.x && x > b.x)) continue;
    const y = a.x === b.x ? Math.max(a.y, b.y) : a.y + ((x - a.x) / (b.x - a.x)) * (b.y - a.y);
    if (height === undefined || y > height) height = y;
  }
  return height;
}

/** Arc length of the uppermost place of a line over x, m; held to its nearer end beside the line. */
export function arcAt(line: readonly CurvePoint[], x: number): number {
  const height = heightAt(line, x);
  for (let n = 1; height !== undefined && n < line.length; n++) {
    const a = line[n - 1]!;
    const b = line[n]!;
    if (a.x === b.x || (x < a.x && x < b.x) || (x > a.x && x > b.x)) continue;
    const share = (x - a.x) / (b.x - a.x);
    if (Math.abs(a.y + share * (b.y - a.y) - height) < 1e-9) return a.s + share * (b.s - a.s);
  }
  const [first, last] = [line[0]!, line.at(-1)!];
  return Math.abs(x - first.x) <= Math.abs(x - last.x) ? first.s : last.s;
}

/** Places across the house where the line passes a height, its own corners counted, m. */
export function crossingsAt(line: readonly CurvePoint[], y: number): readonly number[] {
  return line.flatMap((a, n) => {
    if (Math.abs(a.y - y) < 1e-9) return [a.x];
    const b = line[n + 1];
    return b && (a.y - y) * (b.y - y) < 0 ? [a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)] : [];
  });
}

/** The line moved by (dx, dy). */
export function moved(line: readonly CurvePoint[], dx: number, dy: number): CurvePoint[] {
  return line.map((point) => ({ ...point, x: point.x + dx, y: point.y + dy }));
}
