import { type Duration, groundAllowedAt } from '@tautline/loads';
import type { Site } from '@tautline/shelter';
import type { Reaction, Response } from '@tautline/structure';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import { type FrameFoot, frameFeet, worstReaction } from '../feet.ts';
import type { Finding, Found } from '../finding.ts';
import { footSideways } from '../ground-sideways.ts';
import { given, judge, measured, notChecked, step } from '../judge.ts';
import { deeper, inConcrete, tiedHeads } from '../levers.ts';
import { setQuantity } from '../slots.ts';

/** Push on one foot as share of what the ground allows there; undefined where that is not covered. */
export function sidewaysUse(
  site: Site,
  held: FrameFoot,
  reaction: Reaction,
  stay: Duration,
): number | undefined {
  const push = Math.abs(reaction.horizontal) * held.frames;
  if (push < 1) return 0;
  const hold = footSideways(held.foot, held.owner.member, site, {
    push,
    moment: reaction.moment * held.frames,
    lift: -reaction.vertical * held.frames,
    stay,
  });
  return 'reason' in hold ? undefined : push / Math.max(groundAllowedAt(hold, site.basis), 1e-6);
}

function run(input: CheckInput): Found[] {
  const { site } = input.shelter;
  return frameFeet(input.shelter).map((held) => {
    const { foot, owner, noun, frames } = held;
    if (!input.frame.ok) return notChecked(foot, input.frame.reason);
    const worst = worstReaction(
      input.frame.analysis.responses,
      foot.id,
      (reaction, response) =>
        // Where the hold is not covered the largest push says so below.
        sidewaysUse(site, held, reaction, stayOf(response)) ?? Math.abs(reaction.horizontal),
    );
    if (worst === undefined) return notChecked(foot, 'the frame gives way before its feet can be judged');
    return onFoot(site, held, owner.member.title, noun, worst.reaction, worst.response, frames);
  });
}

const stayOf = ({ load }: Response): Duration => load.duration;

function onFoot(
  site: Site,
  held: FrameFoot,
  title: string,
  noun: string,
  reaction: Reaction,
  response: Response,
  frames: number,
): Found {
  const { foot } = held;
  const push = Math.abs(reaction.horizontal) * frames;
  const moment = Math.abs(reaction.moment) * frames;
  const hold = footSideways(foot, held.owner.member, site, {
    push,
    moment,
    lift: -reaction.vertical * frames,
    stay: stayOf(response),
  });
  if ('reason' in hold) return notChecked(foot, hold.reason);
  const allowed = groundAllowedAt(hold, site.basis);
  return judge({
    part: foot,
    utilisation: push / Math.max(allowed, 1e-6),
    demand: measured(push, 'force'),
    capacity: measured(allowed, 'force'),
    loadCase: response.load.title,
    message: [
      `Each ${noun} of ${title} pushes its foot sideways with `,
      measured(push, 'force'),
      ...(moment > 1 ? [' and turns it with ', measured(moment, 'moment')] : []),
      ` under ${response.load.title}; in ${site.soil} the foot may be counted on for `,
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
        [given('M', 'bending at the ground', moment, 'moment')],
        moment / Math.max(push, 1e-9),
        'length',
        'statics',
      ),
      ...hold.steps,
    ],
  });
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
  run,
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
