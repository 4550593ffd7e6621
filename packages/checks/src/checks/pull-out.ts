import { groundAllowedAt } from '@tautline/loads';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import { frameFeet, worstReaction } from '../feet.ts';
import type { Finding } from '../finding.ts';
import { footUplift } from '../ground.ts';
import { given, judge, measured, notChecked, step } from '../judge.ts';
import { deeper, inConcrete } from '../levers.ts';
import { setQuantity } from '../slots.ts';

function run(input: CheckInput): Finding[] {
  return frameFeet(input.shelter).flatMap(({ foot, owner, noun, frames }) => {
    if (!input.frame.ok) return [notChecked(pullOut.id, foot, input.frame.reason)];
    const worst = worstReaction(input.frame.analysis.responses, foot.id, ({ vertical }) => -vertical);
    if (worst === undefined)
      return [notChecked(pullOut.id, foot, 'the frame gives way before its feet can be judged')];
    const pull = Math.max(0, worst.value) * frames;
    const hold = footUplift(foot, owner.member, input.shelter.site);
    if ('reason' in hold) return [notChecked(pullOut.id, foot, hold.reason)];
    const allowed = groundAllowedAt(hold, input.shelter.site.basis);
    return [
      judge({
        id: pullOut.id,
        part: foot,
        utilisation: pull / Math.max(allowed, 1e-6),
        demand: measured(pull, 'force'),
        capacity: measured(allowed, 'force'),
        loadCase: worst.response.load.title,
        message: [
          `Wind pulls each ${noun}'s foot up with `,
          measured(pull, 'force'),
          ` under ${worst.response.load.title}; in ${input.shelter.site.soil} the foot may be counted on for `,
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
      }),
    ];
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
  const held = frameFeet(input.shelter).find(({ foot }) => foot.id === finding.part);
  if (held === undefined) return [];
  const { foot } = held;
  const result: Lever[] = [];
  if (foot.kind !== 'bearing' && foot.kind !== 'ballast') {
    result.push(deeper(foot));
  }
  if (foot.kind === 'concrete' || foot.kind === 'hole') {
    const across = foot.across ?? 0.25;
    result.push({
      type: 'number',
      from: across,
      towards: Math.max(0.6, across),
      steps: { metric: 0.05, us: 0.0254 },
      title: (value) => ['Make the footing ', measured(value, 'length'), ' across'],
      edits: (value) => [setQuantity(foot.origin, 'across', value, 'length')],
    });
  }
  if (foot.kind !== 'concrete') result.push(inConcrete(foot, [0.25, 0.3, 0.4, 0.5], [0.6, 0.8, 1], stock));
  return result;
}
