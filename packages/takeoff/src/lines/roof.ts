/** Bows and rafters: pieces, their joints, their fillings and wrapping. */
import type { Bows, JointUse, Rafters, Roof } from '@tautline/shelter';
import { jointLap } from '@tautline/shelter';
import { countLine, cutLine, type Gap, metres, supplyLine, type Takeoff, type TakeoffLine } from '../line.ts';
import { fillingLines, footLines, intoGround } from './ground.ts';
import { inLineJoint } from './rails.ts';
import { buttedPieces, counted, lengthBelow, SPLICE, splicedPieces, splitAt, widthAt } from './split.ts';
import { wrappingLine } from './sundries.ts';

export function roofLines(roof: Roof): Takeoff {
  if (roof.type === 'bows') return bowLines(roof);
  if (roof.type === 'rafters') return rafterLines(roof);
  // A cap has no frame; what it is made of is its covering. An inflated roof likewise.
  return roof.type === 'cap'
    ? footLines(roof.foot, 2 * Math.max(1, roof.stations.length - 1))
    : { lines: [], gaps: [] };
}

/** A crown fitting of these forms ends the pipe on either side; a clamp or lashing lets it pass. */
const ending: readonly JointUse['item']['form'][] = ['cross', 'tee', 'corner', 'peak', 'socket', 'sleeve'];

function bowLines(bows: Bows): Takeoff {
  const { member, stations, length, foot, crownFitting } = bows;
  const count = stations.length;
  const beyond = Math.max(bows.legDriven, intoGround(foot));
  const cuts = bows.joints.map(({ at, item }) => ({ at, lap: jointLap(item, member) }));
  if (crownFitting && ending.includes(crownFitting.item.form)) cuts.push({ at: length / 2, lap: 0 });
  const pieces = counted(splitAt(length, beyond, cuts), count, cuts.length > 0 ? 'bow, part' : 'bow');
  const layers = member.section.shape === 'rectangle' ? (member.section.laminations ?? 1) : 1;
  const lines: TakeoffLine[] = [
    layers > 1
      ? laminatedLine(bows, layers, length + 2 * beyond)
      : cutLine('frame', member, member.stockLengths, pieces, bows, [
          [
            `${count} bows of `,
            metres(length),
            ...(beyond > 0 ? [' and ', metres(beyond), ' into the ground at each foot'] : []),
            ...(cuts.length > 0 ? [`, each in ${cuts.length + 1} pieces`] : []),
          ],
        ]),
    ...jointLines([...bows.joints, ...(crownFitting ? [crownFitting] : [])], count),
  ];
  const gaps: Gap[] = [];
  if (layers > 1) lines.push(...holdingLines(bows, layers, length + 2 * beyond));
  const feet = foot ? footLines(foot, 2 * count, member) : { lines: [], gaps: [] };
  if (bows.filled) {
    const inside = lengthBelow(bows.line, bows.filled.upTo);
    const filling = fillingLines(bows.filled, member, inside / 2, 2 * count, bows);
    lines.push(...filling.lines);
    gaps.push(...filling.gaps);
  }
  if (bows.wrapped) lines.push(wrappingLine(bows.wrapping ?? '', member, length * count, bows));
  return { lines: [...lines, ...feet.lines], gaps: [...gaps, ...feet.gaps] };
}

/** Boards of a laminated bow, each layer of whole lengths and a rest; layers start from either end in turn, so that butts are staggered. */
function laminatedLine(bows: Bows, layers: number, along: number): TakeoffLine {
  const { member, stations } = bows;
  const pieces = counted(buttedPieces(along, member.stockLengths), stations.length * layers, 'bow, board');
  return cutLine('frame', member, member.stockLengths, pieces, bows, [
    [
      `${stations.length} bows of ${layers} boards, each `,
      metres(along),
      ' in all; the rest stands at either end in turn, so that butts are staggered',
    ],
  ]);
}

/** Screws that hold the boards of a laminated bow till the glue has set, one every so far, m: common practice, no source. */
const BOARD_SCREWS = 0.3;

/** Glue between the boards, on the whole of each joint, and the screws through them. */
function holdingLines(bows: Bows, layers: number, along: number): readonly TakeoffLine[] {
  const { section } = bows.member;
  if (section.shape !== 'rectangle') return [];
  const joints = (layers - 1) * bows.stations.length;
  const screws = joints * (Math.floor(along / BOARD_SCREWS + 1e-9) + 1);
  return [
    supplyLine(
      'frame',
      bows.glue,
      'Glue of the laminated bows',
      'area',
      joints * along * section.breadth,
      bows,
      [
        `${joints} joints between boards, `,
        metres(along),
        ' by ',
        { value: section.breadth, kind: 'thickness' },
      ],
    ),
    supplyLine('frame', bows.screws, 'Screws of the laminated bows', 'count', screws, bows, [
      `${screws} in ${joints} joints between boards, every `,
      metres(BOARD_SCREWS),
      ' (assumed: common practice, no source)',
    ]),
  ];
}

function rafterLines(rafters: Rafters): Takeoff {
  const { member, stations, length, form } = rafters;
  const each = form === 'gable' ? 2 : 1;
  const count = stations.length * each;
  const cuts = rafters.joints.map(({ at, item }) => ({ at, lap: jointLap(item, member) }));
  const lines: TakeoffLine[] = [
    cutLine(
      'frame',
      member,
      member.stockLengths,
      counted(splitAt(length, 0, cuts), count, 'rafter'),
      rafters,
      [[`${stations.length} frames of ${each} with `, metres(length), ' along the slope, overhang included']],
    ),
    ...jointLines(rafters.joints, count),
    ...jointLines(rafters.peakJoint ? [rafters.peakJoint] : [], stations.length),
    ...jointLines(rafters.eaveJoint ? [rafters.eaveJoint] : [], 2 * stations.length),
  ];
  const gaps: Gap[] = [];
  if (rafters.tie) {
    const { id, member: tie, height, origin } = rafters.tie;
    const width = widthAt(rafters.line, rafters.springing + height);
    const part = { id, origin };
    if (width === undefined) gaps.push({ what: 'the ties: they do not meet both rafters', origin });
    else {
      const lengths = splicedPieces(width, tie.stockLengths);
      const steps = [
        [
          `${stations.length} ties `,
          metres(height),
          ' above the eaves, from rafter to rafter',
          ...(lengths.length > 1
            ? [
                `, each in ${lengths.length} pieces lapped by `,
                metres(SPLICE),
                ' (common practice, no source)',
              ]
            : []),
        ],
      ];
      const pieces = counted(lengths, stations.length, 'tie');
      lines.push(cutLine('frame', tie, tie.stockLengths, pieces, part, steps));
      const splices = (lengths.length - 1) * stations.length;
      if (splices > 0) {
        lines.push(inLineJoint(rafters.tie.coupler, tie, splices, part));
      }
    }
  }
  if (rafters.wrapped) lines.push(wrappingLine(rafters.wrapping ?? '', member, length * count, rafters));
  return { lines, gaps };
}

function jointLines(joints: readonly JointUse[], times: number): readonly TakeoffLine[] {
  return joints.map((joint) =>
    countLine('joints', joint.item, times, joint, [
      joint.assumed ? `${times} where stock lengths end` : `${times}, as said`,
    ]),
  );
}
