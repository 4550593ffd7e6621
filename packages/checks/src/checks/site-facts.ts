import type { Check } from '../check.ts';
import { notChecked } from '../judge.ts';

/** Facts of a site that decide verdicts, with what hangs on them. */
const deciding: Readonly<Record<string, string>> = {
  exposure: 'wind',
  soil: 'what the feet hold',
  rain: 'water on and off the roof',
  coldest: 'locked-in stress and tight film',
  hottest: 'slack film and soft plastic',
  latitude: 'heat and water',
  basis: 'all loads',
};

export const siteFacts: Check = {
  id: 'site-facts',
  title: 'Facts of the site',
  nature: 'paperwork',
  asks: 'Does the spec say what the place is like, or was it taken for granted?',
  matters: 'The same house stands in one soil and flies out of another.',
  formula: 'facts of the site that were assumed',
  symbols: [],
  sources: ['derived'],
  leavesOut: 'Whether what was said is true.',
  mayBeAccepted: 'It is no finding to accept: say the facts.',
  run: ({ shelter }) => {
    const missing = shelter.assumed
      .filter((entry) => entry.part === 'site' && deciding[entry.fact] !== undefined)
      .map((entry) => `${entry.fact} (${deciding[entry.fact]})`);
    return missing.length === 0
      ? []
      : [
          notChecked(
            shelter.site,
            `the site does not say its ${missing.join(', ')}; usual values stand in, and are listed as assumed`,
          ),
        ];
  },
};
