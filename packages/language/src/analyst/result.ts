/** What is asked of a shelter, and what it comes to. Plain data: goes through a worker's messages as it is. */
import type { AtGust, Evaluation, Finding, Fix, RangeVerdict } from '@tautline/checks';
import type { System } from '@tautline/quantity';
import type { Problem, Range } from '@tautline/shelter';
import type { LargestMoment } from './largest-moments.ts';

/** Shelters side by side, and what is said of them beyond what is said of each. */
export interface JudgedRange {
  readonly range: Range;
  readonly verdict: RangeVerdict;
}

/** A finding as it is told: the steps of its calculation come when somebody opens it. */
export interface ToldFinding extends Omit<Finding, 'steps'> {
  /** That of the last step. */
  readonly formula?: string;
}

type Told<T extends { readonly findings: unknown }> = Omit<T, 'findings'> & {
  readonly findings: readonly ToldFinding[];
};
export type ToldEvaluation = Told<Evaluation>;
export type ToldRange = Omit<JudgedRange, 'verdict'> & { readonly verdict: Told<RangeVerdict> };

/** What a shelter or range comes to, where it is worked out. */
export interface WorkedOut {
  readonly shelter: string;
  readonly problems: readonly Problem[];
  /** Absent when the spec could not be resolved; the problems say why. Always absent for a range. */
  readonly evaluation?: Evaluation;
  /** Of a range only; absent when it could not be resolved. */
  readonly judged?: JudgedRange;
  /** Of each member of the typical frame. */
  readonly moments?: readonly LargestMoment[];
  /** Set when the calculation itself broke off: a fault of the program, never hidden. */
  readonly failure?: string;
}

/** What is told of it: most of it is steps of calculations that nobody looks at while typing. */
export interface AnalysisResult extends Omit<WorkedOut, 'evaluation' | 'judged'> {
  readonly evaluation?: ToldEvaluation;
  readonly judged?: ToldRange;
  /** All its findings with their calculations, where these were asked for. */
  readonly calculated?: readonly Finding[];
  /** The frame and its parts at the gust that was asked for. */
  readonly atGust?: AtGust;
}

export function toldFinding({ steps, ...finding }: Finding): ToldFinding {
  const formula = steps.at(-1)?.formula;
  return formula === undefined ? finding : { ...finding, formula };
}

export interface AnalysisOptions {
  /** Day that ages are counted to, ISO; ages are not checked without one. */
  readonly on?: string;
  /** Also the order in which parts fail as the gust rises: several times the work of everything else. */
  readonly gusts?: boolean;
  /** Also the steps of all calculations, of what is found by the gusts, too: large. */
  readonly steps?: boolean;
  /** Also the frame analysis itself, forces and displacements of every load: large. */
  readonly frame?: boolean;
  /** Also the frame at this gust, m/s, and what each part takes of its limit there. */
  readonly gust?: number;
}

export interface FixRequest {
  readonly on?: string;
  readonly finding: Pick<Finding, 'id' | 'part'>;
  readonly system: System;
}

/** A fix, and what it adds to the bill where that can be said. */
export interface PricedFix extends Fix {
  readonly cost?: { readonly change: number; readonly currency?: string };
}
