import type { Shelter } from '@tautline/shelter';
import type { Check, CheckInput } from '../check.ts';
import type { Found } from '../finding.ts';
import { failsAt } from '../gust-order.ts';
import { given, inWords, judge, measured } from '../judge.ts';
import { sturdier } from '../levers.ts';

const asked = ({ requirements }: Shelter) => requirements.filter(({ subject }) => subject === 'gust');

function run(input: CheckInput): Found[] {
  const { shelter, gusts } = input;
  if (gusts === undefined) return [];
  const { failures, upTo } = gusts;
  return asked(shelter).map((entry) => {
    const first = failures.find((failure) => !failure.sacrificial);
    const stands = first?.gust ?? upTo;
    return judge({
      part: entry,
      utilisation: entry.value / Math.max(stands, 1e-3),
      demand: measured(entry.value, 'speed'),
      capacity: measured(stands, 'speed'),
      ...(first === undefined ? {} : { loadCase: first.loadCase }),
      related: first === undefined ? [] : [{ origin: first.origin, message: first.what }],
      exact: true,
      message:
        first === undefined
          ? [
              'Nothing but sacrificial parts comes to its limit up to a gust of ',
              measured(stands, 'speed'),
              '.',
            ]
          : ['A gust of ', measured(entry.value, 'speed'), ' is to be withstood; ', ...failsAt(first), '.'],
      source: 'frame',
      steps: [
        inWords(
          'V_1',
          first === undefined ? 'fastest gust looked at' : `gust at which ${first.what}`,
          'utilisation 1 on the frame solved again',
          [given('V', 'gust to withstand', entry.value, 'speed')],
          stands,
          'speed',
          'frame',
        ),
      ],
    });
  });
}

export const withstand: Check = {
  id: 'withstand',
  title: 'Gust to withstand',
  asks: 'Does everything but the sacrificial parts stand the gust that the spec asks for?',
  matters: 'A promise about a storm should be worked out before the storm.',
  formula: 'u = V_asked / V_1',
  symbols: [
    { symbol: 'V_asked', meaning: 'gust of the spec', kind: 'speed' },
    { symbol: 'V_1', meaning: 'lowest gust of the parts that are not sacrificial', kind: 'speed' },
  ],
  sources: ['frame'],
  leavesOut:
    "Sheets by themselves, film of the sides, ends and doors; gusts over three times the site's; what flies against the house.",
  mayBeAccepted:
    'When what covers it comes off before such a storm, as the storm card says; sheets do not come off.',
  needs: 'gusts',
  appliesTo: (shelter) => asked(shelter).length > 0,
  run,
  levers: ({ shelter, gusts }, _finding, stock) => {
    const first = gusts?.failures.find((failure) => !failure.sacrificial);
    return first === undefined ? [] : sturdier(shelter, first.part, stock);
  },
};
