import type { CurvePoint } from '@tautline/shelter';

/** Arc length of the place on a line nearest to a point, m. */
export function arcNear(line: readonly CurvePoint[], x: number, y: number): number {
  let best = { s: 0, off: Number.POSITIVE_INFINITY };
  for (let k = 1; k < line.length; k++) {
    const [a, b] = [line[k - 1]!, line[k]!];
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const size = dx * dx + dy * dy;
    if (size === 0) continue;
    const t = Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / size));
    const off = Math.hypot(a.x + t * dx - x, a.y + t * dy - y);
    if (off < best.off) best = { s: a.s + t * (b.s - a.s), off };
  }
  return best.s;
}
