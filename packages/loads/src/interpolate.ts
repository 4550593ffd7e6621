/** A curve given by points with rising first numbers. */
export type Curve = readonly (readonly [number, number])[];

/**
 * Value of a curve at `at`, straight between its points and held at the ends. The standards allow
 * straight interpolation in the tables used here; holding the ends is said where it matters.
 */
export function along(curve: Curve, at: number): number {
  const first = curve[0];
  const last = curve[curve.length - 1];
  if (first === undefined || last === undefined) throw new RangeError('a curve needs a point');
  if (at <= first[0]) return first[1];
  if (at >= last[0]) return last[1];
  for (let i = 1; i < curve.length; i++) {
    const [x1, y1] = curve[i]!;
    if (at === x1) return y1;
    if (at < x1) {
      const [x0, y0] = curve[i - 1]!;
      return y0 + ((y1 - y0) * (at - x0)) / (x1 - x0);
    }
  }
  return last[1];
}

/** Straight between two values: `share` 0 gives `a`, 1 gives `b`; outside 0..1 it is held. */
export function between(a: number, b: number, share: number): number {
  return a + (b - a) * Math.min(1, Math.max(0, share));
}
