import { type GroundResult, groundAllowedAt } from '@tautline/loads';
import type { Brace } from '@tautline/shelter';
import { heldFaster, pulledLess } from '../anchor-levers.ts';
import type { Check, CheckInput } from '../check.ts';
import { footUplift, groundNamed } from '../ground.ts';
import { type GuyPull, guyLimit, guySlope, sideGuys } from '../guys.ts';
import { given, measured, step } from '../judge.ts';
import { type Limit, type Told, unknown } from '../limit.ts';

function limits(input: CheckInput): Limit[] {
  const { site } = input.shelter;
  return sideGuys(input.shelter).flatMap((guy): Limit[] => {
    const { foot, member } = guy;
    if (foot === undefined) return [];
    const hold = footUplift(foot, member.kind === 'cable' ? undefined : member, site, 'gust');
    if ('reason' in hold) return [unknown(foot, hold.reason)];
    const slope = guySlope(guy);
    const allowed = groundAllowedAt(hold, site.basis);
    return [
      guyLimit(input, guy, {
        part: foot,
        gives: 'the anchor of the side guy is pulled up',
        sacrificial: guy.sacrificial === true || foot.sacrificial === true,
        mayTake: allowed / Math.sin(slope),
        tell: (pulled) => tell(guy, slope, groundNamed(site), pulled, hold, allowed),
      }),
    ];
  });
}

function tell(
  guy: Brace,
  slope: number,
  ground: string,
  pulled: GuyPull,
  hold: GroundResult,
  allowed: number,
): Told {
  const up = pulled.pull * Math.sin(slope);
  return {
    demand: measured(up, 'force'),
    capacity: measured(allowed, 'force'),
    related: [{ origin: guy.origin, message: 'the guy it holds' }],
    message: [
      ...pulled.told,
      ', and lifts its anchor with ',
      measured(up, 'force'),
      `; in ${ground} the anchor may be counted on for `,
      measured(allowed, 'force'),
      '.',
    ],
    source: hold.source,
    steps: [
      ...pulled.steps,
      step(
        'V',
        'upright share of that pull',
        'V = T sin α',
        [
          given('T', 'pull of the guy', pulled.pull, 'force'),
          given('α', 'slope down to the anchor', slope, 'angle'),
        ],
        up,
        'force',
        'statics',
      ),
      ...hold.steps,
    ],
  };
}

export const guyAnchor: Check = {
  id: 'guy-anchor',
  title: 'Anchors of side guys',
  asks: 'Does the anchor of each side guy stay in the ground under the pull of its guy?',
  matters:
    'A guy is no stronger than its anchor, and an anchor that creeps leaves the guy slack in the next gust.',
  formula: 'u = T sin α / R_allowable',
  symbols: [
    { symbol: 'T', meaning: 'pull of the guy, as for its wire (guy-pull)', kind: 'force' },
    { symbol: 'α', meaning: 'slope at which it runs down', kind: 'angle' },
    { symbol: 'R_allowable', meaning: 'lift the anchor holds, with its factor of safety', kind: 'force' },
  ],
  sources: ['statics', 'frame', 'house'],
  leavesOut:
    'The level share of the pull, which ground in front of a deadman or screw takes; anchors of guys along the house (racking) and of ridge cables (cable-anchor); creep of wet clay, anchors close to each other or to a ditch.',
  mayBeAccepted: 'When the anchor held a pull test of the demand with the factor of safety.',
  needs: 'frame',
  appliesTo: (shelter) => sideGuys(shelter).some(({ foot }) => foot !== undefined),
  limits,
  levers: ({ shelter }, finding, stock) => {
    const guy = sideGuys(shelter).find(({ foot }) => foot?.id === finding.part);
    if (guy?.foot === undefined) return [];
    return [...heldFaster(guy.foot, 'for each guy', stock), ...pulledLess(guy, 'guys')];
  },
};
