import type { CableEnd, PostLoad } from '@tautline/structure';
import { stayStep, whyAtTheEnd } from '../cable-end.ts';
import type { Check, CheckInput, Lever } from '../check.ts';
import { type FrameFoot, feetOf, frameFeet, postWeight, worstReaction } from '../feet.ts';
import type { Finding, Found } from '../finding.ts';
import { boardsUnder, footSinking } from '../ground-sinking.ts';
import { given, judge, measured, notChecked, step } from '../judge.ts';
import { loadedRails } from '../rails.ts';
import { setQuantity } from '../slots.ts';

interface Pressed {
  readonly held: FrameFoot;
  readonly load: number;
  readonly loadCase: string;
  /** The end of a cable that presses the post down. */
  readonly end?: CableEnd;
}

/** Feet of frames, and of the posts under a ridge or an inner line, with what presses them down. */
function pressed(input: CheckInput): (Pressed | Found)[] {
  const { shelter } = input;
  if (!input.frame.ok) {
    const { reason } = input.frame;
    return feetOf(shelter).map((foot) => notChecked(foot, reason));
  }
  const { responses } = input.frame.analysis;
  const feet: (Pressed | Found)[] = frameFeet(shelter).map((held) => {
    const worst = worstReaction(responses, held.foot.id, (reaction) => reaction.vertical);
    return worst === undefined
      ? notChecked(held.foot, 'the frame gives way before its feet can be judged')
      : {
          held,
          load: Math.max(0, worst.value) * held.frames,
          loadCase: worst.response.load.title,
        };
  });
  for (const { rail, demand, post: noun } of loadedRails(shelter, input.frame.analysis)) {
    const { posts } = rail;
    if (posts === undefined || demand === undefined) continue;
    const end = mostDown(demand.ends ?? []);
    const { down, loadCase } = mostDown([demand.post, ...(end === undefined ? [] : [end])])!;
    feet.push({
      held: { foot: posts.foot, owner: posts, noun, frames: 1 },
      load: down + postWeight(posts),
      loadCase,
      ...(end !== undefined && end.down === down ? { end } : {}),
    });
  }
  return feet;
}

const mostDown = <T extends PostLoad>(loads: readonly T[]): T | undefined =>
  loads.reduce<T | undefined>(
    (worst, load) => (worst === undefined || load.down > worst.down ? load : worst),
    undefined,
  );

function run(input: CheckInput): Found[] {
  const { site } = input.shelter;
  const boards = boardsUnder(input.shelter);
  return pressed(input).map((entry) => {
    if ('verdict' in entry) return entry;
    const { held, load, loadCase, end } = entry;
    const hold = footSinking(held.foot, held.owner.member, site, boards);
    if ('reason' in hold) return notChecked(held.foot, hold.reason);
    return judge({
      part: held.foot,
      utilisation: load / Math.max(hold.allowed, 1e-6),
      demand: measured(load, 'force'),
      capacity: measured(hold.allowed, 'force'),
      loadCase,
      message: [
        `Each ${held.noun}'s foot is pressed down with `,
        measured(load, 'force'),
        ` under ${loadCase}; in ${site.soil}, ${hold.what} may carry `,
        measured(hold.allowed, 'force'),
        '.',
        ...(end === undefined ? [] : whyAtTheEnd(end)),
      ],
      source: hold.source,
      steps: [
        step(
          'V',
          'load on one foot',
          'from the frame analysis',
          [given('n', 'frames per foot', held.frames, 'ratio')],
          load,
          'force',
          'frame',
        ),
        ...(end === undefined ? [] : [stayStep(end)]),
        ...hold.steps,
      ],
    });
  });
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
  leavesOut: 'Slow settling, soaked ground, frost, fresh fill, a flat stone or block put under the post.',
  mayBeAccepted: 'When each foot stands on a stone, block or collar that the spec does not name.',
  run,
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
