/** Euler's load of a pin-ended strut, N: pi²·EI/(effective length)². EI in N·m2, length in m. */
export function eulerLoad(EI: number, effectiveLength: number): number {
  return (Math.PI ** 2 * EI) / effectiveLength ** 2;
}

/** Slenderness: effective length over radius of gyration. */
export const slenderness = (effectiveLength: number, gyration: number): number => effectiveLength / gyration;

/** Euler's stress at a slenderness, Pa: pi²·E/slenderness². */
export const eulerStress = (E: number, slender: number): number => (Math.PI ** 2 * E) / slender ** 2;

/**
 * By how much a thrust enlarges first-order moments and deflections of a member bowed in its buckling shape:
 * 1/(1 - P/Pcr). Infinity once the thrust reaches the critical load. Source: Timoshenko and Gere 1.11 (from memory).
 */
export function thrustAmplification(thrust: number, critical: number): number {
  return thrust < critical ? 1 / (1 - thrust / critical) : Number.POSITIVE_INFINITY;
}

/** Stiffness of an end against turning, as k·L/EI: 0 is a pin, Infinity a clamp. */
export interface EndRestraint {
  readonly bottom: number;
  readonly top: number;
  /** true when the top can move sideways */
  readonly sway: boolean;
}

/**
 * Effective length factor of a strut with rotational springs at its ends: pi over the smallest root x = L·sqrt(P/EI)
 * of its stability equation (stability functions; Timoshenko and Gere 2.3, from memory; derived in the tests by
 * plane frame). A swaying strut with two pins has no strength: Infinity.
 */
export function effectiveLengthFactor({ bottom, top, sway }: EndRestraint): number {
  const A = Math.min(bottom, 1e12);
  const B = Math.min(top, 1e12);
  const braced = (x: number): number => {
    // stability functions times D, which is positive on (0, 2 pi): s = near/D, far = carry/D
    const D = 2 - 2 * Math.cos(x) - x * Math.sin(x);
    const near = x * (Math.sin(x) - x * Math.cos(x));
    const carry = x * (x - Math.sin(x));
    // (A + near/D)(B + near/D) - (carry/D)², scaled to stay finite for a clamp
    return ((A * D + near) / (1 + A)) * ((B * D + near) / (1 + B)) - carry ** 2 / ((1 + A) * (1 + B));
  };
  const free = (x: number): number =>
    ((A * B - x * x) * Math.sin(x) + (A + B) * x * Math.cos(x)) / ((1 + A) * (1 + B));
  const f = sway ? free : braced;
  const last = sway ? Math.PI : 2 * Math.PI;
  let before = 1e-3;
  for (let n = 1; n <= 4000; n++) {
    const here = 1e-3 + ((last - 1e-3) * n) / 4000;
    if (f(before) > 0 && f(here) <= 0) return Math.PI / narrowed(f, before, here);
    before = here;
  }
  return sway && A + B < 1e-6 ? Number.POSITIVE_INFINITY : Math.PI / last;
}

function narrowed(f: (x: number) => number, positive: number, negative: number): number {
  let low = positive;
  let high = negative;
  for (let n = 0; n < 80; n++) {
    const middle = (low + high) / 2;
    if (f(middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * Largest compressive stress of a pin-ended strut under a thrust at a distance `eccentricity` (m) from its axis,
 * Pa; Infinity from Euler's load on. The secant formula: Timoshenko and Gere 1.13 (from memory).
 */
export function secantStress(
  thrust: number,
  eccentricity: number,
  length: number,
  E: number,
  section: { readonly area: number; readonly secondMoment: number; readonly sectionModulus: number },
): number {
  const EI = E * section.secondMoment;
  if (thrust >= eulerLoad(EI, length)) return Number.POSITIVE_INFINITY;
  const half = (length / 2) * Math.sqrt(Math.max(0, thrust) / EI);
  return thrust / section.area + (thrust * eccentricity) / (section.sectionModulus * Math.cos(half));
}
