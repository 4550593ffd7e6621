/** The laws: what must hold between a shelter and the same shelter changed. */
import type { Evaluation } from '@tautline/checks';
import { originOf, type SpecValue } from '@tautline/shelter';
import { disagreements } from '../checks/disagreements.ts';
import { balances } from './balance.ts';
import {
  inShelter,
  reordered,
  scaled,
  scaledBy,
  siteNumber,
  siteWord,
  stockScaled,
  without,
} from './change.ts';
import { type Break, type Law, neverLower, same, spec } from './law.ts';
import { judged, type Subject } from './subject.ts';

type Quantity = SpecValue & { readonly type: 'quantity' };
const origin = originOf('nowhere');
const none = (kind: Quantity['kind'], si = 0): Quantity => ({ type: 'quantity', si, kind, origin });

const weaker = (before: Evaluation, after: Evaluation): Break[] => neverLower(before, after);
const stronger =
  (of?: readonly string[]) =>
  (before: Evaluation, after: Evaluation): Break[] =>
    neverLower(after, before, of === undefined ? {} : { of: new Set(of) });

/** The ground lets go of the foot, or gives under it. */
const feet = ['pull-out', 'overturning', 'sliding', 'lateral-foot', 'foot-bearing'];

/** Not a number, or one too large to mean anything, and nothing in words about it. */
function senseless({ findings, gusts }: Evaluation): Break[] {
  const wild = findings.filter(
    ({ utilisation = 0, message }) =>
      !(utilisation <= 1000) &&
      !message.some(
        (piece) =>
          typeof piece === 'string' && /more than|none|nothing|no hold|any wind|without wind/.test(piece),
      ),
  );
  const told = wild.map(({ id, part, utilisation }) => ({
    check: id,
    part,
    told: `a use of ${utilisation}`,
  }));
  const off = gusts?.filmOff?.gust;
  return off === undefined || off > 0
    ? told
    : [...told, { check: 'gusts', part: 'film', told: `film off at ${off} m/s` }];
}

const balanceLostInCalm = ({ failures }: NonNullable<Evaluation['gusts']>): boolean =>
  failures.some(({ check, gust }) => check === 'frame-gives-way' && gust === 0);

/** Not those of a ridge: one that spans further is softer, and leaves more to the bows. */
const postsApart = (subject: Subject): Subject | undefined =>
  inShelter(subject, (node, path) =>
    path.join(' ') === 'posts' && node.word === 'posts' ? (scaledBy(node, 'spaced', 1.25) ?? node) : node,
  );

const on = (subject: Subject, day: string): Evaluation | undefined => judged(subject, day);

