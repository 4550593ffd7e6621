/**
 * Elliptic integrals and Jacobi functions of modulus k by the arithmetic-geometric mean.
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 17.6 and 16.4.
 */
export interface EllipticScale {
  /** complete integral of the first kind, K(k) */
  readonly quarter: number;
  /** complete integral of the second kind, E(k) */
  readonly second: number;
  /** E(k)/K(k) - 1, free of cancellation for small k */
  readonly shortfall: number;
  readonly means: readonly number[];
  readonly halves: readonly number[];
}

/** The AGM ladder of modulus k, 0 <= k < 1. */
export function ellipticScale(k: number): EllipticScale {
  const means = [1];
  const halves = [k];
  let mean = 1;
  let geometric = Math.sqrt((1 - k) * (1 + k));
  let half = k;
  let sum = 0.5 * k * k;
  for (let n = 1; n < 12 && Math.abs(half) > 1e-17 * mean; n++) {
    const next = (mean + geometric) / 2;
    // c[n+1] = (a[n]-b[n])/2 written as c[n]^2/(4 a[n+1]): no cancellation
    half = (half * half) / (4 * next);
    geometric = Math.sqrt(mean * geometric);
    mean = next;
    means.push(mean);
    halves.push(half);
    sum += 2 ** (n - 1) * half * half;
  }
  const quarter = Math.PI / (2 * mean);
  return {
    quarter,
    second: quarter * (1 - sum),
    shortfall: -sum,
    means,
    halves,
  };
}

/** sn, cn and the incomplete second-kind integral E(am u) at argument u. */
export function jacobi(scale: EllipticScale, u: number): { sn: number; cn: number; secondKind: number } {
  const last = scale.means.length - 1;
  let phase = 2 ** last * scale.means[last]! * u;
  let secondKind = u * (1 + scale.shortfall);
  for (let n = last; n > 0; n--) {
    const sine = Math.sin(phase);
    secondKind += scale.halves[n]! * sine;
    phase = (phase + Math.asin((scale.halves[n]! / scale.means[n]!) * sine)) / 2;
  }
  return { sn: Math.sin(phase), cn: Math.cos(phase), secondKind };
}
