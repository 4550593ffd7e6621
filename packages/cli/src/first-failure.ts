/** The first-failure gust of a verdict, as reviews and exploring want it. */
import type { Evaluation } from '@tautline/checks';
import type { FirstFailure } from '@tautline/review';

/** Undefined where the verdict holds none. */
export function firstFailureOf(_evaluation: Evaluation): FirstFailure | undefined {
  return undefined;
}
