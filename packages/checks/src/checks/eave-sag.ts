import type { Step } from '@tautline/loads';
import { lasts } from '@tautline/loads';
import type { Rail } from '@tautline/shelter';
import type { RailDemand } from '@tautline/structure';
import { sectionOf, weightPerLength } from '@tautline/structure';
import type { Check, CheckInput } from '../check.ts';
import type { Found } from '../finding.ts';
import { given, inWords, judge, measured, notChecked, step } from '../judge.ts';
import { closer, stouter } from '../levers.ts';
import { eaveLoad } from '../rails.ts';

/** Largest share of the span an eave may sag: l/150, the loosest of EN 1995-1-1 table 7.2. */
const share = 1 / 150;

function run(input: CheckInput): Found[] {
  const { eaveRail, sidePosts, roof } = input.shelter;
  if (eaveRail === undefined || sidePosts === undefined) return [];
  if (sidePosts.spacing <= roof.spacing * 1.001) return [];
  if (!input.frame.ok) return [notChecked(eaveRail, input.frame.reason)];
  const demand = eaveLoad(input.shelter, input.frame.analysis, ({ load }) => lasts(load.duration));
  if (demand === undefined)
    return [notChecked(eaveRail, 'the frames bring no steady load to the rail in this model')];
  const allowed = eaveRail.span * share;
  return [
    judge({
      part: eaveRail,
      utilisation: demand.sag / allowed,
      demand: measured(demand.sag, 'length'),
      capacity: measured(allowed, 'length'),
      loadCase: demand.loadCase,
      mild: true,
      message: [
        `The eave rail of ${eaveRail.member.title} sags `,
        measured(demand.sag, 'length'),
        ' between its posts under ',
        demand.loadCase,
        '; from ',
        measured(allowed, 'length'),
        ' on the edge of the film dips and water gathers there.',
      ],
      source: 'en1995-1-1:7.2',
      steps: [
        step(
          'w',
          'steady load along the rail',
          'w = R / s',
          [
            given('R', 'what one frame brings', demand.load * roof.spacing, 'force'),
            given('s', 'spacing of the frames', roof.spacing, 'length'),
          ],
          demand.load,
          'line-load',
          'frame',
        ),
        sagStep(eaveRail, demand),
        step('f_max', 'sag allowed', 'f_max = L / 150', [], allowed, 'length', 'en1995-1-1:7.2'),
      ],
    }),
  ];
}

function sagStep({ member, span }: Rail, { load, sag }: RailDemand): Step {
  const length = given('L', 'distance between posts', span, 'length');
  if (member.kind === 'cable')
    return inWords(
      'f',
      'sag of one bay',
      'of a cable that stretches under it',
      [length],
      sag,
      'length',
      'parabola',
    );
  const down = load >= 0;
  return step(
    'f',
    'sag of one bay',
    down ? 'f = 5 (w + g) L⁴ / (384 E I)' : 'f = 5 |w| L⁴ / (384 E I)',
    [
      length,
      ...(down ? [given('g', 'weight of the rail', weightPerLength(member), 'line-load')] : []),
      given('E', 'modulus', member.material.modulus, 'stress'),
      given('I', 'second moment', sectionOf(member).secondMoment, 'second-moment'),
    ],
    sag,
    'length',
    'beam-table',
  );
}

export const eaveSag: Check = {
  id: 'eave-sag',
  title: 'Sag of the eave',
  asks: 'Does the eave rail stay straight enough between its posts for the film edge to drain?',
  matters: 'Where the eave dips, water stops on its way off the roof, and the first pocket forms.',
  formula: 'u = f / (L / 150)',
  symbols: [
    { symbol: 'f', meaning: 'sag of the rail between two posts', kind: 'length' },
    { symbol: 'L', meaning: 'distance between posts', kind: 'length' },
  ],
  sources: ['beam-table', 'en1995-1-1:7.2', 'frame'],
  leavesOut: 'Creep of the rail beyond what the frame analysis has, rails that are crooked from the start.',
  mayBeAccepted: 'When the roof is steep and the film ends clear of the rail.',
  run,
  levers: (input, _finding, stock) => {
    const { eaveRail, sidePosts } = input.shelter;
    if (eaveRail === undefined || sidePosts === undefined) return [];
    const { member } = eaveRail;
    return [
      closer(sidePosts, 'posts'),
      ...(member.kind === 'cable' ? [] : [stouter({ origin: eaveRail.origin, member }, stock)]),
    ];
  },
};
