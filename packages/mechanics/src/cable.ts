import { type Refusal, refuse } from './outcome.ts';

/** A hanging cable of given shape. Lengths m, forces N. */
export interface HangingCable {
  readonly ok: true;
  readonly span: number;
  readonly sag: number;
  readonly length: number;
  /** horizontal pull, N */
  readonly pull: number;
  /** tension at the supports, N */
  readonly endTension: number;
}

/** Cable under a load uniform on plan, `line` N/m: a parabola. H = w·S²/8d; its length is the exact arc of it. */
export function parabolicCable(span: number, sag: number, line: number): HangingCable | Refusal {
  if (!(span > 0 && sag > 0 && Number.isFinite(span + sag + line)))
    return refuse('span and sag must be above zero');
  const pull = (line * span ** 2) / (8 * sag);
  const steep = (4 * sag) / span;
  const length = (span / 2) * (Math.sqrt(1 + steep ** 2) + Math.asinh(steep) / steep);
  return { ok: true, span, sag, length, pull, endTension: pull * Math.sqrt(1 + steep ** 2) };
}

/** First terms of the parabola's length: S(1 + 8/3 (d/S)² - 32/5 (d/S)⁴). */
export const parabolaLength = (span: number, sag: number): number =>
  span * (1 + (8 / 3) * (sag / span) ** 2 - (32 / 5) * (sag / span) ** 4);

/**
 * Inextensible cable of weight `weight` N/m of itself, hung over `span` with length `length` (m): a catenary
 * y = a·cosh(x/a), length = 2a·sinh(S/2a). Refuses a length that does not exceed the span.
 */
export function catenary(span: number, length: number, weight: number): HangingCable | Refusal {
  if (!(span > 0 && length > span && weight > 0))
    return refuse('a hanging cable is longer than its span and has weight');
  // sinh(z)/z = length/span, z = S/2a
  const goal = length / span;
  let low = 0;
  let high = 1;
  while (Math.sinh(high) / high < goal) high *= 2;
  for (let n = 0; n < 200 && high - low > 1e-16 * high; n++) {
    const middle = (low + high) / 2;
    if (middle > 0 && Math.sinh(middle) / middle > goal) high = middle;
    else low = middle;
  }
  const z = (low + high) / 2;
  const a = span / (2 * z);
  const sag = 2 * a * Math.sinh(z / 2) ** 2;
  return { ok: true, span, sag, length, pull: weight * a, endTension: weight * (a + sag) };
}

/** A cable tightened between two level anchors and loaded across. */
export interface TautCable {
  readonly span: number;
  /** axial stiffness, N */
  readonly EA: number;
  /** tension before the loads, N; zero when it just hangs straight */
  readonly pretension: number;
  /** length beyond the span before any load, m: takes up load only once pulled straight */
  readonly slack?: number | undefined;
  /** how hard both anchors together resist being drawn in, N/m; absent: they do not move */
  readonly anchorStiffness?: number | undefined;
}

export interface TransverseLoads {
  /** N/m, downwards */
  readonly line?: number | undefined;
  readonly points?: readonly { readonly at: number; readonly load: number }[] | undefined;
}

export interface TautAnswer {
  readonly ok: true;
  /** horizontal pull, N */
  readonly pull: number;
  /** largest tension along the cable, N */
  readonly tension: number;
  /** largest sag and the sag at midspan, m */
  readonly sag: number;
  readonly sagAt: number;
  readonly midSag: number;
  /** force for a further metre at midspan, N/m, at this load */
  readonly midStiffness: number;
  /** upward force of the left and right anchor, N */
  readonly reactions: readonly [number, number];
  /** sag/span above which the shallow-cable theory errs by more than about 2 % */
  readonly shallow: boolean;
}

/**
 * Elastic cable under transverse loads by the shallow-cable equation
 * H²(H - H0) = EA/(2S)·∫V²dx, V the shear of the simple beam with the same loads (Irvine, Cable Structures,
 * ch. 2, from memory; derived in the tests against the plane frame). Good to about 2 % for sag/span up to 1/10.
 */
