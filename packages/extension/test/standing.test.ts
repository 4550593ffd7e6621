/** How findings stand on the sheet: what is counted as failing there is what counts as failing elsewhere. */
import { describe, expect, it } from 'vitest';
import { standingOf } from '../src/preview/standing.ts';

describe('a finding on the sheet', () => {
  it.each([
    ['fails', 'error', undefined, 'fails'],
    ['fails', 'warning', undefined, 'near'],
    ['near its limit', 'warning', undefined, 'near'],
    ['passes', 'information', undefined, 'passes'],
    ['not checked', 'information', undefined, 'unknown'],
    ['fails', 'information', 'it stands in the cool season only', 'accepted'],
  ] as const)(
    'that %s with severity %s, accepted because: %s, counts as %s',
    (verdict, severity, accepted, standing) => {
      expect(standingOf({ verdict, severity, ...(accepted === undefined ? {} : { accepted }) })).toBe(
        standing,
      );
    },
  );
});
