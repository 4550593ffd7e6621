/** The one roof of a shelter: bows, rafters, a cap or two inflated films. */

import { moved } from '../geometry/line.ts';
import { circularLine } from '../geometry/round-bows.ts';
import type { FilmItem, SheetItem } from '../model/items.ts';
import type { Cap, Inflated, Roof } from '../model/shelter.ts';
import { dateIn, factNode, factNodes, numberIn } from '../spec/nodes.ts';
import type { SpecNode } from '../spec/spec.ts';
import { readBows, readStations, type Seat } from './bows.ts';
import { type Context, fasteningOf, marksOf } from './context.ts';
import { readFoot } from './foot.ts';
import { itemOf } from './items.ts';
import { assume, missing, numberFact, problem, someLength } from './notes.ts';
import { readRafters } from './rafters.ts';

const roofWords = ['bows', 'rafters', 'cap', 'inflated'];

export function readRoof(seat: Seat, context: Context): Roof | undefined {
  const { shelter, notes } = context;
  const blocks = roofWords.flatMap((word) => factNodes(shelter, word));
  const [block, ...more] = blocks;
  if (!block) {
    const message = `${shelter.name} has no roof: say \`bows\`, \`rafters\`, \`cap\` or \`inflated\``;
    return problem(notes, 'no-roof', message, shelter.origin);
  }
  for (const other of more) {
    problem(notes, 'two-roofs', `a shelter has one roof; there are ${block.word} already`, other.origin);
  }
  switch (block.word) {
    case 'bows':
      return readBows(block, seat, context);
    case 'rafters':
      return readRafters(block, seat, context);
    case 'cap':
      return readCap(block, seat, context);
    default:
      return readInflated(block, seat, context);
  }
}

/** Rise and circular line of a cap or a bulge; a problem when it is higher than a half circle. */
function bulge(block: SpecNode, seat: Seat, context: Context) {
  const { notes } = context;
  const span = numberFact(notes, block, 'span', { above: 0, most: context.width }) ?? context.width;
  if (!factNode(block, 'rise')) return missing(notes, block, ['shelter', block.word, 'rise']);
  const rise = numberFact(notes, block, 'rise', { above: 0, most: 10 * span });
  if (rise === undefined) return undefined;
  const springing = seat.height ?? 0;
  return {
    span,
    rise,
    springing,
    line: moved(circularLine(span, rise), (context.width - span) / 2, springing),
  };
}

function readCap(block: SpecNode, seat: Seat, context: Context): Cap | undefined {
  const { notes } = context;
  const of = factNode(block, 'of');
  const spacing = numberFact(notes, block, 'spaced', someLength);
  if (!of) return missing(notes, block, ['shelter', 'cap', 'of']);
  if (!factNode(block, 'spaced')) return missing(notes, block, ['shelter', 'cap', 'spaced']);
  const sheet = itemOf(of, ['sheet', 'film'], context.world, notes) as SheetItem | FilmItem | undefined;
  const shape = bulge(block, seat, context);
  const stations = spacing === undefined ? undefined : readStations(block, spacing, context);
  if (!sheet || !shape || spacing === undefined || !stations) return undefined;
  return {
    id: 'cap',
    type: 'cap',
    origin: block.origin,
    ...marksOf(block),
    sheet,
    foot: readFoot(block, 'cap/foot', 'bearing', context),
    spacing,
    stations,
    ...shape,
  };
}

function readInflated(block: SpecNode, seat: Seat, context: Context): Inflated | undefined {
  const { notes } = context;
  const pressure = numberFact(notes, block, 'pressure', { above: 0, most: 5000 });
  if (!factNode(block, 'pressure')) return missing(notes, block, ['shelter', 'inflated', 'pressure']);
  const shape = bulge(block, seat, context);
  const fact = factNode(block, 'strapped');
  const item = fasteningOf(fact, context);
  const said = numberIn(fact);
  const spacing =
    said !== undefined && said > 0
      ? said
      : assume(
          notes,
          'inflated',
          'bay',
          1.2,
          'length',
          'no straps are said; bays for the drawing only: common practice, no source',
          block.origin,
        );
  const stations = readStations(block, spacing, context);
  if (pressure === undefined || !shape || !stations) return undefined;
  const hang =
    numberFact(notes, block, 'hang', { above: 0, most: 10 * shape.span }) ??
    assume(
      notes,
      'inflated',
      'hang',
      shape.rise,
      'length',
      'both films cut to one width bulge alike',
      block.origin,
    );
  const answered =
    numberFact(notes, block, 'answered', { above: 0, most: 100 * 3600 }) ??
    assume(
      notes,
      'inflated',
      'answered',
      3600,
      'time',
      'an hour until somebody is there: common practice, no source',
      block.origin,
    );
  const since = dateIn(fact, 'since');
  const straps =
    item && said !== undefined && said > 0
      ? { straps: { item, spacing: said, ...(since === undefined ? {} : { since }) } }
      : {};
  return {
    id: 'inflated',
    type: 'inflated',
    origin: block.origin,
    pressure,
    spacing,
    stations,
    hang,
    answered,
    ...shape,
    ...straps,
  };
}
