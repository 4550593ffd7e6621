/** Bows: arches of any shape. */
import { bowShape } from '../geometry/bow-shape.ts';
import { moved } from '../geometry/line.ts';
import { stationsAlong } from '../geometry/stations.ts';
import type { MemberItem, SupplyItem } from '../model/items.ts';
import type { BowShape, Bows, Foot } from '../model/shelter.ts';
import { factNode, wordIn } from '../spec/nodes.ts';
import type { SpecNode } from '../spec/spec.ts';
import { type Context, marksOf, memberOf } from './context.ts';
import { readFilled } from './filled.ts';
import { readFoot } from './foot.ts';
import { readJoints } from './joints.ts';
import { assume, missing, numberFact, problem, someLength } from './notes.ts';
import { supplyOf, wrappingOf } from './supplies.ts';

/** What bows stand on: the ground, or the rails of side posts. */
export interface Seat {
  /** Height of the rails over the ground, m; undefined for the ground. */
  readonly height?: number | undefined;
  /** Height of a ridge that is said, m: the crown's, where bows give neither rise nor length. */
  readonly ridgeHeight?: number | undefined;
}

export function readBows(block: SpecNode, seat: Seat, context: Context): Bows | undefined {
  const { notes } = context;
  const path = ['shelter', 'bows'];
  const bare = memberOf(block, path, context);
  const spacing = numberFact(notes, block, 'spaced', someLength);
  if (!factNode(block, 'spaced')) missing(notes, block, [...path, 'spaced']);
  if (!bare || spacing === undefined) return undefined;
  const stations = readStations(block, spacing, context);
  const shape =
    (wordIn(factNode(block, 'shape')) as BowShape | undefined) ??
    assume(
      notes,
      'bows',
      'shape',
      usualShape(bare),
      'word',
      'what this stock is usually made to: common practice, no source',
      block.origin,
    );
  const member = shape === 'laminated' ? laminated(block, bare, context) : bare;
  const span = numberFact(notes, block, 'span', { above: 0, most: context.width }) ?? context.width;
  const springing = seat.height ?? 0;
  const asFoot = seat.height === undefined ? bowFoot(block, shape, context) : undefined;
  const lean = asFoot?.fixity === 'clamped' ? asFoot.lean : undefined;
  const formed = form(block, { shape, span, lean }, springing, seat, context);
  if (!formed || !stations || !member) return undefined;
  const foot = asFoot && reaching(inLine(asFoot, formed.line[0]!.angle, context), block, context);
  if (seat.height !== undefined && factNode(block, 'foot')) {
    problem(
      notes,
      'two-seats',
      'these bows stand on side posts; the foot belongs to the posts',
      factNode(block, 'foot')!.origin,
    );
  }
  const legDriven = foot && ownLeg(foot) ? foot.driven / Math.sin(foot.lean ?? Math.PI / 2) : 0;
  const joints = readJoints(block, { id: 'bows', member, length: formed.length, beyond: legDriven }, context);
  const crownFitting = joints.at.get('crown') ?? joints.at.get('peak') ?? joints.at.get('top');
  const filled = readFilled(block, springing + formed.rise, context);
  return {
    id: 'bows',
    type: 'bows',
    origin: block.origin,
    ...marksOf(block),
    member,
    shape,
    spacing,
    stations,
    span,
    rise: formed.rise,
    length: formed.length,
    sizedBy: factNode(block, 'length') && !factNode(block, 'rise') ? 'length' : 'rise',
    springing,
    leg: formed.leg,
    legDriven,
    line: moved(formed.line, (context.width - span) / 2, springing),
    joints: joints.along,
    ...(crownFitting === undefined ? {} : { crownFitting }),
    ...(foot === undefined ? {} : { foot }),
    ...(filled === undefined ? {} : { filled }),
    wrapped: factNode(block, 'wrapped') !== undefined,
    ...wrappingOf(block, 'bows', context),
    ...(shape === 'laminated' ? holding(block, bare, context) : {}),
  };
}

/** Stations along the house, with the short last bay recorded; a problem when there are too many. */
export function readStations(
  block: SpecNode,
  spacing: number,
  context: Context,
): readonly number[] | undefined {
  const stations = stationsAlong(context.length, spacing);
  const origin = factNode(block, 'spaced')?.origin ?? block.origin;
  if (!stations) {
    return problem(
      context.notes,
      'too-many',
      `that spacing would make thousands of ${block.word}: is its unit right?`,
      origin,
    );
  }
  const last = stations.at(-1)! - stations.at(-2)!;
  if (Math.abs(last - spacing) > 0.005) {
    const why = 'the length is no whole number of bays, so the last one is shorter';
    assume(context.notes, block.word, 'last bay', last, 'length', why, origin);
  }
  return stations;
}

function usualShape(member: MemberItem): BowShape {
  if (member.kind === 'lumber') return 'laminated';
  return ['steel', 'aluminium'].includes(member.material.family) ? 'cold-bent' : 'elastic';
}

/** What is fixed before the bow is formed. */
interface Frame {
  readonly shape: BowShape;
  readonly span: number;
  readonly lean: number | undefined;
}

