import { groundAllowedAt } from '@tautline/loads';
import { wordValue } from '@tautline/shelter';
import { staySlope } from '@tautline/structure';
import { stayStep } from '../cable-end.ts';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import type { Finding } from '../finding.ts';
import { footUplift } from '../ground.ts';
import { given, judge, measured, notChecked, step } from '../judge.ts';
import { deeper } from '../levers.ts';
import { setItem, setQuantity } from '../slots.ts';

const inch = 0.0254;

function run({ shelter, frame }: CheckInput): Finding[] {
  const { ridge, site } = shelter;
  if (ridge?.member.kind !== 'cable' || ridge.endAnchor === undefined) return [];
  const anchor = ridge.endAnchor;
  if (!frame.ok) return [notChecked(cableAnchor.id, anchor, frame.reason)];
  const ends = frame.analysis.ridge?.ends ?? [];
  const end = ends.reduce<(typeof ends)[number] | undefined>(
    (worst, one) => (worst === undefined || one.stay > worst.stay ? one : worst),
    undefined,
  );
  if (end === undefined)
    return [notChecked(cableAnchor.id, anchor, 'the frames bring no load to the cable in this model')];
  const hold = footUplift(anchor, undefined, site);
  if ('reason' in hold) return [notChecked(cableAnchor.id, anchor, hold.reason)];
  const up = end.stay * Math.sin(staySlope);
  const allowed = groundAllowedAt(hold, site.basis);
  return [
    judge({
      id: cableAnchor.id,
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
        measured(staySlope, 'angle'),
        ' (taken, not said) and lifts it with ',
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
          [given('α', 'slope down to the anchor, taken', staySlope, 'angle')],
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
    'The level share of the pull, which ground in front of a deadman or screw takes; clips and turnbuckles at the anchor; creep of wet clay; anchors of guys and braces (racking, and the whole house in space).',
  mayBeAccepted: 'When the anchor held a pull test of the demand with the factor of safety.',
  run,
  levers,
};

/** Depths a hole for a log is dug to, m. */
const holes = [0.9, 1.2, 1.5];

/** Deeper, a wider anchor, a buried log instead, then less pull in the cable. */
function levers({ shelter: { ridge } }: CheckInput, _: Finding, { items, system }: Stock): Lever[] {
  const anchor = ridge?.endAnchor;
  if (ridge === undefined || anchor === undefined) return [];
  const { origin } = anchor;
  const list: Lever[] = [deeper(anchor)];
  if (anchor.across !== undefined && anchor.kind !== 'screw')
    list.push({
      type: 'number',
      from: anchor.across,
      towards: Math.max(0.6, anchor.across),
      steps: { metric: 0.05, us: inch },
      title: (value) => ['Make the anchor ', measured(value, 'length'), ' across'],
      edits: (value) => [setQuantity(origin, 'across', value, 'length')],
    });
  const logs = items.filter((item) => item.kind === 'anchor' && item.form === 'plate');
  if (anchor.kind !== 'deadman')
    list.push({
      type: 'choice',
      options: holes
        .map((depth) => (system === 'us' ? Math.round(depth / inch) * inch : depth))
        .flatMap((depth) =>
          logs.map(({ id, title }) => ({
            title: [`Bury ${title} `, measured(depth, 'length'), ' deep at each end'],
            edits: [
              { type: 'replace' as const, node: origin, slots: { kind: wordValue('deadman', origin) } },
              setItem(origin, 'of', id),
              setQuantity(origin, 'driven', depth, 'length'),
            ],
          })),
        ),
    });
  if (ridge.tension !== undefined)
    list.push({
      type: 'number',
      from: ridge.tension,
      towards: ridge.tension / 4,
      // 0.1 kN, and 25 lbf (111.205 541 N)
      steps: { metric: 100, us: 111.205541 },
      title: (value) => ['Pull the cable to only ', measured(value, 'force')],
      edits: (value) => [setQuantity(ridge.origin, 'tension', value, 'force')],
    });
  return list;
}
