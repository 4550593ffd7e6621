import type { Check, CheckInput } from '../check.ts';
import type { Finding, Found } from '../finding.ts';
import { type FirstFailure, failsAt } from '../gust-order.ts';
import { given, inWords, judge, measured, notChecked, step } from '../judge.ts';
import { sturdier } from '../levers.ts';
import { sacrificialParts } from '../sacrificial.ts';

/** How much faster a gust the rest must stand than the sacrificial part: common practice, no source. */
const margin = 1.15;

/** Slower than any wind, m/s, own choice: what gives without wind counts as giving at it, so that two such have an order. */
const calm = 1e-3;

function run(input: CheckInput): Found[] {
  const { shelter, gusts } = input;
  const declared = sacrificialParts(shelter);
  const first = declared[0];
  if (first === undefined || gusts === undefined) return [];
  const goes = gusts.failures.find((failure) => failure.sacrificial);
  const stands = gusts.failures.find((failure) => !failure.sacrificial);
  if (goes === undefined)
    return [
      notChecked(
        first,
        'no part declared sacrificial reaches a limit in the gusts looked at, or its limit is not calculated',
      ),
    ];
  const part = declared.find((entry) => entry.id === goes.part) ?? { id: goes.part, origin: goes.origin };
  if (stands === undefined) return [passes(part, goes, gusts.upTo)];
  const needed = margin * Math.max(goes.gust, calm);
  return [
    judge({
      part,
      utilisation: needed / Math.max(stands.gust, calm),
      demand: measured(needed, 'speed'),
      capacity: measured(stands.gust, 'speed'),
      loadCase: goes.loadCase,
      exact: true,
      related: [{ origin: stands.origin, message: `${stands.what}` }],
      message: [
        'The part meant to go first ',
        ...(goes.gust > 0 ? ['goes at a gust of ', measured(goes.gust, 'speed')] : ['goes without wind']),
        ` (${goes.what}); of the rest `,
        ...failsAt(stands),
        ...(goes.gust > 0 ? [', where at least ', measured(needed, 'speed'), ' is wanted.'] : ['.']),
      ],
      source: 'practice',
      steps: [
        inWords(
          'V_1',
          `gust at which ${goes.what}`,
          'utilisation 1 on the frame solved again',
          [],
          goes.gust,
          'speed',
          'frame',
        ),
        inWords(
          'V_2',
          `gust at which ${stands.what}`,
          'utilisation 1 on the frame solved again',
          [],
          stands.gust,
          'speed',
          'frame',
        ),
        step(
          'V_n',
          'gust the rest must stand',
          'V_n = 1.15 V_1',
          [
            given(
              'V_1',
              'gust of the sacrificial part, or next to nothing',
              Math.max(goes.gust, calm),
              'speed',
            ),
          ],
          needed,
          'speed',
          'practice',
        ),
      ],
    }),
  ];
}

function passes(part: { id: string; origin: Finding['origin'] }, goes: FirstFailure, upTo: number): Found {
  return judge({
    part,
    utilisation: (margin * goes.gust) / Math.max(upTo, 1e-3),
    demand: measured(margin * goes.gust, 'speed'),
    capacity: measured(upTo, 'speed'),
    exact: true,
    message: [
      'The part meant to go first goes at a gust of ',
      measured(goes.gust, 'speed'),
      ` (${goes.what}); nothing else comes to its limit up to `,
      measured(upTo, 'speed'),
      '.',
    ],
    source: 'practice',
    steps: [inWords('V_1', `gust at which ${goes.what}`, 'utilisation 1', [], goes.gust, 'speed', 'frame')],
  });
}

export const stormOrder: Check = {
  id: 'storm-order',
  title: 'Order of failure in a storm',
  asks: 'As the gust rises, does the part declared sacrificial really give way before everything else?',
  matters: 'A weak link only saves the house if it is the weakest.',
  formula: 'u = 1.15 V_sacrificial / V_rest',
  symbols: [
    { symbol: 'V_sacrificial', meaning: 'lowest gust of the parts declared sacrificial', kind: 'speed' },
    { symbol: 'V_rest', meaning: 'lowest gust of all other parts', kind: 'speed' },
  ],
  sources: ['frame', 'practice'],
  leavesOut:
    "How the load changes once the part is gone; parts that the order of failure lists as not in it (`tautline explain FILE --gusts`); gusts over three times the site's.",
  mayBeAccepted: 'When the order was seen in a real storm.',
  needs: 'gusts',
  appliesTo: (shelter) => sacrificialParts(shelter).length > 0,
  run,
  levers: ({ shelter, gusts }, _finding, stock) => {
    const stands = gusts?.failures.find((failure) => !failure.sacrificial);
    return stands === undefined ? [] : sturdier(shelter, stands.part, stock);
  },
};
