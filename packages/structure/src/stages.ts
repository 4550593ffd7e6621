/**
 * The stages of an analysis and the time each may take. The clock is handed in: without one nothing is timed, and
 * the same input gives the same answer on every machine.
 */
export type StageId = 'form' | 'plane' | 'ponding' | 'gusts' | 'whole-house';

/** What each stage works out, in words. */
export const stageTitles: Readonly<Record<StageId, string>> = {
  form: 'the frame as built',
  plane: 'the typical frame under its loads',
  ponding: 'water standing on the frame',
  gusts: 'the order in which parts give way',
  'whole-house': 'the whole house in space',
};

/**
 * Time a stage may take unless said otherwise, s: some hundred times what the examples need, so that only what
 * would hang runs out.
 */
export const usualBudget: Readonly<Record<StageId, number>> = {
  form: 5,
  plane: 20,
  ponding: 20,
  gusts: 30,
  'whole-house': 300,
};

export interface StageClock {
  /** Seconds since any moment; never goes back. */
  readonly now: () => number;
  /** Time each stage may take, s; `usualBudget` where nothing is said. */
  readonly budget?: Partial<Readonly<Record<StageId, number>>>;
}

export interface StageTime {
  readonly stage: StageId;
  readonly seconds: number;
  /** The budget (s) that it ran out of, and so has no answer. */
  readonly ranOut?: number;
}

export interface Stages {
  /** Stages that are over, in the order of the work; empty without a clock. */
  readonly times: readonly StageTime[];
  /**
   * Does the work of a stage. The work asks `stop` from time to time and throws `Cancelled` when told so; a stage
   * that runs out of time then ends in a reason. `Cancelled` passes through where the caller himself called it off.
   */
  run<T>(
    stage: StageId,
    work: (stop: () => boolean) => T,
  ): { readonly ok: true; readonly value: T } | { readonly ok: false; readonly reason: string };
}

/** Thrown between pieces of work when the caller no longer wants the answer. */
export class Cancelled extends Error {}

/** Throws `Cancelled` when told to stop. */
export function goOn(stop: () => boolean): void {
  if (stop()) throw new Cancelled();
}

export function stagesBy(clock?: StageClock, cancelled: () => boolean = () => false): Stages {
  const times: StageTime[] = [];
  return {
    times,
    run(stage, work) {
      if (clock === undefined) return { ok: true, value: work(cancelled) };
      const budget = clock.budget?.[stage] ?? usualBudget[stage];
      const start = clock.now();
      const spent = (): number => clock.now() - start;
      try {
        const value = work(() => cancelled() || spent() > budget);
        times.push({ stage, seconds: spent() });
        return { ok: true, value };
      } catch (error) {
        if (!(error instanceof Cancelled) || cancelled()) throw error;
        times.push({ stage, seconds: spent(), ranOut: budget });
        return { ok: false, reason: `${stageTitles[stage]}: took longer than ${budget} s` };
      }
    },
  };
}
