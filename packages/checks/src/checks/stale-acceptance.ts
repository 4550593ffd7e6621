import type { Acceptance } from '@tautline/shelter';
import type { Check, Lever } from '../check.ts';
import type { Finding } from '../finding.ts';
import { inWords } from '../judge.ts';

/** An `accept` line that must not stand as it is, and why; `covered` findings of its check are left to accept. */
export function stale(acceptance: Acceptance, why: string, covered: number): Finding {
  return {
    id: staleAcceptance.id,
    nature: 'paperwork',
    verdict: 'fails',
    severity: 'error',
    part: acceptance.id,
    origin: acceptance.origin,
    related: [],
    message: [why],
    source: 'derived',
    steps: [
      inWords(
        'n',
        `findings of ${acceptance.check} that this line covers`,
        'failing or near their limit',
        [],
        covered,
        'count',
        'derived',
      ),
    ],
  };
}

function removed(acceptances: readonly Acceptance[], { part }: Finding): Lever[] {
  const acceptance = acceptances.find(({ id }) => id === part);
  if (acceptance === undefined) return [];
  const option = {
    title: [`Remove \`accept ${acceptance.check}\``],
    edits: [{ type: 'remove', node: acceptance.origin } as const],
  };
  return [{ type: 'choice', options: [option] }];
}

export const staleAcceptance: Check = {
  id: 'stale-acceptance',
  title: 'Acceptance that no longer applies',
  nature: 'paperwork',
  asks: 'Does each `accept` line still cover a finding, and has its date not passed?',
  matters:
    'A line that accepts what is no longer there will hide the next finding of the same name, which nobody has looked at.',
  formula: 'n ≥ 1, and the day of the check is not after `until`',
  symbols: [
    {
      symbol: 'n',
      meaning: 'findings of the accepted check that fail or are near their limit',
      kind: 'count',
    },
  ],
  sources: ['derived'],
  leavesOut:
    'Whether the reason still holds. Dates are asked only where the day of the check is known, and what only the whole house answers only where it was worked out.',
  mayBeAccepted: 'It is no finding to accept: remove the line, or say a new reason and date.',
  // It asks about the findings of all other checks, so they are held against the `accept` lines once those are there.
  run: () => [],
  levers: ({ shelter }, finding) => removed(shelter.acceptances, finding),
  rangeLevers: ({ acceptances }, finding) => removed(acceptances, finding),
};
