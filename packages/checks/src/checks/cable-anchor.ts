import { type GroundResult, groundAllowedAt } from '@tautline/loads';
import { type Foot, type Rail, railsUnder, type Shelter } from '@tautline/shelter';
import type { CableEnd } from '@tautline/structure';
import { heldFaster, pulledLess } from '../anchor-levers.ts';
import { stayStep, upwardPull } from '../cable-end.ts';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import type { Finding } from '../finding.ts';
import { footUplift, groundNamed, holdUse } from '../ground.ts';
import { given, measured, step } from '../judge.ts';
import { type Limit, type Told, type Use, unknown, worstOf } from '../limit.ts';
import { railDemands, railNoun } from '../rails.ts';

type Anchored = Rail & { readonly endAnchor: Foot };

/** Cables under the roof that run down to an anchor at each end. */
const anchored = (shelter: Shelter): readonly Anchored[] =>
  railsUnder(shelter).filter(
    (rail): rail is Anchored => rail.member.kind === 'cable' && rail.endAnchor !== undefined,
  );

function limits(input: CheckInput): Limit[] {
  const { site } = input.shelter;
  return anchored(input.shelter).map((rail): Limit => {
    const { endAnchor } = rail;
    const gusts = footUplift(endAnchor, undefined, site, 'gust');
    const stays = footUplift(endAnchor, undefined, site);
    if ('reason' in gusts) return unknown(endAnchor, gusts.reason);
    if ('reason' in stays) return unknown(endAnchor, stays.reason);
    const { inResponse, calm } = railDemands(input, rail);
    const atEnd = (end: CableEnd): Use => {
      const hold = end.duration === 'gust' ? gusts : stays;
      const allowed = groundAllowedAt(hold, site.basis);
      return {
        utilisation: holdUse(upwardPull(end), allowed),
        loadCase: end.loadCase,
        tell: () => tell(rail, groundNamed(site), end, hold, allowed),
      };
    };
    return {
      by: 'frame',
      part: endAnchor,
      gives: `the anchor of the ${railNoun(rail)} cable is pulled up`,
      sacrificial: rail.sacrificial === true || endAnchor.sacrificial === true,
      unasked: 'the frames bring no load to the cable in this model',
      use: (response) => worstOf((inResponse(response)?.ends ?? []).map(atEnd)),
      calm: calm.flatMap(({ ends = [] }) => ends.map(atEnd)),
    };
  });
}

function tell(rail: Rail, ground: string, end: CableEnd, hold: GroundResult, allowed: number): Told {
  const up = upwardPull(end);
  return {
    demand: measured(up, 'force'),
    capacity: measured(allowed, 'force'),
    related: [{ origin: rail.origin, message: 'the cable it holds' }],
    message: [
      `The ${railNoun(rail)} cable, pulled to `,
      measured(end.pull, 'force'),
      ` under ${end.loadCase}, runs down to its anchor at `,
      measured(end.slope, 'angle'),
      ' and lifts it with ',
      measured(up, 'force'),
      `; in ${ground} the anchor may be counted on for `,
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
  };
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
  needs: 'frame',
  appliesTo: (shelter) => anchored(shelter).length > 0,
  limits,
  levers,
};

/** Deeper, a wider anchor, a buried log instead, then less pull in the cable. */
function levers({ shelter }: CheckInput, { part }: Finding, stock: Stock): Lever[] {
  const rail = anchored(shelter).find(({ endAnchor }) => endAnchor.id === part);
  if (rail === undefined) return [];
  return [...heldFaster(rail.endAnchor, 'at each end', stock), ...pulledLess(rail, 'cable')];
}
