import type { Bow, BowGiven, BowPoint } from './bow.ts';
import { type EllipticScale, ellipticScale, jacobi } from './elliptic.ts';
import { positive, type Refusal, refuse } from './outcome.ts';

/** span/length = 2E/K - 1 */
const spanRatio = (scale: EllipticScale) => 1 + 2 * scale.shortfall;

/** Modulus at which span/length falls to zero: the feet meet. Root of 2E = K. */
const FEET_MEET = root(spanRatio, 0.85, 0.95);
/** Modulus of the tallest bow of a given length; beyond it a narrower bow is lower again. */
const TALLEST = tallestModulus();

/**
 * A straight, elastic, inextensible rod of constant EI bowed between pins: the inflectional elastica.
 * Give any two of span, rise and length (m). With k = sin(endAngle/2): span/length = 2E/K - 1,
 * rise/length = k/K, largest curvature x length = 4kK, thrust x length²/EI = 4K².
 * Source: Timoshenko and Gere, Theory of Elastic Stability, 2.7 (from memory); derived again in the tests.
 * Of the two bows with one length and one rise the wider is returned. Refuses what no such bow can be.
 */
export function pinnedBow(given: BowGiven): Bow | Refusal {
  const { span, rise, length } = given;
  const named = [span, rise, length].filter((value) => value !== undefined);
  if (named.length !== 2) return refuse('give exactly two of span, rise and length');
  if (!named.every(positive)) return refuse('span, rise and length must be above zero');
  let k: number;
  if (span !== undefined && length !== undefined) {
    if (span >= length) return refuse('the span is not shorter than the length: there is nothing to bow');
    k = root((scale) => spanRatio(scale) - span / length, 0, FEET_MEET);
  } else if (rise !== undefined && length !== undefined) {
    if (rise / length > riseRatio(TALLEST))
      return refuse(`a bow of this length is at most ${riseRatio(TALLEST).toFixed(4)} of its length high`);
    k = root((scale, modulus) => rise / length - modulus / scale.quarter, 0, TALLEST);
  } else {
    const steepness = rise! / span!;
    k = root((scale, modulus) => steepness * spanRatio(scale) - modulus / scale.quarter, 0, FEET_MEET);
  }
  const scale = ellipticScale(k);
  const solvedLength = length ?? span! / spanRatio(scale);
  return bowOfModulus(k, scale, solvedLength, given.points ?? 33);
}

function bowOfModulus(k: number, scale: EllipticScale, length: number, points: number): Bow | Refusal {
  if (!(Number.isInteger(points) && points >= 2)) return refuse('a line has at least two points');
  const wave = (2 * scale.quarter) / length;
  const rise = (length * k) / scale.quarter;
  const span = length * spanRatio(scale);
  const line: BowPoint[] = [];
  for (let n = 0; n < points; n++) {
    const s = (length * n) / (points - 1);
    const fromCrown = s - length / 2;
    const { sn, cn, secondKind } = jacobi(scale, wave * fromCrown);
    line.push({
      s,
      x: span / 2 + (2 / wave) * secondKind - fromCrown,
      y: n === 0 || n === points - 1 ? 0 : rise - ((2 * k) / wave) * (1 - cn),
      angle: -2 * Math.asin(k * sn),
      curvature: n === 0 || n === points - 1 ? 0 : 2 * k * wave * cn,
    });
  }
  return {
    ok: true,
    span,
    rise,
    length,
    endAngle: 2 * Math.asin(k),
    maxCurvature: 2 * k * wave,
    maxCurvatureAt: length / 2,
    thrustOverEI: wave * wave,
    liftOverEI: 0,
    endMomentOverEI: 0,
    contactForceOverEI: 0,
    line,
  };
}

function riseRatio(k: number): number {
  return k / ellipticScale(k).quarter;
}

/** Root of a function of the modulus that changes sign once between `low` and `high`, by bisection. */
function root(f: (scale: EllipticScale, k: number) => number, low: number, high: number): number {
  let below = low;
  let above = high;
  const sign = Math.sign(f(ellipticScale(above), above));
  for (let n = 0; n < 100 && above - below > 1e-16 * above; n++) {
    const middle = (below + above) / 2;
    if (Math.sign(f(ellipticScale(middle), middle)) === sign) above = middle;
    else below = middle;
  }
  return (below + above) / 2;
}

function tallestModulus(): number {
  let low = 0.7;
  let high = 0.95;
  for (let n = 0; n < 100; n++) {
    const third = (high - low) / 3;
    if (riseRatio(low + third) < riseRatio(high - third)) low += third;
    else high -= third;
  }
  return (low + high) / 2;
}
