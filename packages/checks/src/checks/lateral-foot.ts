import { groundAllowedAt, type SidewaysHold } from '@tautline/loads';
import type { Site } from '@tautline/shelter';
import type { Reaction, Response } from '@tautline/structure';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import { type FrameFoot, frameFeet, worstUnder } from '../feet.ts';
import type { Finding } from '../finding.ts';
import { groundNamed, holdsNothing, holdUse, type NoHold } from '../ground.ts';
import { footMoment, footSideways } from '../ground-sideways.ts';
import { given, inWords, measured, step } from '../judge.ts';
import { deeper, inConcrete, tiedHeads } from '../levers.ts';
import { type Limit, type Told, type Use, unknown } from '../limit.ts';
import { setQuantity } from '../slots.ts';

/** Push on one foot against what the ground holds it with there. */
export function sidewaysUse(
  site: Site,
  held: FrameFoot,
  reaction: Reaction,
  load: Response['load'],
): Use | NoHold {
  const { push, moment } = pushOn(held, reaction);
  const hold = holdOf(site, held, reaction, load);
  if ('reason' in hold) return hold;
  const allowed = groundAllowedAt(hold, site.basis);
  return {
    utilisation: push < leastPush && moment < leastMoment ? 0 : holdUse(push, allowed),
    loadCase: load.title,
    tell: () => tell(site, held, reaction, load, hold, allowed),
  };
}

/** Push (N) and bending (N·m) below which a foot is asked for nothing: own choice. */
const leastPush = 1;
const leastMoment = 1;

/** Push and bending at the ground that one foot takes. A bending without a push counts as a push far up. */
function pushOn({ frames }: FrameFoot, reaction: Reaction): { push: number; moment: number } {
  return {
    push: Math.max(1e-3, Math.abs(reaction.horizontal) * frames),
    moment: Math.abs(reaction.moment) * frames,
  };
}

function holdOf(
  site: Site,
  held: FrameFoot,
  reaction: Reaction,
  load: Response['load'],
): SidewaysHold | NoHold {
  return footSideways(held.foot, held.owner.member, site, {
    ...pushOn(held, reaction),
    lift: -reaction.vertical * held.frames,
    stay: load.duration,
  });
}

function limits({ shelter, frame }: CheckInput): Limit[] {
  if (!frame.ok) return [];
  const { responses } = frame.analysis;
  const { site } = shelter;
  return frameFeet(shelter).map((held): Limit => {
    const { foot, owner, noun } = held;
    // A foot that rests on the ground is held where something presses it: whether it is covered can turn on the load.
    const gap = responses
      .filter(({ status, load }) => status === 'holds' && load.use !== 'service')
      .flatMap(({ reactions, load }) =>
        reactions
          .filter(({ part, horizontal }) => part === foot.id && Math.abs(horizontal) * held.frames >= 1)
          .map((reaction) => holdOf(site, held, reaction, load)),
      )
      .find((hold) => 'reason' in hold);
    if (gap !== undefined && 'reason' in gap) return unknown(foot, gap.reason);
    return {
      by: 'frame',
      part: foot,
      gives: `the foot of the ${noun} is pushed over`,
      sacrificial: foot.sacrificial === true || owner.sacrificial === true,
      onTheDay: true,
      use: (response) =>
        worstUnder(response, foot.id, (reaction) => {
          const use = sidewaysUse(site, held, reaction, response.load);
          return 'reason' in use ? undefined : use;
        }),
    };
  });
}

