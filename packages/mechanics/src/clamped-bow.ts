import { arcOf } from './arc.ts';
import type { Bow, BowGiven } from './bow.ts';
import { pinnedBow } from './elastica.ts';
import { positive, type Refusal, refuse } from './outcome.ts';
import { drawShot, fireShot, type Shot, solveShot } from './shot.ts';

/**
 * An elastic rod bowed between feet that fix its end tangents, as stubs do. `lean` is the tangent at the feet
 * against the horizontal, rad (0 to pi): one number for both, or the two separately (then span and length must
 * be the two given). Both feet at one level. Found by shooting, continued from the circular arc of the same two
 * lengths, which is the exact answer when the stubs lean as the arc does.
 * The answer is an equilibrium; whether it is the stable one, the plane frame's pivots tell.
 */
export function clampedBow(
  given: BowGiven,
  lean: number | { readonly start: number; readonly end: number },
): Bow | Refusal {
  const start = typeof lean === 'number' ? lean : lean.start;
  const end = typeof lean === 'number' ? lean : lean.end;
  if (!(start > -Math.PI && start < Math.PI && end > -Math.PI && end < Math.PI))
    return refuse('a foot leans between -180 and 180 degrees from the horizontal');
  const arc = arcOf(given);
  if (!arc.ok) return arc;
  const { span, rise, length } = arc;
  const natural = arc.halfAngle;
  const curvature = 1 / arc.radius;
  const points = given.points ?? 33;
  if (start !== end) {
    if (given.rise !== undefined) return refuse('with two different leans, give span and length');
    const shot = continueTo(
      { angle: natural, moment: curvature, push: 0, lift: 0, reach: length },
      ['moment', 'push', 'lift'],
      (t) => ({
        angle: natural + t * (start - natural),
        x: span,
        y: 0,
        end: -(natural + t * (end - natural)),
      }),
    );
    return shot ? drawShot(shot, points, false) : refuse('no bow was found between feet that lean so');
  }
  const free =
    given.length === undefined ? (['moment', 'push', 'reach'] as const) : (['moment', 'push'] as const);
  const shot = continueTo(
    { angle: natural, moment: curvature, push: 0, lift: 0, reach: length / 2 },
    free,
    (t) => ({
      angle: natural + t * (start - natural),
      ...(given.span === undefined ? {} : { x: span / 2 }),
      ...(given.rise === undefined ? {} : { y: rise }),
      end: 0,
    }),
  );
  return shot ? drawShot(shot, points, true) : refuse('no bow was found between feet that lean so');
}

/**
 * A bow of given span and length held at its crown at `crownHeight`, above or below where it would stand by
 * itself; feet pinned, or clamped at `lean`. `contactForceOverEI` is the support's push upwards (negative: it
 * pulls down). The bow stays symmetric: a crown held low may in truth sway aside, which the plane frame tells.
 */
export function heldBow(
  given: { readonly span: number; readonly length: number; readonly points?: number | undefined },
  crownHeight: number,
  lean?: number | undefined,
): Bow | Refusal {
  if (!positive(crownHeight)) return refuse('the crown must be held above its feet');
  const { span, length } = given;
  const natural = lean === undefined ? pinnedBow(given) : clampedBow(given, lean);
  if (!natural.ok) return natural;
  if (Math.hypot(span / 2, crownHeight) >= length / 2)
    return refuse('the bow is too short to reach that crown');
  const free =
    lean === undefined ? (['angle', 'push', 'lift'] as const) : (['moment', 'push', 'lift'] as const);
  const shot = continueTo(
    {
      angle: natural.endAngle,
      moment: natural.endMomentOverEI,
      push: natural.thrustOverEI,
      lift: 0,
      reach: length / 2,
    },
    free,
    (t) => ({ x: span / 2, y: natural.rise + t * (crownHeight - natural.rise), end: 0 }),
  );
  return shot
    ? drawShot(shot, given.points ?? 33, true)
    : refuse('no symmetric bow was found at that crown height');
}

type Aim = (t: number) => { x?: number; y?: number; end: number; angle?: number };

/** Follows the solution from the start (t = 0, exact) to the asked one (t = 1), halving steps that fail. */
function continueTo(start: Shot, free: readonly (keyof Shot)[], aim: Aim): Shot | undefined {
  let shot = start;
  let t = 0;
  let step = 0.25;
  while (t < 1) {
    const next = Math.min(1, t + step);
    const { angle, ...target } = aim(next);
    const solved = solveShot(angle === undefined ? shot : { ...shot, angle }, free, target);
    // a solution far from the last one lies on another branch
    if (solved && near(shot, solved)) {
      shot = solved;
      t = next;
      step = Math.min(0.25, step * 1.5);
    } else {
      step /= 2;
      if (step < 1 / 512) return undefined;
    }
  }
  return Number.isFinite(fireShot(shot).x) ? shot : undefined;
}

function near(from: Shot, to: Shot): boolean {
  const scale = to.reach;
  return (
    Math.abs(to.moment - from.moment) * scale < 2 &&
    Math.abs(to.push - from.push) * scale * scale < 8 &&
    Math.abs(to.angle - from.angle) < 0.5
  );
}
