/** Getting the feet into the ground. Common practice, no source. */
import { format, type System } from '@tautline/quantity';
import type { Foot } from '@tautline/shelter';
import { lengthText } from '../words.ts';
import type { WorkStep } from './work-step.ts';

/** How one kind of foot is made; `ownLegs` where the bows' own legs go into the ground. */
export function footStep(foot: Foot, ownLegs: boolean, system: System): WorkStep {
  const deep = lengthText(foot.driven, system);
  const wide = foot.across === undefined ? '' : `, ${lengthText(foot.across, system)} across`;
  const part = foot.id.replace(/\//g, ', ');
  const lean =
    foot.lean === undefined || Math.abs(foot.lean - Math.PI / 2) < 1e-3
      ? 'upright'
      : `leaning out, at ${format(foot.lean, 'angle', system)} from the ground`;
  const along = lengthText(foot.driven / Math.sin(foot.lean ?? Math.PI / 2), system);
  const buried = 'Look for buried services first.';
  switch (foot.kind) {
    case 'stub':
      return {
        title: `Drive the stubs (${part})`,
        does: [
          `Drive each ${deep} deep, ${lean}.`,
          'Sight along the row: tops in one line, all leaning alike.',
        ],
        tools: ['sledge or post driver', 'driving cap', 'angle gauge', 'string line'],
        hands: 2,
        caution: `${buried} Somebody holds the stub with a clamp, not by hand.`,
      };
    case 'driven':
    case 'poked':
      if (ownLegs)
        return {
          title: 'Open the holes for the legs',
          does: [
            `Drive a bar of the size of the leg ${deep} deep at every peg, ${lean}, and draw it again; mark ${along} from its end on every leg.`,
          ],
          tools: ['bar', 'sledge', 'level', 'marker'],
          hands: 2,
          caution: buried,
        };
      return {
        title: `Drive the feet (${part})`,
        does: [`${deep} into the ground, ${lean}; mark the depth on the member before it goes in.`],
        tools: ['post driver', 'level', 'marker'],
        hands: 2,
        caution: buried,
      };
    case 'hole':
      return {
        title: `Dig and set (${part})`,
        does: [
          `Holes ${deep} deep${wide}; set the post upright and tamp the earth back in layers of a hand's breadth.`,
        ],
        tools: ['hole digger', 'tamper', 'level', 'string line'],
        hands: 2,
        caution: buried,
      };
    case 'concrete':
      return {
        title: `Dig, set and pour (${part})`,
        does: [
          `Holes ${deep} deep${wide}; brace the post upright, pour, rod the air out and slope the top so that water runs off.`,
          'Leave it a week before it carries anything.',
        ],
        tools: ['hole digger', 'mixing tub or mixer', 'shovel', 'level', 'props', 'gloves'],
        hands: 2,
        caution: `${buried} Wet cement burns skin and eyes.`,
      };
    case 'deadman':
      return {
        title: `Bury the anchors (${part})`,
        does: [`${deep} deep, square to the pull; lead the wire out in line with the pull, and tamp well.`],
        tools: ['spade', 'tamper', 'tape'],
        hands: 2,
        caution: buried,
      };
    case 'screw':
      return {
        title: `Turn in the anchors (${part})`,
        does: [`${deep} deep, in line with the pull.`],
        tools: ['turning bar', 'tape'],
        hands: 2,
        caution: buried,
      };
    case 'ballast':
    case 'bearing':
      return {
        title: `Set the feet (${part})`,
        does: [
          foot.kind === 'ballast' && foot.mass !== undefined
            ? `Level the ground and place ${format(foot.mass, 'mass', system)} on each foot.`
            : 'Level the ground and set each foot flat.',
        ],
        tools: ['spade', 'level'],
        hands: 2,
        caution: 'Lift with two.',
      };
  }
}
