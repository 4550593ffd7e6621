import { type GroundResult, groundAllowedAt } from '@tautline/loads';
import type { Site } from '@tautline/shelter';
import type { Reaction, Response } from '@tautline/structure';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import { type FrameFoot, frameFeet, worstUnder } from '../feet.ts';
import type { Finding } from '../finding.ts';
import type { NoHold } from '../ground.ts';
import { footSideways } from '../ground-sideways.ts';
import { given, measured, step } from '../judge.ts';
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
  const push = Math.abs(reaction.horizontal) * held.frames;
  const hold = holdOf(site, held, reaction, load);
  if ('reason' in hold) return hold;
  const allowed = groundAllowedAt(hold, site.basis);
  return {
    // Less than a newton is rounding, and has no height to act at.
    utilisation: push < 1 ? 0 : push / Math.max(allowed, 1e-6),
    loadCase: load.title,
    tell: () => tell(site, held, reaction, load.title, hold, allowed),
  };
}

function holdOf(
  site: Site,
  { foot, owner, frames }: FrameFoot,
  reaction: Reaction,
  load: Response['load'],
): GroundResult | NoHold {
  return footSideways(foot, owner.member, site, {
    push: Math.abs(reaction.horizontal) * frames,
    moment: reaction.moment * frames,
    lift: -reaction.vertical * frames,
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
  { soil }: Site,
  { owner, noun, frames }: FrameFoot,
  reaction: Reaction,
  loadCase: string,
  hold: GroundResult,
  allowed: number,
): Told {
  const push = Math.abs(reaction.horizontal) * frames;
  const moment = Math.abs(reaction.moment) * frames;
  return {
    demand: measured(push, 'force'),
    capacity: measured(allowed, 'force'),
    message: [
      `Each ${noun} of ${owner.member.title} pushes its foot sideways with `,
      measured(push, 'force'),
      ...(moment > 1 ? [' and turns it with ', measured(moment, 'moment')] : []),
      ` under ${loadCase}; in ${soil} the foot may be counted on for `,
      measured(allowed, 'force'),
      '.',
    ],
    source: hold.source,
    steps: [
      step(
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
        'what the soil holds at the height e = M / H with its factor of safety, or the stub with its own bending limit, the lesser',
      kind: 'force',
    },
  ],
  sources: ['frame', 'broms:1964a', 'broms:1964b', 'ibc2018:1807.3', 'ibc2018:1806.3.4', 'ibc2018:1806.2'],
  leavesOut:
    'Soaked or freshly dug ground, feet close together, slow leaning of stubs in clay over years, ground that slopes, the lean of a stub, what baseboards and the end of the bow on the ground add.',
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