export const laws: readonly Law[] = [
  {
    name: 'what fails in the wind of the site is ranked below its gust, and nothing else is',
    // Known fault: where the frame finds no balance without wind, the pull on its feet in wind is not ranked.
    breaks: (before) =>
      before.gusts === undefined || balanceLostInCalm(before.gusts)
        ? []
        : disagreements(before).map((told) => ({ check: told.split(' ')[0]!, part: 'part', told })),
    exceptions: [],
  },
  { name: 'a house makes sense of every number', breaks: (before) => senseless(before), exceptions: [] },
  { name: 'what the ground gives balances the loads', breaks: (before) => balances(before), exceptions: [] },
  {
    name: 'a faster gust never lowers a use',
    changed: spec((one) => siteNumber(one, 'gust', none('speed'), (gust) => 1.3 * gust)),
    breaks: (before, after) => neverLower(before, after, { slack: 0.01 }),
    exceptions: [],
  },
  {
    name: 'more snow never lowers the largest use',
    changed: spec((one) => siteNumber(one, 'snow', none('pressure'), (snow) => snow + 400)),
    breaks: weaker,
    exceptions: [],
  },
  {
    name: 'hotter never makes stronger',
    changed: spec((one) => siteNumber(one, 'hottest', none('temperature', 60), (hot) => hot + 10)),
    breaks: weaker,
    exceptions: [],
  },
  {
    name: 'older never makes stronger',
    changed: (one) => on(one, '2028-11-25'),
    breaks: weaker,
    exceptions: [
      { check: 'storm-order', reason: 'a film that grows old goes sooner, as one meant to go first should' },
    ],
  },
  {
    name: 'ground that drains is never weaker than soaked ground',
    changed: spec((one) =>
      siteWord(one, 'soil', 'wet', 'drained', { value: { type: 'word', word: 'loam', origin } }),
    ),
    // Where the ground gives it also holds the frame stiffer, which draws more bending to the frame.
    breaks: stronger(feet),
    exceptions: [],
  },
  {
    name: 'a heavier crop never lowers the largest use',
    seldom: true,
    changed: spec((one) => scaled(one, ['crop hung'], 1.4)),
    // In a wind that lifts the crop holds the roof down a little.
    breaks: (before, after) => neverLower(before, after, { slack: 0.01 }),
    exceptions: [],
  },
  {
    name: 'bows and rafters further apart never lower the largest use',
    changed: spec((one) => scaled(one, ['bows spaced', 'rafters spaced'], 1.2)),
    breaks: (before, after) =>
      neverLower(before, after, {
        of: new Set(['bow-buckling', 'bow-deflection', 'over-span']),
        part: /^(bows|rafters)/,
      }),
    exceptions: [],
  },
  {
    name: 'posts further apart never lower the largest use',
    changed: spec((one) => postsApart(one)),
    breaks: (before, after) =>
      neverLower(before, after, {
        of: new Set(['rail-span', 'post-buckling', ...feet]),
        part: /posts|rail/,
        slack: 0.01,
      }),
    exceptions: [],
  },
  {
    name: 'a deeper foot never holds less',
    changed: spec((one) => scaled(one, ['foot deep'], 1.25)),
    breaks: stronger(feet),
    exceptions: [],
  },
  {
    name: 'a wider foot never holds less',
    changed: spec((one) => scaled(one, ['foot across'], 1.25)),
    breaks: stronger(feet),
    exceptions: [],
  },
  {
    name: 'a heavier foot never holds less',
    seldom: true,
    changed: spec((one) => scaled(one, ['foot weighs'], 1.25)),
    breaks: stronger(['pull-out', 'overturning', 'sliding']),
    exceptions: [],
  },
  {
    name: 'a thicker wall of pipe never makes weaker',
    changed: spec((one) => stockScaled(one, 'pipe', 'wall', 1.2)),
    breaks: (before, after) =>
      // It is heavier, too, and where its own weight is all that counts, as weak for it as it was.
      neverLower(after, before, {
        of: new Set(['bow-buckling', 'bow-deflection', 'purlin-span', 'over-span']),
        slack: 0.03,
      }),
    exceptions: [],
  },
  {
    name: 'a tie, guy or brace never weakens the frame',
    changed: spec((one) => without(one, ['ties', 'guys', 'braces'])),
    breaks: (before, after) =>
      neverLower(before, after, {
        of: new Set(['bow-buckling', 'bow-deflection', 'post-buckling', 'over-span']),
      }),
    exceptions: [],
  },
  {
    name: 'the order of facts in a block changes nothing',
    changed: spec(reordered),
    breaks: same,
    exceptions: [],
  },
  {
    name: 'closer fastenings never hold less',
    changed: spec((one) =>
      inShelter(one, (node, path) => {
        const value = node.slots['value'];
        if (path.at(-1) !== 'fastened' || value?.type !== 'quantity') return node;
        return { ...node, slots: { ...node.slots, value: { ...value, si: value.si * 0.8 } } };
      }),
    ),
    breaks: stronger(['fastening-pull', 'wall-cover', 'film-stress']),
    exceptions: [],
  },
];
