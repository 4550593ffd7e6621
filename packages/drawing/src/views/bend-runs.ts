import type { Bows, CurvePoint } from '@tautline/shelter';

export interface BendRun {
  /** From the left end of the pipe, m (the part driven into the ground included). */
  readonly from: number;
  readonly to: number;
  /** Turn over the run, rad; 0 where the pipe stays straight. */
  readonly turn: number;
  /** Centre-line radius, m; absent where straight. */
  readonly radius?: number;
}

/**
 * Straights and arcs along the pipe, joined where the curvature stays the same within 2 %. A pipe of
 * steadily changing curvature gives many short runs; it is not made with a bender.
 */
export function bendRuns(bows: Bows): readonly BendRun[] {
  const runs: { from: number; to: number; turn: number }[] = [];
  const straight = (run: { turn: number; from: number; to: number }): boolean =>
    Math.abs(run.turn) < 1e-4 * Math.max(1, run.to - run.from);
  const add = (from: number, to: number, turn: number): void => {
    const last = runs[runs.length - 1];
    const next = { from, to, turn };
    if (last) {
      const [a, b] = [last.turn / (last.to - last.from), turn / (to - from)];
      const same = straight(last) ? straight(next) : !straight(next) && Math.abs(a - b) <= 0.02 * Math.abs(a);
      if (same) {
        last.to = to;
        last.turn += turn;
        return;
      }
    }
    runs.push(next);
  };
  const driven = bows.legDriven;
  if (driven > 0) add(0, driven, 0);
  bows.line.forEach((b, i) => {
    const a = bows.line[i - 1];
    if (a && b.s - a.s > 1e-5) add(driven + a.s, driven + b.s, a.angle - b.angle);
  });
  const end = driven + (bows.line[bows.line.length - 1] as CurvePoint).s;
  if (driven > 0) add(end, end + driven, 0);
  return runs.map((run) =>
    straight(run) ? { ...run, turn: 0 } : { ...run, radius: Math.abs((run.to - run.from) / run.turn) },
  );
}
