/** End frames and doors. */
import type { Door, EndFrames, MemberItem } from '@tautline/shelter';
import { cutLine, type Gap, metres, supplyLine, type Takeoff, type TakeoffLine, type Told } from '../line.ts';
import { footLines, intoGround } from './ground.ts';
import { counted } from './split.ts';

/** Level pieces of a door leaf, top, middle and bottom, and hinges of one door: common practice, no source. */
const LEDGES = 3;
const HINGES = 2;

/** Uprights and rails of both ends. */
export function endFrameLines(ends: EndFrames): Takeoff {
  const below = intoGround(ends.foot);
  const count = 2 * ends.uprights.length;
  const uprights = counted(
    ends.uprights.map(({ height }) => height + below),
    2,
    'end upright',
  );
  const why: Told = [
    `${ends.uprights.length} uprights in each end, up to the roof`,
    ...(below > 0 ? [', and ', metres(below), ' into the ground'] : []),
  ];
  const lines: TakeoffLine[] = [
    cutLine('frame', ends.member, ends.member.stockLengths, uprights, ends, [why]),
  ];
  if (ends.rail) {
    const { member, from, to, height } = ends.rail;
    const pieces = [{ length: to - from, count: 2, note: 'end rail' }];
    const steps: Told[] = [['one across each end, ', metres(height), ' up']];
    lines.push(cutLine('frame', member, member.stockLengths, pieces, ends, steps));
  }
  const feet = footLines(ends.foot, count, ends.member);
  return { lines: [...lines, ...feet.lines], gaps: feet.gaps };
}

/** The leaf, the head over the opening and the hinges of each door. */
export function doorLines(door: Door, ends: EndFrames | undefined): Takeoff {
  const doors = door.end === 'both' ? 2 : 1;
  const lines: TakeoffLine[] = [];
  const gaps: Gap[] = [];
  const head = ends && !(ends.rail && Math.abs(ends.rail.height - door.height) < 0.05);
  if (ends && head) {
    const pieces = [{ length: door.width, count: doors, note: 'door head' }];
    lines.push(
      cutLine('frame', ends.member, ends.member.stockLengths, pieces, door, [
        [`${doors} over the opening, `, metres(door.width), ' wide'],
      ]),
    );
  }
  const leaf = door.leaf ?? ends?.member;
  if (leaf) lines.push(leafLine(door, leaf, doors, door.leaf === undefined));
  else gaps.push({ what: 'what the door is framed of: nothing says it', origin: door.origin });
  lines.push(
    supplyLine('sundries', door.hinges, 'Hinges', 'count', HINGES * doors, door, [
      `${HINGES} on each door (common practice, no source)`,
    ]),
    supplyLine('sundries', door.latch, 'Door latch', 'count', doors, door, ['one on each door']),
  );
  return { lines, gaps };
}

function leafLine(door: Door, leaf: MemberItem, doors: number, taken: boolean): TakeoffLine {
  const pieces = [
    { length: door.height, count: 2 * doors, note: 'door stile' },
    { length: door.width, count: LEDGES * doors, note: 'door ledge' },
    { length: Math.hypot(door.width, door.height / 2), count: doors, note: 'door brace' },
  ];
  const steps: Told[] = [
    [
      `two stiles, ${LEDGES} ledges and a brace for each leaf (common practice, no source), `,
      metres(door.width),
      ' by ',
      metres(door.height),
      ...(taken ? ['; of what the end frames are made of, as nothing else is said'] : []),
    ],
  ];
  return cutLine('frame', leaf, leaf.stockLengths, pieces, door, steps);
}
