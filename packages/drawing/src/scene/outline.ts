/** Plane geometry of strokes: bands of true thickness, points along a curve, hatching. */
import { type Point, point } from './shapes.ts';

const distance = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);

/** Points nearer than this to their neighbour have no direction of their own, m. */
const SAME = 1e-5;

/** Unit normals to the left of travel at each point, mitred so that an offset keeps its distance. */
function normals(points: readonly Point[]): readonly { readonly n: Point; readonly stretch: number }[] {
  return points.map((here, i) => {
    const before = points.findLast((p, k) => k < i && distance(p, here) > SAME);
    const after = points.find((p, k) => k > i && distance(p, here) > SAME);
    const a = before ? leftOf(before, here) : undefined;
    const b = after ? leftOf(here, after) : undefined;
    if (!a || !b) return { n: a ?? b ?? point(0, 1), stretch: 1 };
    const sum = point(a.x + b.x, a.y + b.y);
    const size = Math.hypot(sum.x, sum.y);
    if (size < 1e-9) return { n: a, stretch: 1 };
    const n = point(sum.x / size, sum.y / size);
    return { n, stretch: Math.min(3, 1 / Math.max(1e-6, n.x * a.x + n.y * a.y)) };
  });
}

function leftOf(a: Point, b: Point): Point {
  const length = distance(a, b) || 1;
  return point(-(b.y - a.y) / length, (b.x - a.x) / length);
}

/** The curve moved sideways by `by` (left of travel is positive where y is up), corners mitred. */
export function offsetLine(points: readonly Point[], by: number): readonly Point[] {
  return normals(points).map(({ n, stretch }, i) => {
    const at = points[i] ?? point(0, 0);
    return point(at.x + n.x * by * stretch, at.y + n.y * by * stretch);
  });
}

/** Outline of a bar of this depth about its centre line. */
export function band(points: readonly Point[], depth: number): readonly Point[] {
  return [...offsetLine(points, depth / 2), ...[...offsetLine(points, -depth / 2)].reverse()];
}

/** Point and unit direction at a length along a polyline; clamps to its ends. */
export function pointAlong(
  points: readonly Point[],
  at: number,
): { readonly at: Point; readonly along: Point } {
  let left = at;
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1] as Point;
    const b = points[i] as Point;
    const step = distance(a, b);
    if (step === 0) continue;
    const along = point((b.x - a.x) / step, (b.y - a.y) / step);
    if (left <= step || i === points.length - 1) {
      const part = Math.min(Math.max(left, 0), step);
      return { at: point(a.x + along.x * part, a.y + along.y * part), along };
    }
    left -= step;
  }
  return { at: points[0] ?? point(0, 0), along: point(1, 0) };
}

/** Parallel strokes across a polygon, clipped to it (even-odd), at an angle in degrees on the page. */
export function hatch(
  outline: readonly Point[],
  degrees: number,
  spacing: number,
): readonly (readonly Point[])[] {
  const angle = (degrees * Math.PI) / 180;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const turned = outline.map((p) => point(p.x * c + p.y * s, -p.x * s + p.y * c));
  const heights = turned.map((p) => p.y);
  const low = Math.min(...heights);
  const high = Math.max(...heights);
  const strokes: Point[][] = [];
  for (let y = Math.ceil(low / spacing + 1e-6) * spacing; y < high - 1e-6; y += spacing) {
    const crossings: number[] = [];
    turned.forEach((a, i) => {
      const b = turned[(i + 1) % turned.length] as Point;
      if (a.y > y !== b.y > y) crossings.push(a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x));
    });
    crossings.sort((a, b) => a - b);
    for (let i = 0; i + 1 < crossings.length; i += 2) {
      const [from = 0, to = 0] = [crossings[i], crossings[i + 1]];
      strokes.push([point(from * c - y * s, from * s + y * c), point(to * c - y * s, to * s + y * c)]);
    }
  }
  return strokes;
}

/** Height of a curve at a position across, or undefined outside it; the highest where it doubles back. */
export function heightAt(points: readonly Point[], x: number): number | undefined {
  let best: number | undefined;
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1] as Point;
    const b = points[i] as Point;
    if (Math.min(a.x, b.x) > x || Math.max(a.x, b.x) < x) continue;
    const y = a.x === b.x ? Math.max(a.y, b.y) : a.y + ((x - a.x) / (b.x - a.x)) * (b.y - a.y);
    best = best === undefined ? y : Math.max(best, y);
  }
  return best;
}
