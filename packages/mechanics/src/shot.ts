import type { Bow, BowPoint } from './bow.ts';

/**
 * One end of an elastic rod and what acts on it there, over EI. From it the rod's line follows:
 * curvature(x, y) = moment + push·y - lift·x, d(angle)/ds = -curvature.
 */
export interface Shot {
  /** tangent at the foot, rad */
  readonly angle: number;
  /** moment over EI at the foot, 1/m, positive bending as a crown does */
  readonly moment: number;
  /** horizontal push of the foot to the right over EI, 1/m2 */
  readonly push: number;
  /** vertical push of the foot upwards over EI, 1/m2 */
  readonly lift: number;
  /** developed length described, m */
  readonly reach: number;
}

export interface ShotEnd {
  readonly x: number;
  readonly y: number;
  readonly angle: number;
}

const STEPS = 256;

/** Where the rod ends: classical fourth-order Runge-Kutta; its error here is below 1e-9 of the length. */
export function fireShot(
  shot: Shot,
  onPoint?: (s: number, x: number, y: number, angle: number) => void,
  steps = STEPS,
): ShotEnd {
  const { moment, push, lift } = shot;
  const h = shot.reach / steps;
  let x = 0;
  let y = 0;
  let angle = shot.angle;
  onPoint?.(0, x, y, angle);
  for (let n = 1; n <= steps; n++) {
    const c1 = Math.cos(angle);
    const s1 = Math.sin(angle);
    const k1 = -(moment + push * y - lift * x);
    const a2 = angle + (h / 2) * k1;
    const c2 = Math.cos(a2);
    const s2 = Math.sin(a2);
    const k2 = -(moment + push * (y + (h / 2) * s1) - lift * (x + (h / 2) * c1));
    const a3 = angle + (h / 2) * k2;
    const c3 = Math.cos(a3);
    const s3 = Math.sin(a3);
    const k3 = -(moment + push * (y + (h / 2) * s2) - lift * (x + (h / 2) * c2));
    const a4 = angle + h * k3;
    const k4 = -(moment + push * (y + h * s3) - lift * (x + h * c3));
    x += (h / 6) * (c1 + 2 * c2 + 2 * c3 + Math.cos(a4));
    y += (h / 6) * (s1 + 2 * s2 + 2 * s3 + Math.sin(a4));
    angle += (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
    onPoint?.(n * h, x, y, angle);
  }
  return { x, y, angle };
}

/**
 * Newton's method on the named unknowns until the far end meets the target (x, y, tangent `end`, those given).
 * Unknowns and conditions must be equal in number. Undefined when it does not settle.
 */
export function solveShot(
  guess: Shot,
  free: readonly (keyof Shot)[],
  target: { readonly x?: number; readonly y?: number; readonly end: number },
): Shot | undefined {
  const size = guess.reach;
  const miss = (shot: Shot): number[] => {
    const end = fireShot(shot);
    return [
      ...(target.x === undefined ? [] : [(end.x - target.x) / size]),
      ...(target.y === undefined ? [] : [(end.y - target.y) / size]),
      end.angle - target.end,
    ];
  };
  const unit = (key: keyof Shot) =>
    key === 'angle' ? 1 : key === 'reach' ? size : key === 'moment' ? 1 / size : 1 / (size * size);
  let shot = guess;
  for (let n = 0; n < 20; n++) {
    const off = miss(shot);
    const most = Math.max(...off.map(Math.abs));
    if (!Number.isFinite(most)) return undefined;
    if (most < 1e-12) return shot;
    const columns = free.map((key) => {
      const nudge = 1e-5 * unit(key);
      const ahead = miss({ ...shot, [key]: shot[key] + nudge });
      const behind = miss({ ...shot, [key]: shot[key] - nudge });
      return ahead.map((value, row) => (value - behind[row]!) / 2e-5);
    });
    const move = small(columns, off);
    if (!move) return undefined;
    const next: Record<keyof Shot, number> = { ...shot };
    for (const [k, key] of free.entries()) next[key] -= move[k]! * unit(key);
    shot = next;
    if (n > 3 && most < 1e-10 && Math.max(...move.map(Math.abs)) < 1e-10) return shot;
  }
  return undefined;
}

/** Solves the small dense system given by columns, with row pivoting. */
function small(columns: readonly number[][], right: readonly number[]): number[] | undefined {
  const n = right.length;
  const rows = right.map((value, r) => [...columns.map((column) => column[r]!), value]);
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let r = k + 1; r < n; r++) if (Math.abs(rows[r]![k]!) > Math.abs(rows[best]![k]!)) best = r;
    const lead = rows[best]!;
    rows[best] = rows[k]!;
    rows[k] = lead;
    if (!(Math.abs(lead[k]!) > 1e-14)) return undefined;
    for (let r = 0; r < n; r++) {
      if (r === k) continue;
      const times = rows[r]![k]! / lead[k]!;
      for (let c = k; c <= n; c++) rows[r]![c]! -= times * lead[c]!;
    }
  }
  return rows.map((row, k) => row[n]! / row[k]!);
}

/** The whole bow from its shot: the shot itself, or the half up to the crown mirrored. */
export function drawShot(shot: Shot, points: number, half: boolean): Bow {
  const length = half ? 2 * shot.reach : shot.reach;
  const curvatureAt = (x: number, y: number) => shot.moment + shot.push * y - shot.lift * x;
  const dense: BowPoint[] = [];
  // enough steps that every asked point falls on one
  const steps = (points - 1) * Math.max(2, Math.ceil(STEPS / (points - 1)));
  const end = fireShot(
    shot,
    (s, x, y, angle) => dense.push({ s, x, y, angle, curvature: curvatureAt(x, y) }),
    steps,
  );
  const whole = half
    ? [
        ...dense,
        ...dense
          .slice(0, -1)
          .reverse()
          .map((p) => ({ ...p, s: length - p.s, x: 2 * end.x - p.x, angle: -p.angle })),
      ]
    : dense;
  let sharpest = whole[0]!;
  let top = 0;
  for (const point of whole) {
    if (Math.abs(point.curvature) > Math.abs(sharpest.curvature) * (1 + 1e-12)) sharpest = point;
    top = Math.max(top, point.y);
  }
  const every = (whole.length - 1) / (points - 1);
  return {
    ok: true,
    span: half ? 2 * end.x : end.x,
    rise: half ? end.y : top,
    length,
    endAngle: shot.angle,
    maxCurvature: Math.abs(sharpest.curvature),
    maxCurvatureAt: sharpest.s,
    thrustOverEI: shot.push,
    liftOverEI: shot.lift,
    endMomentOverEI: shot.moment,
    contactForceOverEI: half && shot.lift !== 0 ? -2 * shot.lift : 0,
    line: Array.from({ length: points }, (_, n) => whole[Math.round(n * every)]!),
  };
}
