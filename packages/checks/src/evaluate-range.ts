import type { Assumed, Range } from '@tautline/shelter';
import { withAcceptances } from './acceptance.ts';
import type { Uncovered } from './evaluate.ts';
import type { Finding } from './finding.ts';
import { checks } from './registry.ts';
import { stamped } from './run-check.ts';

/** What can be said of shelters side by side beyond what is said of each by itself. */
export interface RangeVerdict {
  readonly findings: readonly Finding[];
  readonly assumed: readonly Assumed[];
  readonly notChecked: readonly Uncovered[];
}

/**
 * The verdict on a range. Each of its shelters has an `evaluate` of its own. `on` is the day that acceptances are
 * counted to, ISO.
 */
export function evaluateRange(range: Range, on?: string): RangeVerdict {
  const judged = checks.flatMap((check) => stamped(check, check.onRange?.(range) ?? []));
  return {
    // What only a whole house answers is never asked of a range: an acceptance of it covers nothing here.
    findings: withAcceptances(
      range,
      judged.filter((finding) => finding.verdict !== 'not checked'),
      on,
      () => false,
    ),
    assumed: range.assumed,
    notChecked: [
      ...judged
        .filter((finding) => finding.verdict === 'not checked')
        .map((finding) => ({ id: finding.id, reason: finding.reason ?? '' })),
      ...range.unmodelled.map(({ what }) => ({ id: 'model', reason: `${what}: not in the model` })),
    ],
  };
}
