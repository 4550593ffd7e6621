import type { Shelter } from '@tautline/shelter';
import { stale } from './checks/stale-acceptance.ts';
import type { Finding } from './finding.ts';
import { checkOf, wholeHouseChecks } from './registry.ts';

/**
 * Marks findings that the spec accepts, and turns an acceptance that covers nothing any more, or has run
 * out, into a finding of its own. An accepted failure no longer counts as an error. An acceptance of a check that was
 * not asked (`unasked`; those of the whole house unless said otherwise) stands: nothing is known of it.
 */
export function withAcceptances(
  { acceptances }: Pick<Shelter, 'acceptances'>,
  findings: readonly Finding[],
  on: string | undefined,
  unasked: (check: string) => boolean = (check) => wholeHouseChecks.has(check),
): Finding[] {
  const outdated: Finding[] = [];
  let result = [...findings];
  for (const acceptance of acceptances) {
    const over = acceptance.until !== undefined && on !== undefined && on > acceptance.until;
    const left = result.filter(
      ({ id, severity }) => id === acceptance.check && (severity === 'error' || severity === 'warning'),
    ).length;
    const covered = unasked(acceptance.check) || left > 0;
    const say = (why: string): void => {
      outdated.push(stale(acceptance, why, left));
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
  return [...result, ...outdated];
}
