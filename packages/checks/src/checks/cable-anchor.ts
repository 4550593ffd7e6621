import { groundAllowedAt } from '@tautline/loads';
import { heldFaster, pulledLess } from '../anchor-levers.ts';
import { stayStep, upwardPull } from '../cable-end.ts';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import type { Finding, Found } from '../finding.ts';
import { footUplift } from '../ground.ts';
import { given, judge, measured, notChecked, step } from '../judge.ts';

function run({ shelter, frame }: CheckInput): Found[] {
  const { ridge, site } = shelter;
  if (ridge?.member.kind !== 'cable' || ridge.endAnchor === undefined) return [];
  const anchor = ridge.endAnchor;
  if (!frame.ok) return [notChecked(anchor, frame.reason)];
  const ends = frame.analysis.ridge?.ends ?? [];
  const end = ends.reduce<(typeof ends)[number] | undefined>(
    (worst, one) => (worst === undefined || one.stay > worst.stay ? one : worst),
    undefined,
  );
  if (end === undefined) return [notChecked(anchor, 'the frames bring no load to the cable in this model')];
  const hold = footUplift(anchor, undefined, site);
  if ('reason' in hold) return [notChecked(anchor, hold.reason)];
  const up = upwardPull(end);
  const allowed = groundAllowedAt(hold, site.basis);
  return [
    judge({
      part: anchor,
      utilisation: up / Math.max(allowed, 1e-6),
      demand: measured(up, 'force'),
      capacity: measured(allowed, 'force'),
      loadCase: end.loadCase,
      related: [{ origin: ridge.origin, message: 'the cable it holds' }],
      message: [
        'The ridge cable, pulled to ',
        measured(end.pull, 'force'),
        ` under ${end.loadCase}, runs down to its anchor at `,
        measured(end.slope, 'angle'),
        ' and lifts it with ',
        measured(up, 'force'),
        `; in ${site.soil} the anchor may be counted on for `,
        measured(allowed, 'force'),
        '.',
      ],
      source: hold.source,
      steps: [
        stayStep(end),
        step(
          'V',
          'upright share of that pull',
          'V = S sin α',
          [given('α', 'slope down to the anchor', end.slope, 'angle')],
          up,
          'force',
          'statics',
        ),
        ...hold.steps,
      ],
    }),
  ];
}

export const cableAnchor: Check = {
  id: 'cable-anchor',
  title: 'End anchor of a cable ridge',
  asks: 'Does the anchor at each end of a ridge cable stay in the ground under the pull of the cable?',
  matters:
    'When an end anchor creeps, the cable sags along the whole house and every bow comes down with it.',
  formula: 'u = S sin α / R_allowable, S = H / cos α',
  symbols: [
    { symbol: 'H', meaning: 'level pull of the cable', kind: 'force' },
    { symbol: 'S', meaning: 'pull of the part that runs down to the anchor', kind: 'force' },
    { symbol: 'α', meaning: 'slope at which it runs down', kind: 'angle' },
    { symbol: 'R_allowable', meaning: 'lift the anchor holds, with its factor of safety', kind: 'force' },
  ],
  sources: ['parabola', 'statics'],
  leavesOut:
    'The level share of the pull, which ground in front of a deadman or screw takes; clips and turnbuckles at the anchor; creep of wet clay; anchors of guys (racking along the house, guy-anchor at its sides).',
  mayBeAccepted: 'When the anchor held a pull test of the demand with the factor of safety.',
  run,
  levers,
};

/** Deeper, a wider anchor, a buried log instead, then less pull in the cable. */
function levers({ shelter: { ridge } }: CheckInput, _: Finding, stock: Stock): Lever[] {
  if (ridge?.endAnchor === undefined) return [];
  return [...heldFaster(ridge.endAnchor, 'at each end', stock), ...pulledLess(ridge, 'cable')];
}
