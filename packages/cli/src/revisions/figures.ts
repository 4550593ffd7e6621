/** One shelter of a revision worked out, in whatever thread has time. */
import { evaluate } from '@tautline/checks';
import { type Figures, firstFailureOf } from '@tautline/review';
import { resolveShelter, type SpecWorld } from '@tautline/shelter';
import { type MaterialOptions, materialsExact } from '@tautline/takeoff';
import { loadSolver } from '../solver.ts';

export interface FiguresTask {
  readonly type: 'figures';
  readonly name: string;
  readonly world: SpecWorld;
  readonly options: MaterialOptions;
  /** Day ages are counted to, ISO. */
  readonly on: string;
}

/** Nothing for a shelter that cannot be resolved: its problems are told elsewhere. */
export async function figuresOf({ name, world, options, on }: FiguresTask): Promise<Figures> {
  const { shelter } = resolveShelter(name, world);
  if (shelter === undefined) return {};
  const evaluation = evaluate(shelter, { on });
  const firstFailure = firstFailureOf(evaluation);
  return {
    // Of the verdict only what a review reads: the analysis is large.
    evaluation: { shelter: evaluation.shelter, findings: evaluation.findings },
    materials: await materialsExact(shelter, loadSolver, options),
    ...(firstFailure === undefined ? {} : { firstFailure }),
  };
}
