import { boxGutter, halfRoundGutter, runoff as offRoof } from '@tautline/loads';
import type { Gutter, Shelter } from '@tautline/shelter';
import type { Check, CheckInput, Lever } from '../check.ts';
import type { Found } from '../finding.ts';
import { judge, measured, notChecked } from '../judge.ts';
import { remark } from '../remark.ts';
import { setQuantity } from '../slots.ts';

/** Roof on plan that drains to one eave, or into a gutter between two equal shelters, m2. */
function drained(shelter: Shelter, where: Gutter['where']): number {
  const single = shelter.roof.type === 'rafters' && shelter.roof.form === 'single-slope';
  const plan = shelter.width * shelter.length;
  return where === 'between' || single ? plan : plan / 2;
}

function onGutter(shelter: Shelter, gutter: Gutter): Found {
  const { across, depth } = gutter;
  if (across === undefined)
    return notChecked(gutter, 'how wide the gutter is was not said: write `across 4 in` in it');
  const water = offRoof(shelter.site.rain, drained(shelter, gutter.where));
  const carries =
    depth === undefined ? halfRoundGutter(across, shelter.length) : boxGutter(across, depth, shelter.length);
  return judge({
    part: gutter,
    utilisation: water.flow / Math.max(carries.flow, 1e-12),
    demand: measured(water.flow, 'flow'),
    capacity: measured(carries.flow, 'flow'),
    loadCase: 'the heaviest rain',
    mild: true,
    message: [
      'In the heaviest rain ',
      measured(water.flow, 'flow'),
      ` runs into the gutter; laid level, ${depth === undefined ? 'half round' : 'as a box'}, with its outlet at one end it carries `,
      measured(carries.flow, 'flow'),
      '.',
    ],
    source: 'en12056-3:5.1',
    steps: [water.step, carries.step],
  });
}

function run(input: CheckInput): Found[] {
  const { shelter } = input;
  const { roof, gutters = [] } = shelter;
  if (roof.type !== 'bows' && roof.type !== 'rafters') return [];
  if (gutters.length > 0) return gutters.map((gutter) => onGutter(shelter, gutter));
  const water = offRoof(shelter.site.rain, drained(shelter, 'sides'));
  return [
    remark(
      shelter,
      'passes',
      [
        'No gutter is said: in the heaviest rain ',
        measured(water.flow, 'flow'),
        ' falls along each eave, and wants a drain beside the feet.',
      ],
      'rational-method',
      [water.step],
    ),
  ];
}

export const runoff: Check = {
  id: 'runoff',
  title: 'Water off the roof',
  nature: 'climate',
  asks: 'Does the gutter carry the heaviest rain, and how much water falls at the eave without one?',
  matters: 'A gutter that spills washes out the feet; a flooded bed drowns what the roof kept dry.',
  formula: 'u = C i A / Q_L, Q_L = 0.9 · 2.78e-5 A_g^1.25 F_L (half round, l/s and mm²)',
  symbols: [
    { symbol: 'i', meaning: 'heaviest rain', kind: 'rain-rate' },
    { symbol: 'A', meaning: 'roof on plan that drains there', kind: 'area' },
    { symbol: 'Q_L', meaning: 'what a level gutter carries', kind: 'flow' },
    { symbol: 'A_g', meaning: 'cross section of the gutter', kind: 'area' },
  ],
  sources: ['rational-method', 'en12056-3:5.1'],
  leavesOut:
    'The fall of the gutter, downpipes, leaves, wind that blows rain onto one side, a neighbour that is larger.',
  mayBeAccepted: 'Where water may spill over without harm.',
  run,
  levers: (input, finding): readonly Lever[] => {
    const gutter = input.shelter.gutters?.find((entry) => entry.id === finding.part);
    if (gutter?.across === undefined) return [];
    const { across, depth, origin } = gutter;
    const larger = (word: 'across' | 'depth', from: number, said: string): Lever => ({
      type: 'number',
      from,
      towards: Math.max(0.4, from),
      steps: { metric: 0.01, us: 0.0254 },
      title: (value) => ['Make the gutter ', measured(value, 'length'), said],
      edits: (value) => [setQuantity(origin, word, value, 'length')],
    });
    return [
      larger('across', across, ' wide'),
      ...(depth === undefined ? [] : [larger('depth', depth, ' deep')]),
    ];
  },
};
