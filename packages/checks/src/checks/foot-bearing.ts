import type { CableEnd, PostLoad } from '@tautline/structure';
import { stayStep, whyAtTheEnd } from '../cable-end.ts';
import type { Check, CheckInput, Lever } from '../check.ts';
import { type FrameFoot, feetOf, frameFeet, postWeight, worstUnder } from '../feet.ts';
import type { Finding } from '../finding.ts';
import { groundNamed, holdUse } from '../ground.ts';
import { boardsUnder, footSinking, type Sinking } from '../ground-sinking.ts';
import { given, inWords, measured } from '../judge.ts';
import { type FrameLimit, type Limit, type Told, type Use, unknown } from '../limit.ts';
import { railDemands, rowsUnder } from '../rails.ts';
import { setQuantity } from '../slots.ts';

function limits(input: CheckInput): Limit[] {
  const { shelter } = input;
  return [
    ...frameFeet(shelter).map((held) =>
      ofFoot(input, held, (pressed) => ({
        use: (response) =>
          worstUnder(response, held.foot.id, ({ vertical }) =>
            pressed(Math.max(0, vertical) * held.frames, response.load.title),
          ),
      })),
    ),
    ...rowsUnder(shelter).map(({ posts, rail, noun }) =>
      ofFoot(input, { foot: posts.foot, owner: posts, noun, frames: 1 }, (pressed) => {
        const { inResponse, calm } = railDemands(input, rail);
        const under = (demand: NonNullable<ReturnType<typeof inResponse>>): Use => {
          const end = mostDown(demand.ends ?? []);
          const { down, loadCase } = mostDown<PostLoad>([demand.post, ...(end === undefined ? [] : [end])])!;
          return pressed(down + postWeight(posts), loadCase, end?.down === down ? end : undefined);
        };
        return {
          use: (response) => {
            const demand = inResponse(response);
            return demand && under(demand);
          },
          calm: calm.map(under),
        };
      }),
    ),
  ];
}

const mostDown = <T extends PostLoad>(loads: readonly T[]): T | undefined =>
  loads.reduce<T | undefined>(
    (worst, load) => (worst === undefined || load.down > worst.down ? load : worst),
    undefined,
  );

/** Load on one foot, N, and the end of a cable that presses it down, in words and against what the ground carries. */
type Pressed = (load: number, loadCase: string, end?: CableEnd) => Use;

function ofFoot(
  { shelter }: CheckInput,
  held: FrameFoot,
  asked: (pressed: Pressed) => Pick<FrameLimit, 'use' | 'calm'>,
): Limit {
  const { foot, owner, noun } = held;
  const hold = footSinking(foot, owner.member, shelter.site, boardsUnder(shelter));
  if ('reason' in hold) return unknown(foot, hold.reason);
  return {
    by: 'frame',
    part: foot,
    gives: `the foot of the ${noun} sinks`,
    sacrificial: foot.sacrificial === true || owner.sacrificial === true,
    onTheDay: true,
    ...asked((load, loadCase, end) => ({
      utilisation: holdUse(load, hold.allowed),
      loadCase,
      tell: () => tell(held, groundNamed(shelter.site), load, hold, loadCase, end),
    })),
  };
}

function tell(
  { noun, frames }: FrameFoot,
  ground: string,
  load: number,
  hold: Sinking,
  loadCase: string,
  end: CableEnd | undefined,
): Told {
  return {
    demand: measured(load, 'force'),
    capacity: measured(hold.allowed, 'force'),
    message: [
      `Each ${noun}'s foot is pressed down with `,
      measured(load, 'force'),
      ` under ${loadCase}; in ${ground}, ${hold.what} may carry `,
      measured(hold.allowed, 'force'),
      '.',
      ...(end === undefined ? [] : whyAtTheEnd(end)),
    ],
    source: hold.source,
    steps: [
      inWords(
        'V',
        'load on one foot',
        'from the frame analysis',
        [given('n', 'frames per foot', frames, 'ratio')],
        load,
        'force',
        'frame',
      ),
      ...(end === undefined ? [] : [stayStep(end)]),
      ...hold.steps,
    ],
  };
}

export const footBearing: Check = {
  id: 'foot-bearing',
  title: 'Sinking of the feet',
  asks: 'Does the ground carry each foot, or does it sink under crop, water, snow and wind?',
  matters: 'A foot that sinks slackens the film, tilts the gutter and bends the ridge.',
  formula: 'u = V / V_allowed',
  symbols: [
    { symbol: 'V', meaning: 'load that presses one foot down', kind: 'force' },
    {
      symbol: 'V_allowed',
      meaning: 'what underside, point and side of the foot carry, with their factors of safety',
      kind: 'force',
    },
  ],
  sources: ['frame', 'meyerhof:1963', 'ibc2018:1806.2', 'api-rp2a:alpha', 'navfac-dm7:beta'],
  leavesOut: 'Slow settling, frost, fresh fill, a flat stone or block put under the post.',
  mayBeAccepted: 'When each foot stands on a stone, block or collar that the spec does not name.',
  needs: 'frame',
  appliesTo: (shelter) => feetOf(shelter).length > 0,
  limits,
  levers,
};

function levers(input: CheckInput, finding: Finding): Lever[] {
  const foot = feetOf(input.shelter).find(({ id }) => id === finding.part);
  if (foot === undefined || foot.kind === 'screw' || foot.kind === 'deadman') return [];
  if (foot.across !== undefined && ['concrete', 'bearing', 'ballast'].includes(foot.kind)) {
    const { across } = foot;
    return [
      {
        type: 'number',
        from: across,
        towards: Math.max(0.8, across),
        steps: { metric: 0.05, us: 0.0254 },
        title: (value) => ['Make the footing ', measured(value, 'length'), ' across'],
        edits: (value) => [setQuantity(foot.origin, 'across', value, 'length')],
      },
    ];
  }
  return [
    {
      type: 'number',
      from: foot.driven,
      towards: Math.max(1.5, foot.driven),
      steps: { metric: 0.05, us: 0.0254 },
      title: (value) => ['Go ', measured(value, 'length'), ' into the ground'],
      edits: (value) => [setQuantity(foot.origin, 'deep', value, 'length')],
    },
  ];
}
