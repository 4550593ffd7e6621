/** The first-failure gust of a verdict, as reviews and exploring want it. */
import type { Evaluation } from '@tautline/checks';
import type { FirstFailure } from './revision.ts';

/**
 * The lowest gust at which a part gives way that is not declared to go first; where none does in the gusts
 * looked at, the fastest of these. Undefined where the frame could not be worked out.
 */
export function firstFailureOf({ gusts }: Evaluation): FirstFailure | undefined {
  if (gusts === undefined) return undefined;
  const first = gusts.failures.find(({ sacrificial }) => !sacrificial);
  return first === undefined
    ? { gust: gusts.upTo, part: '', beyond: true }
    : { gust: first.gust, part: first.part, beyond: false };
}
