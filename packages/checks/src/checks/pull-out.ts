import { groundAllowedAt } from '@tautline/loads';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import { type FrameFoot, feetOf, frameFeet, worstReaction } from '../feet.ts';
import type { Finding, Found } from '../finding.ts';
import { footUplift } from '../ground.ts';
import { given, judge, measured, notChecked, step } from '../judge.ts';
import { deeper, inConcrete, wider } from '../levers.ts';
import { loadedRails } from '../rails.ts';

/** Feet with what pulls them up. */
interface Lifted {
  readonly held: FrameFoot;
  readonly pull: number;
  readonly loadCase: string;
}

/** Feet of frames and side posts, and of the posts under a rail that the frames are tied down to. */
function lifted(input: CheckInput): (Lifted | Found)[] {
  const { shelter, frame } = input;
  if (!frame.ok) {
    const { reason } = frame;
    return feetOf(shelter).map((foot) => notChecked(foot, reason));
  }
  const feet = frameFeet(shelter).map((held): Lifted | Found => {
    const worst = worstReaction(frame.analysis.responses, held.foot.id, ({ vertical }) => -vertical);
    return worst === undefined
      ? notChecked(held.foot, 'the frame gives way before its feet can be judged')
      : { held, pull: Math.max(0, worst.value) * held.frames, loadCase: worst.response.load.title };
  });
  const rows = loadedRails(shelter, frame.analysis).flatMap(({ rail, demand, post: noun }): Lifted[] => {
    const { posts, tied } = rail;
    if (posts === undefined || demand === undefined || !tied) return [];
    const { up, loadCase } = demand.lift;
    return [{ held: { foot: posts.foot, owner: posts, noun, frames: 1 }, pull: up, loadCase }];
  });
  return [...feet, ...rows];
}

function run(input: CheckInput): Found[] {
  const { site } = input.shelter;
  return lifted(input).map((entry) => {
    if ('verdict' in entry) return entry;
    const { held, pull, loadCase } = entry;
    const { foot, owner, noun, frames } = held;
    const hold = footUplift(foot, owner.member, site);
    if ('reason' in hold) return notChecked(foot, hold.reason);
    const allowed = groundAllowedAt(hold, site.basis);
    return judge({
      part: foot,
      utilisation: pull / Math.max(allowed, 1e-6),
      demand: measured(pull, 'force'),
      capacity: measured(allowed, 'force'),
      loadCase,
      message: [
        ...(pull > 0
          ? [`Wind pulls each ${noun}'s foot up with `, measured(pull, 'force'), ` under ${loadCase}`]
          : [`Nothing pulls a ${noun}'s foot up`]),
        `; in ${site.soil} the foot may be counted on for `,
        measured(allowed, 'force'),
        '.',
      ],
      source: hold.source,
      steps: [
        step(
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
    });
  });
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
  sources: ['frame'],
  leavesOut:
    'Soaked or freshly dug ground, frost, the join between member and stub, groups of feet close together.',
  mayBeAccepted: 'When a pull test on the plot gave more than the demand, with the factor of safety.',
  run,
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
