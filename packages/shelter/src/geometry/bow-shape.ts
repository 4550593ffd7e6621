/** The centre line of a bow of any shape, from two of its span, rise and length. */
import { clampedBow, pinnedBow } from '@tautline/mechanics';
import type { BowShape, CurvePoint } from '../model/shelter.ts';
import { crownOf, lengthOf } from './line.ts';
import { circularLine, coldBentLine, pointedLine } from './round-bows.ts';

export interface BowAsked {
  readonly shape: BowShape;
  /** Between the feet, m. */
  readonly span: number;
  /** Crown over the springing, m. Give this or the length. */
  readonly rise?: number | undefined;
  /** Along the curve, m. */
  readonly length?: number | undefined;
  /** Straight leg at each side, m; only for cold-bent bows. Left out: what a half circle leaves over. */
  readonly leg?: number | undefined;
  /** Lean of stubs that keep the ends of an elastic bow from turning, rad from the level; else they turn freely. */
  readonly lean?: number | undefined;
}

export interface BowFormed {
  readonly ok: true;
  /** From the left foot at (0, 0). */
  readonly line: readonly CurvePoint[];
  readonly rise: number;
  readonly length: number;
  readonly leg: number;
}

export type BowResult = BowFormed | { readonly ok: false; readonly reason: string };

/** Points along an elastic bow; its curve is closed-form, the points are what drawings and frames use. */
const elasticPoints = 65;

/** The line of a bow, or in plain words why there is none. Lengths in m. Never throws. */
export function bowShape(asked: BowAsked): BowResult {
  const { span, rise, length } = asked;
  if (asked.shape === 'elastic') return elasticBow(asked);
  if (rise !== undefined) return roundBow(asked, rise);
  if (length === undefined) return no('say its rise or its length');
  if (length <= span) return no('it is not longer than its span, so it cannot arch');
  return byLength(asked, length);
}

function no(reason: string): BowResult {
  return { ok: false, reason };
}

function elasticBow({ span, rise, length, lean }: BowAsked): BowResult {
  const key = `${span} ${rise} ${length} ${lean}`;
  const known = formedBefore.get(key);
  if (known) return known;
  const given = { span, ...(rise === undefined ? { length } : { rise }), points: elasticPoints };
  const bow = lean === undefined ? pinnedBow(given) : clampedBow(given, lean);
  const result: BowResult = bow.ok
    ? { ok: true, line: bow.line, rise: crownOf(bow.line).y, length: bow.length, leg: 0 }
    : no(bow.reason);
  if (formedBefore.size >= mostRemembered) formedBefore.clear();
  formedBefore.set(key, result);
  return result;
}

/**
 * Elastic bows already formed. A clamped one takes tens of milliseconds, and every edit and every trial of a
 * fix resolves the shelter again, mostly with the same bow.
 */
const formedBefore = new Map<string, BowResult>();
const mostRemembered = 100;

function roundBow({ shape, span, leg }: BowAsked, rise: number): BowResult {
  if (shape === 'pointed') return formed(pointedLine(span, rise), 0);
  if (shape !== 'cold-bent') return formed(circularLine(span, rise), 0);
  const straight = leg ?? Math.max(0, rise - span / 2);
  if (straight === 0 && leg === undefined) return formed(circularLine(span, rise), 0);
  const bent = coldBentLine(span, rise, straight);
  if (bent) return formed(bent.line, straight);
  return straight >= rise
    ? no('its legs are as high as the crown: nothing is left to bend')
    : no('the part above its legs is higher than half its span: longer legs or a lower rise are needed');
}

function formed(line: readonly CurvePoint[], leg: number): BowResult {
  return { ok: true, line, rise: crownOf(line).y, length: lengthOf(line), leg };
}

/** Finds by bisection the rise that uses up the length; every round shape grows longer as it rises. */
function byLength(asked: BowAsked, length: number): BowResult {
  let low = asked.leg ?? 0;
  let high = asked.leg === undefined ? length : Math.min(length, asked.leg + asked.span / 2);
  let best: BowResult = no('no rise gives it that length');
  for (let n = 0; n < 60; n++) {
    const middle = (low + high) / 2;
    const tried = roundBow(asked, middle);
    if (!tried.ok) return tried;
    if (tried.length > length) high = middle;
    else low = middle;
    best = tried;
  }
  return best.ok && Math.abs(best.length - length) > 1e-6 * length
    ? no('no rise gives it that length with those legs')
    : best;
}
