/** Posts, rails, cables and braces. */
import type { Brace, CableItem, JointItem, MemberItem, Posts, Rail } from '@tautline/shelter';
import { jointLap, stayLength } from '@tautline/shelter';
import {
  countLine,
  cutLine,
  type Gap,
  looseLine,
  metres,
  supplyLine,
  type Takeoff,
  type TakeoffLine,
  type Told,
} from '../line.ts';
import { fillingLines, footLines, intoGround } from './ground.ts';
import { counted, runPieces } from './split.ts';
import { wrappingLine } from './sundries.ts';

/** Cable turned back at an end to make a loop, m: common practice, no source. */
const LOOP = 0.5;
/** Clips on each loop: common practice, no source; rigging tables ask 2 to 3 for thin wire rope. */
const CLIPS = 3;

export function postLines(posts: Posts): Takeoff {
  const count = posts.lines.length * posts.stations.length;
  const below = intoGround(posts.foot);
  const length = posts.height + below;
  const feet = footLines(posts.foot, count, posts.member);
  const lines: TakeoffLine[] = [
    cutLine('frame', posts.member, posts.member.stockLengths, counted([length], count, 'post'), posts, [
      [
        `${posts.lines.length} line(s) of ${posts.stations.length} posts, `,
        metres(posts.height),
        ' high',
        ...(below > 0 ? [' and ', metres(below), ' into the ground'] : []),
      ],
    ]),
    ...(posts.wrapping === undefined
      ? []
      : [wrappingLine(posts.wrapping, posts.member, posts.height * count, posts)]),
    ...(posts.topJoint
      ? [countLine('joints', posts.topJoint, count, posts, [`${count}, one on each post`])]
      : []),
  ];
  // A post is filled from its bottom end, which stands in the ground.
  const inside = posts.filled ? posts.filled.upTo + below : 0;
  const filling = posts.filled ? fillingLines(posts.filled, posts.member, inside, count, posts) : undefined;
  return {
    lines: [...lines, ...feet.lines, ...(filling?.lines ?? [])],
    gaps: [...feet.gaps, ...(filling?.gaps ?? [])],
  };
}

/** A rail along the whole house; `frames` is how many frames it crosses. */
export function railLines(rail: Rail, run: number, frames: number): Takeoff {
  const lines: TakeoffLine[] = [];
  const gaps: Gap[] = [];
  const times = rail.lines.length;
  if (rail.member.kind === 'cable') lines.push(...ridgeCable(rail, rail.member, run));
  else {
    const lap = rail.coupler === undefined ? 0 : jointLap(rail.coupler, rail.member);
    const lengths = runPieces(run, rail.member, rail.span, lap);
    const pieces = counted(lengths, times, rail.role);
    const steps: Told[] = [[`${times} line(s) of `, metres(run), `, each in ${lengths.length} piece(s)`]];
    lines.push(cutLine('frame', rail.member, rail.member.stockLengths, pieces, rail, steps));
    const inLine = (lengths.length - 1) * times;
    if (inLine > 0 && rail.member.swage === undefined) {
      lines.push(inLineJoint(rail.coupler, rail.member, inLine, rail));
    }
  }
  if (rail.wrapping !== undefined) lines.push(wrappingLine(rail.wrapping, rail.member, times * run, rail));
  if (rail.joint) {
    const count = times * frames;
    lines.push(countLine('joints', rail.joint, count, rail, [`${times} line(s) crossing ${frames} frames`]));
  } else if (rail.role === 'ridge' && rail.tied) {
    gaps.push({
      what: `what ties the ${frames} frames to the ridge: the spec names no joint there`,
      origin: rail.origin,
    });
  }
  if (rail.endAnchor) {
    const feet = footLines(rail.endAnchor, 2 * times);
    lines.push(...feet.lines);
    gaps.push(...feet.gaps);
  }
  return { lines, gaps };
}

/** What joins two lengths where the stock ends: a coupler that fits, as the spec names none. */
export function inLineJoint(
  coupler: JointItem | undefined,
  member: MemberItem,
  count: number,
  part: { readonly id: string; readonly origin: Rail['origin'] },
): TakeoffLine {
  const why = `${count}, where stock lengths end; the spec names none`;
  return coupler === undefined
    ? looseLine('joints', `In-line joint for ${member.title}`, 'count', count, part, [why])
    : countLine('joints', coupler, count, part, [`${why}, so one that fits is taken`]);
}

function ridgeCable(rail: Rail, cable: CableItem, run: number): readonly TakeoffLine[] {
  const ends = rail.endAnchor ? 2 * stayLength(rail) : 0;
  const pieces = rail.lines.map(() => run + ends + 2 * LOOP);
  const steps: Told[] = [
    [
      `${pieces.length} cable(s) over `,
      metres(run),
      ...(rail.endAnchor ? [', down to an anchor at either end, ', metres(stayLength(rail)), ' each'] : []),
      ', with a loop of ',
      metres(LOOP),
      ' at each end (common practice, no source)',
    ],
  ];
  return [
    cutLine('bracing', cable, [], counted(pieces, 1, rail.role), rail, steps),
    clips(2 * pieces.length, rail),
  ];
}

const clips = (loops: number, part: Rail | Brace): TakeoffLine =>
  supplyLine('bracing', part.clips, 'Wire rope clips', 'count', CLIPS * loops, part, [
    `${CLIPS} on each of ${loops} loops (common practice, no source)`,
  ]);

export function braceLines(brace: Brace): Takeoff {
  const { from, to, member, count } = brace;
  const reach = Math.hypot(to.x - from.x, to.y - from.y, to.z - from.z);
  const feet = brace.foot
    ? footLines(brace.foot, count, member.kind === 'cable' ? undefined : member)
    : { lines: [], gaps: [] };
  if (member.kind === 'cable') {
    const length = reach + 2 * LOOP;
    const steps: Told[] = [[`${count} of `, metres(reach), ' and a loop of ', metres(LOOP), ' at each end']];
    const lines = [
      cutLine('bracing', member, [], [{ length, count, note: brace.role }], brace, steps),
      clips(2 * count, brace),
    ];
    return { lines: [...lines, ...feet.lines], gaps: feet.gaps };
  }
  const rigid: MemberItem = member;
  const below = intoGround(brace.foot);
  const steps: Told[] = [
    [`${count} of `, metres(reach), ...(below > 0 ? [' and ', metres(below), ' into the ground'] : [])],
  ];
  const pieces = [{ length: reach + below, count, note: brace.role }];
  return {
    lines: [cutLine('bracing', rigid, rigid.stockLengths, pieces, brace, steps), ...feet.lines],
    gaps: feet.gaps,
  };
}