export function tautCable(cable: TautCable, loads: TransverseLoads): TautAnswer | Refusal {
  const { span, EA, pretension } = cable;
  if (!(span > 0 && EA > 0 && Number.isFinite(span + EA)))
    return refuse('span and stiffness must be above zero');
  if (!(pretension >= 0 && Number.isFinite(pretension)))
    return refuse('the pretension must not be below zero');
  const slack = cable.slack ?? 0;
  if (!(slack >= 0 && (slack === 0 || pretension === 0))) return refuse('a slack cable has no pretension');
  for (const { at, load } of loads.points ?? [])
    if (!(at >= 0 && at <= span && Number.isFinite(load))) return refuse('a load stands off the cable');
  if (!Number.isFinite(loads.line ?? 0)) return refuse('the load is not finite');
  const solved = taut(cable, loads);
  const shear = shearPieces(span, loads);
  if (!(solved.pull > 0)) return refuse('the cable hangs slack and unloaded: it has no shape');
  const sags = sagShape(shear, solved.pull);
  const nudge = 1e-4 * (Math.abs(loads.line ?? 0) * span + sum(loads) + solved.pull * 1e-2) || 1e-6;
  const moreSag = (extra: number) => {
    const points = [...(loads.points ?? []), { at: span / 2, load: extra }];
    const more = { ...loads, points };
    return sagShape(shearPieces(span, more), taut(cable, more).pull).at(span / 2);
  };
  const top = Math.max(Math.abs(shear[0]!.from), Math.abs(shear.at(-1)!.to));
  return {
    ok: true,
    pull: solved.pull,
    tension: Math.hypot(solved.pull, top),
    sag: sags.most,
    sagAt: sags.mostAt,
    midSag: sags.at(span / 2),
    midStiffness: (2 * nudge) / (moreSag(nudge) - moreSag(-nudge)),
    reactions: [shear[0]!.from, -shear.at(-1)!.to],
    shallow: Math.abs(sags.most) <= span / 10,
  };
}

const sum = (loads: TransverseLoads) =>
  (loads.points ?? []).reduce((total, p) => total + Math.abs(p.load), 0);

/** Solves H²(H - H0) = K for the one root above max(0, H0). */
function taut(cable: TautCable, loads: TransverseLoads): { pull: number } {
  const { span, EA, pretension } = cable;
  const give = span / EA + (cable.anchorStiffness ? 1 / cable.anchorStiffness : 0);
  const first = pretension - (cable.slack ?? 0) / give;
  const square = shearPieces(span, loads).reduce(
    (total, { length, from, to }) => total + (length * (from * from + from * to + to * to)) / 3,
    0,
  );
  const K = square / (2 * give);
  let pull = Math.max(first, 0) + Math.cbrt(K) + 1e-300;
  for (let n = 0; n < 100; n++) {
    const off = pull * pull * (pull - first) - K;
    const step = off / (pull * (3 * pull - 2 * first));
    pull -= step;
    if (!(Math.abs(step) > 1e-15 * pull)) break;
  }
  return { pull: Number.isFinite(pull) ? pull : Math.max(first, 0) };
}

interface ShearPiece {
  readonly start: number;
  readonly length: number;
  readonly from: number;
  readonly to: number;
}

/** Shear of the simple beam, piece by piece between point loads. */
function shearPieces(span: number, loads: TransverseLoads): ShearPiece[] {
  const w = loads.line ?? 0;
  const points = [...(loads.points ?? [])].sort((a, b) => a.at - b.at);
  let shear = (w * span) / 2 + points.reduce((total, p) => total + (p.load * (span - p.at)) / span, 0);
  let x = 0;
  const pieces: ShearPiece[] = [];
  for (const p of [...points, { at: span, load: 0 }]) {
    const length = p.at - x;
    const to = shear - w * length;
    pieces.push({ start: x, length, from: shear, to });
    shear = to - p.load;
    x = p.at;
  }
  return pieces;
}

/** Sag = beam moment over H. */
function sagShape(pieces: readonly ShearPiece[], pull: number) {
  const at = (x: number): number => {
    let moment = 0;
    for (const { start, length, from, to } of pieces) {
      const along = Math.min(length, x - start);
      if (along <= 0) break;
      moment += from * along + (length > 0 ? ((to - from) / length) * along ** 2 * 0.5 : 0);
    }
    return moment / pull;
  };
  let most = 0;
  let mostAt = 0;
  for (const { start, length, from, to } of pieces) {
    const zero = from * to < 0 ? start + (length * from) / (from - to) : start + length;
    if (Math.abs(at(zero)) > Math.abs(most)) {
      most = at(zero);
      mostAt = zero;
    }
  }
  return { at, most, mostAt };
}
