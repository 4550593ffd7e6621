import { type GroundResult, groundAllowedAt } from '@tautline/loads';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import { type FrameFoot, feetOf, frameFeet, worstUnder } from '../feet.ts';
import type { Finding } from '../finding.ts';
import { footUplift, groundNamed, holdsNothing, holdUse } from '../ground.ts';
import { given, inWords, measured } from '../judge.ts';
import { deeper, inConcrete, wider } from '../levers.ts';
import { type FrameLimit, type Limit, type Told, type Use, unknown } from '../limit.ts';
import { railDemands, rowsUnder } from '../rails.ts';

function limits(input: CheckInput): Limit[] {
  const { shelter } = input;
  return [
    ...frameFeet(shelter).map((held) =>
      ofFoot(input, held, (lifted) => ({
        use: (response) =>
          worstUnder(response, held.foot.id, ({ vertical }) =>
            lifted(Math.max(0, -vertical) * held.frames, response.load.title),
          ),
      })),
    ),
    // Posts under a rail that the frames are tied down to.
    ...rowsUnder(shelter).flatMap(({ posts, rail, noun }) => {
      if (!rail.tied) return [];
      const { inResponse } = railDemands(input, rail);
      return [
        ofFoot(input, { foot: posts.foot, owner: posts, noun, frames: 1 }, (lifted) => ({
          use: (response) => {
            const demand = inResponse(response);
            return demand && lifted(demand.lift.up, response.load.title);
          },
        })),
      ];
    }),
  ];
}

/** Pull up on one foot, N, in words and against its hold. */
type Lifted = (pull: number, loadCase: string) => Use;

function ofFoot(
  { shelter: { site } }: CheckInput,
  held: FrameFoot,
  asked: (lifted: Lifted) => Pick<FrameLimit, 'use'>,
): Limit {
  const { foot, owner, noun } = held;
  const hold = footUplift(foot, owner.member, site, 'gust');
  if ('reason' in hold) return unknown(foot, hold.reason);
  const allowed = groundAllowedAt(hold, site.basis);
  return {
    by: 'frame',
    part: foot,
    gives: `the foot of the ${noun} is pulled up`,
    sacrificial: foot.sacrificial === true || owner.sacrificial === true,
    onTheDay: true,
    ...asked((pull, loadCase) => ({
      utilisation: holdUse(pull, allowed),
      loadCase,
      tell: () => tell(held, groundNamed(site), pull, hold, allowed, loadCase),
    })),
  };
}

function tell(
  { noun, frames }: FrameFoot,
  ground: string,
  pull: number,
  hold: GroundResult,
  allowed: number,
  loadCase: string,
): Told {
  return {
    demand: measured(pull, 'force'),
    capacity: measured(allowed, 'force'),
    message: [
      ...(pull > 0
        ? [`Wind pulls each ${noun}'s foot up with `, measured(pull, 'force'), ` under ${loadCase}`]
        : [`Nothing pulls a ${noun}'s foot up`]),
      `; in ${ground} the foot `,
      ...(holdsNothing(pull, allowed)
        ? ['cannot be counted on']
        : ['may be counted on for ', measured(allowed, 'force')]),
      '.',
    ],
    source: hold.source,
    steps: [
      inWords(
        'V',
        'pull up on one foot',
        'from the frame analysis',
        [given('n', 'frames per foot', frames, 'ratio')],
        pull,
        'force',
        'frame',
      ),
      ...hold.steps,
    ],
  };
}

export const pullOut: Check = {
  id: 'pull-out',
  title: 'Pull-out of the feet',
  asks: 'Does the ground hold each foot down against the lift of the wind?',
  matters: 'A film house weighs next to nothing and is shaped like a wing. What is not held down leaves.',
  formula: 'u = V / R_allowable',
  symbols: [
    { symbol: 'V', meaning: 'pull up on one foot', kind: 'force' },
    {
      symbol: 'R_allowable',
      meaning: 'what the ground holds, with its factor of safety',
      kind: 'force',
    },
  ],
  sources: [
    'frame',
    'api-rp2a:alpha',
    'navfac-dm7:beta',
    'ibc2018:1810.3.3.1.5',
    'stakes:saturated-half',
    'own:backfill-half',
    'own:loose-top',
  ],
  leavesOut:
    'Frost, the join between member and stub, groups of feet close together, a footing or collar keyed to a post in a hole, the firmness that stakes gain in the months after they were driven, and what they lose by standing aslant.',
  mayBeAccepted: 'When a pull test on the plot gave more than the demand, with the factor of safety.',
  needs: 'frame',
  appliesTo: (shelter) => feetOf(shelter).length > 0,
  limits,
  levers,
};

/** Deeper, then wider, then another kind of foot. */
function levers(input: CheckInput, finding: Finding, stock: Stock): Lever[] {
  const foot = feetOf(input.shelter).find(({ id }) => id === finding.part);
  if (foot === undefined) return [];
  const result: Lever[] = [];
  if (foot.kind !== 'bearing' && foot.kind !== 'ballast') {
    result.push(deeper(foot));
  }
  result.push(...wider(foot));
  if (foot.kind !== 'concrete') result.push(inConcrete(foot, [0.25, 0.3, 0.4, 0.5], [0.6, 0.8, 1], stock));
  return result;
}