function tell(
  site: Site,
  held: FrameFoot,
  reaction: Reaction,
  load: Response['load'],
  hold: SidewaysHold,
  allowed: number,
): Told {
  const { foot, owner, noun, frames } = held;
  const { push, moment } = pushOn(held, reaction);
  const turning = footMoment(foot, owner.member, site, load.duration);
  return {
    demand: measured(push, 'force'),
    capacity: measured(allowed, 'force'),
    message: [
      `Each ${noun} of ${owner.member.title} pushes its foot sideways with `,
      measured(push, 'force'),
      ...(moment > 1 ? [' and turns it with ', measured(moment, 'moment')] : []),
      ` under ${load.title}; in ${groundNamed(site)} the foot `,
      ...(holdsNothing(push, allowed)
        ? ['cannot be counted on']
        : ['may be counted on for ', measured(allowed, 'force')]),
      '.',
      ...(hold.leastDepth === undefined
        ? []
        : [
            ' It is too shallow to be held by the ground around it, which takes ',
            measured(hold.leastDepth, 'length'),
            ' at least.',
          ]),
      ...(turning === undefined || moment <= turning
        ? []
        : [' It is held clamped, and its depth alone may hold ', measured(turning, 'moment'), '.']),
    ],
    source: hold.source,
    steps: [
      inWords(
        'H',
        'push of one foot, thrust of a sprung bow included',
        'from the frame analysis',
        [given('n', 'frames per foot', frames, 'ratio')],
        push,
        'force',
        'frame',
      ),
      step(
        'e',
        'height the push counts as acting at',
        'e = M / H',
        [given('M', 'bending at the ground', moment, 'moment'), given('H', 'push', push, 'force')],
        moment / Math.max(push, 1e-9),
        'length',
        'statics',
      ),
      ...hold.steps,
    ],
  };
}

export const lateralFoot: Check = {
  id: 'lateral-foot',
  title: 'Sideways hold of the feet',
  asks: 'Do the feet stay upright against the thrust of the bows and the push of the wind?',
  matters: 'A stub that leans outward lets the bow flatten, and a flat bow ponds and buckles.',
  formula: 'u = H / H_allowed',
  symbols: [
    { symbol: 'H', meaning: 'sideways push on one foot', kind: 'force' },
    {
      symbol: 'H_allowed',
      meaning:
        'what the soil holds at the height e = M / H, the larger of two published allowances; or the stub with its own bending limit, where that is less; at least what friction under it holds',
      kind: 'force',
    },
  ],
  sources: [
    'frame',
    'own:larger-allowance',
    'broms:1964a',
    'broms:1964b',
    'ibc2018:1807.3',
    'ibc2018:1806.3.4',
    'ibc2018:1806.2',
    'own:backfill-half',
    'stakes:saturated-half',
  ],
  leavesOut:
    'Fill that was not tamped in layers, feet close together, slow leaning of stubs in clay over years, ground that slopes, the lean of a stub, what baseboards and the end of the bow on the ground add.',
  mayBeAccepted: 'When baseboards or a tie across the house hold the two feet together.',
  needs: 'frame',
  appliesTo: (shelter) => frameFeet(shelter).length > 0,
  limits,
  levers,
};

/** Deeper, then wider, or in concrete. */
function levers(input: CheckInput, finding: Finding, stock: Stock): Lever[] {
  const held = frameFeet(input.shelter).find(({ foot }) => foot.id === finding.part);
  if (held === undefined) return [];
  const { foot } = held;
  if (foot.kind === 'ballast' || foot.kind === 'bearing') return [];
  const tied = tiedHeads(input.shelter);
  if (tied.length > 0) return tied;
  if (foot.kind !== 'concrete')
    return [deeper(foot), inConcrete(foot, [0.25, 0.3, 0.4, 0.5], [0.8, 1, 1.2], stock)];
  if (foot.across === undefined) return [deeper(foot)];
  const { across } = foot;
  return [
    deeper(foot),
    {
      type: 'number',
      from: across,
      towards: Math.max(0.6, across),
      steps: { metric: 0.05, us: 0.0254 },
      title: (value) => ['Make the concrete ', measured(value, 'length'), ' across'],
      edits: (value) => [setQuantity(foot.origin, 'across', value, 'length')],
    },
  ];
}
