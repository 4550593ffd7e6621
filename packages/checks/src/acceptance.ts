import type { Shelter } from '@tautline/shelter';
import type { Finding } from './finding.ts';
import { checkOf } from './registry.ts';

/**
 * Marks findings that the spec accepts, and turns an acceptance that covers nothing any more, or has run
 * out, into a finding of its own. An accepted failure no longer counts as an error.
 */
export function withAcceptances(
  shelter: Shelter,
  findings: readonly Finding[],
  on: string | undefined,
): Finding[] {
  const stale: Finding[] = [];
  let result = [...findings];
  for (const acceptance of shelter.acceptances) {
    const over = acceptance.until !== undefined && on !== undefined && on > acceptance.until;
    const covered = result.some(
      (finding) =>
        finding.id === acceptance.check && (finding.severity === 'error' || finding.severity === 'warning'),
    );
    const say = (message: string): void => {
      stale.push({
        id: 'stale-acceptance',
        verdict: 'fails',
        severity: 'error',
        part: acceptance.id,
        origin: acceptance.origin,
        related: [],
        message: [message],
        source: 'derived',
        steps: [],
      });
    };
    if (checkOf(acceptance.check) === undefined)
      say(`There is no check called '${acceptance.check}' to accept.`);
    else if (!covered)
      say(`Nothing is left to accept: ${acceptance.check} passes or does not apply. Remove this line.`);
    else if (over)
      say(
        `This was accepted until ${acceptance.until}. Mend it, or accept it again with a new reason and date.`,
      );
    else {
      result = result.map((finding) =>
        finding.id === acceptance.check && finding.severity !== 'information'
          ? {
              ...finding,
              severity: 'information',
              accepted: {
                because: acceptance.because,
                ...(acceptance.until === undefined ? {} : { until: acceptance.until }),
              },
            }
          : finding,
      );
    }
  }
  return [...result, ...stale];
}
