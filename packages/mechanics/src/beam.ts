import { type Refusal, refuse } from './outcome.ts';

/** Loads on one span: downwards positive. */
export interface BeamLoad {
  /** N/m over the whole span */
  readonly line?: number | undefined;
  /** N at a distance (m) from the span's left end */
  readonly points?: readonly { readonly at: number; readonly load: number }[] | undefined;
}

export type BeamEnd = 'pinned' | 'fixed';

export interface BeamAnswer {
  readonly ok: true;
  /** largest sagging moment and largest hogging moment (as a positive number), N·m, with where (m from the left end) */
  readonly sagging: number;
  readonly saggingAt: number;
  readonly hogging: number;
  readonly hoggingAt: number;
  /** larger of the two */
  readonly maxMoment: number;
  /** N */
  readonly maxShear: number;
  /** largest deflection in size, m, downwards positive, with where */
  readonly deflection: number;
  readonly deflectionAt: number;
  /** upward force of each support, N */
  readonly reactions: readonly number[];
  /** moment over each support, N·m, sagging positive (at a fixed end: its fixing moment) */
  readonly supportMoments: readonly number[];
}

/**
 * Beam of constant EI (N·m2) over level supports by the theorem of three moments; one span with chosen ends is
 * the simple, fixed or propped beam. `loads[k]` acts on `spans[k]` (m). Shear deformation is left out.
 * Source: Clapeyron's theorem as in Timoshenko, Strength of Materials 1 (from memory); checked against
 * published beam tables in test/reference.
 */
export function continuousBeam(
  spans: readonly number[],
  loads: readonly BeamLoad[],
  EI: number,
  ends: readonly [BeamEnd, BeamEnd] = ['pinned', 'pinned'],
): BeamAnswer | Refusal {
  const wrong = beamFault(spans, loads, EI);
  if (wrong) return refuse(wrong);
  const moments = supportMoments(spans, loads, ends);
  const answer = emptyAnswer(spans.length + 1, moments);
  let start = 0;
  for (const [k, span] of spans.entries()) {
    const line = spanLine(span, loads[k]!, moments[k]!, moments[k + 1]!);
    answer.reactions[k]! += line.shearLeft;
    answer.reactions[k + 1]! -= line.shearRight;
    gather(answer, line, span, start, EI);
    start += span;
  }
  return finish(answer);
}

/** Equal spans, all under one line load (N/m): purlins and rails as they usually run. */
export function equalSpans(count: number, span: number, line: number, EI: number): BeamAnswer | Refusal {
  if (!(Number.isInteger(count) && count >= 1)) return refuse('a beam has at least one span');
  const spans = Array.from({ length: count }, () => span);
  return continuousBeam(
    spans,
    spans.map(() => ({ line })),
    EI,
  );
}

/** Cantilever fixed at its left end, length in m. Closed forms wL²/2, wL⁴/8EI, Pa²(3L - a)/6EI (from memory). */
export function cantilever(length: number, load: BeamLoad, EI: number): BeamAnswer | Refusal {
  const wrong = beamFault([length], [load], EI);
  if (wrong) return refuse(wrong);
  const w = load.line ?? 0;
  let moment = (w * length ** 2) / 2;
  let shear = w * length;
  let tip = (w * length ** 4) / 8;
  for (const { at, load: P } of load.points ?? []) {
    moment += P * at;
    shear += P;
    tip += (P * at ** 2 * (3 * length - at)) / 6;
  }
  const up = Math.max(0, moment);
  return {
    ok: true,
    sagging: Math.max(0, -moment),
    saggingAt: 0,
    hogging: up,
    hoggingAt: 0,
    maxMoment: Math.abs(moment),
    maxShear: Math.abs(shear),
    deflection: tip / EI,
    deflectionAt: length,
    reactions: [shear],
    supportMoments: [-moment],
  };
}

function beamFault(spans: readonly number[], loads: readonly BeamLoad[], EI: number): string | undefined {
  if (spans.length === 0 || !spans.every((span) => span > 0 && Number.isFinite(span)))
    return 'every span must be above zero';
  if (loads.length !== spans.length) return 'give one load for each span';
  if (!(EI > 0 && Number.isFinite(EI))) return 'the stiffness EI must be above zero';
  for (const [k, load] of loads.entries()) {
    if (!Number.isFinite(load.line ?? 0)) return `the load on span ${k + 1} is not finite`;
    for (const { at, load: P } of load.points ?? [])
      if (!(at >= 0 && at <= spans[k]! && Number.isFinite(P))) return `a point load stands off span ${k + 1}`;
  }
  return undefined;
}

/** Right sides of the three-moment equations: six times the load area's moment about each end, over the span. */
function areaTerms(span: number, load: BeamLoad): { left: number; right: number } {
  let left = ((load.line ?? 0) * span ** 3) / 4;
  let right = left;
  for (const { at, load: P } of load.points ?? []) {
    const rest = span - at;
    left += (P * rest * (span ** 2 - rest ** 2)) / span;
    right += (P * at * (span ** 2 - at ** 2)) / span;
  }
  return { left, right };
}

