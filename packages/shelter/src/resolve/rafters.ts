/** Rafters over a gable or a single slope. */
import { lengthOf, moved } from '../geometry/line.ts';
import { gableLine, singleSlopeLine } from '../geometry/rafter-line.ts';
import type { Rafters } from '../model/shelter.ts';
import { factNode, wordIn } from '../spec/nodes.ts';
import type { SpecNode } from '../spec/spec.ts';
import { readStations, type Seat } from './bows.ts';
import { type Context, footItemOf, marksOf, memberOf } from './context.ts';
import { couplerAlong, readJoints } from './joints.ts';
import { assume, missing, numberFact, problem, someLength } from './notes.ts';
import { wrappingOf } from './supplies.ts';

export function readRafters(block: SpecNode, seat: Seat, context: Context): Rafters | undefined {
  const { notes } = context;
  const path = ['shelter', 'rafters'];
  const member = memberOf(block, path, context);
  const spacing = numberFact(notes, block, 'spaced', someLength);
  if (!factNode(block, 'spaced')) missing(notes, block, [...path, 'spaced']);
  if (!member || spacing === undefined) return undefined;
  const stations = readStations(block, spacing, context);
  const form = (wordIn(factNode(block, 'shape')) ??
    assume(
      notes,
      'rafters',
      'shape',
      'gable',
      'word',
      'two slopes are the usual roof: common practice, no source',
      block.origin,
    )) as Rafters['form'];
  const span = numberFact(notes, block, 'span', { above: 0, most: context.width }) ?? context.width;
  const springing =
    seat.height ??
    assume(
      notes,
      'rafters',
      'eave height',
      0,
      'length',
      'without side posts the rafters stand on the ground',
      block.origin,
    );
  const run = form === 'gable' ? span / 2 : span;
  const rise = readRise(block, run, springing, seat, context);
  const camber =
    numberFact(notes, block, 'camber', { least: 0, most: run / 4 }) ??
    (factNode(block, 'camber') ? undefined : 0);
  if (rise === undefined || camber === undefined || !stations) return undefined;
  if (!factNode(block, 'camber'))
    assume(notes, 'rafters', 'camber', 0, 'length', 'the rafters are straight', block.origin);
  const overhang =
    numberFact(notes, block, 'overhang', { least: 0, most: run }) ??
    assume(notes, 'rafters', 'overhang', 0, 'length', 'none is said', block.origin);
  const line = form === 'gable' ? gableLine(span, rise, camber) : singleSlopeLine(span, rise, camber);
  const whole = lengthOf(line);
  const one = form === 'gable' ? whole / 2 : whole;
  const joints = readJoints(block, { id: 'rafters', member, length: one + overhang, beyond: 0 }, context);
  const peak = joints.at.get('peak') ?? joints.at.get('crown') ?? joints.at.get('top');
  const eave = joints.at.get('eave');
  const tie = readTie(block, context);
  return {
    id: 'rafters',
    type: 'rafters',
    origin: block.origin,
    ...marksOf(block),
    form,
    member,
    spacing,
    stations,
    span,
    rise,
    camber,
    overhang,
    springing,
    length: one + overhang,
    line: moved(line, (context.width - span) / 2, springing),
    ...(peak === undefined ? {} : { peakJoint: { ...peak, at: one } }),
    ...(eave === undefined ? {} : { eaveJoint: { ...eave, at: 0 } }),
    joints: joints.along,
    ...(tie === undefined ? {} : { tie }),
    wrapped: factNode(block, 'wrapped') !== undefined,
    ...wrappingOf(block, 'rafters', context),
  };
}

function readRise(
  block: SpecNode,
  run: number,
  springing: number,
  seat: Seat,
  context: Context,
): number | undefined {
  const { notes } = context;
  const rise = numberFact(notes, block, 'rise', someLength);
  const steepest = (80 * Math.PI) / 180;
  const pitch = numberFact(notes, block, 'pitch', { above: 0, most: steepest });
  if (rise !== undefined && pitch !== undefined) {
    problem(
      notes,
      'one-too-many',
      'give the rise or the pitch of the rafters, not both: the other follows',
      factNode(block, 'pitch')!.origin,
      'warning',
    );
  }
  if (rise !== undefined) {
    if (rise <= run * Math.tan(steepest)) return rise;
    return problem(
      notes,
      'out-of-range',
      'the rafters would stand almost upright: is a unit wrong?',
      factNode(block, 'rise')!.origin,
    );
  }
  if (pitch !== undefined) return run * Math.tan(pitch);
  if (factNode(block, 'rise') || factNode(block, 'pitch')) return undefined;
  const over = seat.ridgeHeight === undefined ? 0 : seat.ridgeHeight - springing;
  if (over > 0)
    return assume(notes, 'rafters', 'rise', over, 'length', 'the rafters meet on the ridge', block.origin);
  return missing(notes, block, ['shelter', 'rafters', 'pitch']);
}

function readTie(block: SpecNode, context: Context): Rafters['tie'] | undefined {
  const fact = factNode(block, 'tie');
  const member = footItemOf(fact, context);
  if (!fact || !member || member.kind === 'anchor') return undefined;
  if (!('section' in member)) return undefined;
  const height =
    numberFact(context.notes, block, 'tie', { least: 0, most: 30 }, 'height') ??
    (wordIn(fact, 'place') === 'eave' ? 0 : undefined) ??
    assume(context.notes, 'rafters', 'tie height', 0, 'length', 'the tie lies at the eave', fact.origin);
  const coupler = couplerAlong(member, context.width, context);
  return { id: 'rafters/tie', member, height, origin: fact.origin, ...coupler };
}