function form(
  block: SpecNode,
  { shape, span, lean }: Frame,
  springing: number,
  seat: Seat,
  context: Context,
) {
  const { notes } = context;
  const rise = numberFact(notes, block, 'rise', someLength);
  const length = numberFact(notes, block, 'length', someLength);
  const leg = numberFact(notes, block, 'leg', { least: 0, most: 100 });
  if ((rise === undefined && factNode(block, 'rise')) || (length === undefined && factNode(block, 'length')))
    return undefined;
  if (leg !== undefined && shape !== 'cold-bent') {
    problem(
      notes,
      'leg-unused',
      `only cold-bent bows have straight legs; these are ${shape}`,
      factNode(block, 'leg')!.origin,
      'warning',
    );
  }
  if (rise !== undefined && length !== undefined) {
    problem(
      notes,
      'one-too-many',
      'give the rise or the length of the bows, not both: the other follows',
      factNode(block, 'length')!.origin,
      'warning',
    );
  }
  const overRail = seat.ridgeHeight === undefined ? undefined : seat.ridgeHeight - springing;
  const asked =
    rise ??
    (length === undefined && overRail !== undefined && overRail > 0
      ? assume(notes, 'bows', 'rise', overRail, 'length', 'the crown lies on the ridge', block.origin)
      : undefined);
  if (asked === undefined && length === undefined) return missing(notes, block, ['shelter', 'bows', 'rise']);
  const formed = bowShape({
    shape,
    span,
    rise: asked,
    length: asked === undefined ? length : undefined,
    leg,
    lean,
  });
  if (!formed.ok)
    return problem(notes, 'bow-impossible', `no such bow can be formed: ${formed.reason}`, block.origin);
  const sharp = formed.rise > 20 * span || formed.length > 1000;
  if (sharp)
    return problem(
      notes,
      'out-of-range',
      'the bows are many times higher than wide: is a unit wrong?',
      block.origin,
    );
  if (shape === 'cold-bent' && leg === undefined) {
    assume(
      notes,
      'bows',
      'leg',
      formed.leg,
      'length',
      'what a half circle over the span leaves of the rise',
      block.origin,
    );
  }
  return formed;
}

/** A laminated bow is as deep as its boards together; the board lies flat, so its breadth is the wider side. */
function laminated(block: SpecNode, board: MemberItem, context: Context): MemberItem | undefined {
  const { notes } = context;
  const boards = numberFact(notes, block, 'laminations', { least: 1, most: 100 });
  if (board.section.shape !== 'rectangle') {
    return problem(
      notes,
      'wrong-kind',
      `laminated bows are made of boards, and ${board.id} is not one`,
      factNode(block, 'of')!.origin,
    );
  }
  if (boards === undefined) return missing(notes, block, ['shelter', 'bows', 'laminations']);
  const { depth, breadth } = board.section;
  const thin = Math.min(depth, breadth);
  return {
    ...board,
    section: {
      shape: 'rectangle',
      depth: thin * Math.round(boards),
      breadth: Math.max(depth, breadth),
      laminations: Math.round(boards),
    },
  };
}

/** What holds the boards of laminated bows together. */
function holding(block: SpecNode, { section }: MemberItem, context: Context): Pick<Bows, 'glue' | 'screws'> {
  const glue = supplyOf(block, { form: 'glue', part: 'bows', word: 'glued' }, context);
  const thin = section.shape === 'rectangle' ? Math.min(section.depth, section.breadth) : 0;
  // Through one board and well into the next, and not out of it.
  const fits = ({ length = 0 }: SupplyItem): boolean => length >= 1.4 * thin && length <= 2.2 * thin;
  const screws = supplyOf(block, { form: 'screw', part: 'bows', word: 'screwed', fits }, context);
  return { ...(glue === undefined ? {} : { glue }), ...(screws === undefined ? {} : { screws }) };
}

function bowFoot(block: SpecNode, shape: BowShape, context: Context): Foot {
  return readFoot(block, 'bows/foot', shape === 'cold-bent' ? 'driven' : 'stub', context);
}

/** Whether the bow's own end is what goes into the ground. */
const ownLeg = ({ kind, stub }: Foot): boolean => !stub && (kind === 'driven' || kind === 'poked');

/** A stub or leg whose lean is not said goes in in line with the end of the bow as it stands by itself. */
function inLine(foot: Foot, endAngle: number, context: Context): Foot {
  if (foot.lean !== undefined || (foot.kind !== 'stub' && !ownLeg(foot))) return foot;
  if (ownLeg(foot) && Math.abs(endAngle - Math.PI / 2) < 1e-6) return foot;
  const why = `the ${ownLeg(foot) ? 'leg goes in' : 'stub is driven'} in line with the end of the bow`;
  return { ...foot, lean: assume(context.notes, foot.id, 'lean', endAngle, 'angle', why, foot.origin) };
}

/** The foot, with a warning when a leaning stub is all in the ground: `deep` is its depth, not its length. */
function reaching(foot: Foot, block: SpecNode, context: Context): Foot {
  if (foot.kind !== 'stub' || foot.length === undefined || foot.lean === undefined) return foot;
  if (foot.length > foot.driven / Math.sin(foot.lean) + 0.05) return foot;
  const message = 'the stub leans so far that all of it is in the ground at this depth: say a longer one';
  problem(context.notes, 'stub-short', message, factNode(block, 'foot')?.origin ?? foot.origin, 'warning');
  return foot;
}