function supportMoments(
  spans: readonly number[],
  loads: readonly BeamLoad[],
  ends: readonly [BeamEnd, BeamEnd],
): number[] {
  const n = spans.length;
  const lower = new Float64Array(n + 1);
  const main = new Float64Array(n + 1).fill(1);
  const upper = new Float64Array(n + 1);
  const right = new Float64Array(n + 1);
  for (let k = 0; k <= n; k++) {
    if ((k === 0 && ends[0] === 'pinned') || (k === n && ends[1] === 'pinned')) continue;
    main[k] = 0;
    if (k > 0) {
      lower[k] = spans[k - 1]!;
      main[k]! += 2 * spans[k - 1]!;
      right[k]! -= areaTerms(spans[k - 1]!, loads[k - 1]!).right;
    }
    if (k < n) {
      upper[k] = spans[k]!;
      main[k]! += 2 * spans[k]!;
      right[k]! -= areaTerms(spans[k]!, loads[k]!).left;
    }
  }
  for (let k = 1; k <= n; k++) {
    const times = lower[k]! / main[k - 1]!;
    main[k]! -= times * upper[k - 1]!;
    right[k]! -= times * right[k - 1]!;
  }
  const moments = new Array<number>(n + 1).fill(0);
  for (let k = n; k >= 0; k--)
    moments[k] = (right[k]! - upper[k]! * (k < n ? moments[k + 1]! : 0)) / main[k]!;
  return moments;
}

interface SpanLine {
  readonly shearLeft: number;
  readonly shearRight: number;
  moment(x: number): number;
  /** EI times the deflection, downwards positive */
  sink(x: number): number;
  readonly turning: readonly number[];
}

function spanLine(span: number, load: BeamLoad, left: number, right: number): SpanLine {
  const w = load.line ?? 0;
  const points = [...(load.points ?? [])].sort((a, b) => a.at - b.at);
  const total = points.reduce((sum, p) => sum + p.load, w * span);
  const shearLeft =
    (right - left) / span +
    (w * span) / 2 +
    points.reduce((sum, p) => sum + (p.load * (span - p.at)) / span, 0);
  const bent = (x: number) =>
    (left * x ** 2) / 2 +
    (shearLeft * x ** 3) / 6 -
    (w * x ** 4) / 24 -
    points.reduce((sum, p) => sum + (x > p.at ? (p.load * (x - p.at) ** 3) / 6 : 0), 0);
  const turn = -bent(span) / span;
  const turning = [0, span, ...points.map((p) => p.at)];
  if (w !== 0) {
    let passed = 0;
    let from = 0;
    for (const to of [...points.map((p) => p.at), span]) {
      const zero = (shearLeft - passed) / w;
      if (zero > from && zero < to) turning.push(zero);
      passed += points.filter((p) => p.at === to).reduce((sum, p) => sum + p.load, 0);
      from = to;
    }
  }
  return {
    shearLeft,
    shearRight: shearLeft - total,
    moment: (x) =>
      left +
      shearLeft * x -
      (w * x ** 2) / 2 -
      points.reduce((sum, p) => sum + (x > p.at ? p.load * (x - p.at) : 0), 0),
    sink: (x) => -(bent(x) + turn * x),
    turning,
  };
}

type Draft = { -readonly [K in keyof Omit<BeamAnswer, 'reactions' | 'ok' | 'maxMoment'>]: BeamAnswer[K] } & {
  reactions: number[];
};

const emptyAnswer = (supports: number, moments: readonly number[]): Draft => ({
  sagging: 0,
  saggingAt: 0,
  hogging: 0,
  hoggingAt: 0,
  maxShear: 0,
  deflection: 0,
  deflectionAt: 0,
  reactions: new Array<number>(supports).fill(0),
  supportMoments: moments,
});

const finish = (draft: Draft): BeamAnswer => ({
  ok: true,
  ...draft,
  maxMoment: Math.max(draft.sagging, draft.hogging),
});

function gather(answer: Draft, line: SpanLine, span: number, start: number, EI: number): void {
  for (const x of line.turning) {
    const moment = line.moment(x);
    if (moment > answer.sagging) {
      answer.sagging = moment;
      answer.saggingAt = start + x;
    }
    if (-moment > answer.hogging) {
      answer.hogging = -moment;
      answer.hoggingAt = start + x;
    }
  }
  answer.maxShear = Math.max(answer.maxShear, Math.abs(line.shearLeft), Math.abs(line.shearRight));
  const x = deepest((at) => Math.abs(line.sink(at)), span);
  const sink = line.sink(x) / EI;
  if (Math.abs(sink) > Math.abs(answer.deflection)) {
    answer.deflection = sink;
    answer.deflectionAt = start + x;
  }
}

/** Where a smooth function of the span is largest: best of 64 parts, then narrowed by thirds. */
function deepest(f: (x: number) => number, span: number): number {
  let best = 0;
  for (let n = 1; n < 64; n++) if (f((span * n) / 64) > f((span * best) / 64)) best = n;
  let low = (span * Math.max(0, best - 1)) / 64;
  let high = (span * Math.min(64, best + 1)) / 64;
  for (let n = 0; n < 60; n++) {
    const third = (high - low) / 3;
    if (f(low + third) < f(high - third)) low += third;
    else high -= third;
  }
  return (low + high) / 2;
}
