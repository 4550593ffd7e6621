/** Coverings, and whether wind comes in at sides and ends. */
import { crownOf, lengthOf } from '../geometry/line.ts';
import type { FilmItem, MeshItem, SheetItem } from '../model/items.ts';
import type { Cover, CoverPlace, Opening, Roof } from '../model/shelter.ts';
import { dateIn, factNode, numberIn, wordIn } from '../spec/nodes.ts';
import type { SpecNode } from '../spec/spec.ts';
import { type Context, fasteningOf, marksOf } from './context.ts';
import { itemOf } from './items.ts';
import { assume, missing, numberFact, problem, within } from './notes.ts';
import { screwsFor } from './supplies.ts';

/** Film taken up at each edge when no fastening says it, m: common practice, no source. */
const usualEdge = 0.15;
/** Film that hangs over each end of a roof, m: common practice, no source. */
const usualEndLap = 0.3;
/** Pull on film put on by hand, N/m: common practice, no source. */
const usualTension = 100;
const usualFittingTemperature = 20;

export function readCover(block: SpecNode, roof: Roof, context: Context): Cover | undefined {
  const { notes } = context;
  const place = wordIn(block, 'place') as CoverPlace | undefined;
  const withFact = factNode(block, 'with');
  if (!place) return undefined;
  if (!withFact) return missing(notes, block, ['shelter', 'cover', 'with']);
  const skin = itemOf(withFact, ['film', 'mesh', 'sheet'], context.world, notes) as
    | FilmItem
    | MeshItem
    | SheetItem
    | undefined;
  if (!skin) return undefined;
  const id = `cover-${place}`;
  const fastenedFact = factNode(block, 'fastened');
  const fastening = fasteningOf(fastenedFact, context);
  const every = spacingIn(fastenedFact, 'how far apart the fastenings are', context);
  const edge =
    fastening?.edgeAllowance ??
    assume(
      notes,
      id,
      'edge',
      usualEdge,
      'length',
      'film taken up at each edge: common practice, no source',
      block.origin,
    );
  const extent = extentOf(block, id, place, roof, context);
  const lap =
    place === 'roof'
      ? assume(
          notes,
          id,
          'end lap',
          usualEndLap,
          'length',
          'film over each end: common practice, no source',
          block.origin,
        )
      : edge;
  const size = sizeOf(place, roof, extent, { edge, lap }, context);
  const layers =
    numberFact(notes, block, 'layers', { least: 1, most: 2 }) ??
    assume(notes, id, 'layers', 1, 'count', 'one layer', block.origin);
  const installed = dateIn(factNode(block, 'installed'));
  const fastenedSince = dateIn(fastenedFact, 'since');
  const roll = numberFact(notes, block, 'roll', { above: 0, most: 100 });
  const screws = screwsFor(block, id, fastening?.form, context);
  const straps = readStraps(block, id, roof, context);
  return {
    id,
    origin: block.origin,
    ...marksOf(block),
    place,
    skin,
    layers: layers >= 1.5 ? 2 : 1,
    ...size,
    ...extent,
    tension: tensionOf(block, id, skin, context),
    ...(fastening === undefined ? {} : { fastening }),
    ...(every === undefined ? {} : { fasteningSpacing: every }),
    ...(fastenedSince === undefined ? {} : { fastenedSince }),
    ...(straps === undefined ? {} : { straps }),
    ...(screws === undefined ? {} : { screws }),
    ...(installed === undefined ? {} : { installed }),
    ...(roll === undefined ? {} : { rollWidth: roll }),
    fittedAt:
      numberFact(notes, block, 'fitted', { least: -40, most: 80 }) ??
      assume(
        notes,
        id,
        'fitted',
        usualFittingTemperature,
        'temperature',
        'a mild day: common practice, no source',
        block.origin,
      ),
  };
}

function spacingIn(fact: SpecNode | undefined, what: string, context: Context): number | undefined {
  const every = numberIn(fact);
  return fact && every !== undefined
    ? within(context.notes, every, what, { above: 0, most: 100 }, fact)
    : undefined;
}

function tensionOf(block: SpecNode, id: string, skin: Cover['skin'], context: Context): number {
  const said = numberFact(context.notes, block, 'tension', { least: 0, most: 1e5 });
  if (said !== undefined) return said;
  if (skin.kind === 'sheet') return 0;
  return assume(
    context.notes,
    id,
    'tension',
    usualTension,
    'line-load',
    'pulled tight by hand: common practice, no source',
    block.origin,
  );
}

function readStraps(block: SpecNode, id: string, roof: Roof, context: Context): Cover['straps'] | undefined {
  const fact = factNode(block, 'strapped');
  const item = fasteningOf(fact, context);
  if (!fact || !item) return undefined;
  const spacing =
    spacingIn(fact, 'how far apart the straps are', context) ??
    assume(
      context.notes,
      id,
      'strapped every',
      roof.spacing,
      'length',
      'one strap between every two frames',
      fact.origin,
    );
  const since = dateIn(fact, 'since');
  return { item, spacing, ...(since === undefined ? {} : { since }) };
}

/** From what height to what height over the ground a covering reaches, m. */
function extentOf(block: SpecNode, id: string, place: CoverPlace, roof: Roof, context: Context) {
  const { notes } = context;
  const crown = crownOf(roof.line).y;
  if (place === 'roof') return { from: roof.springing, upTo: crown };
  const top = place === 'ends' || roof.springing === 0 ? crown : roof.springing;
  const from =
    numberFact(notes, block, 'from', { least: 0, most: crown }) ??
    assume(notes, id, 'from', 0, 'length', 'it starts at the ground', block.origin);
  const upTo =
    numberFact(notes, block, 'up', { above: 0, most: crown }) ??
    assume(
      notes,
      id,
      'up',
      top,
      'length',
      place === 'ends' ? 'the whole end' : 'the whole side',
      block.origin,
    );
  if (upTo > from) return { from, upTo };
  problem(notes, 'out-of-range', `the cover of the ${place} ends below where it starts`, block.origin);
  return { from: 0, upTo: top };
}

/**
 * Size of the piece of film, m. Roof: along the arc (with overhangs and both edges) by the length of the
 * house (with a lap over both ends). Sides: height by length. Ends: height by width.
 */
function sizeOf(
  place: CoverPlace,
  roof: Roof,
  extent: { readonly from: number; readonly upTo: number },
  { edge, lap }: { readonly edge: number; readonly lap: number },
  context: Context,
) {
  const overhang = roof.type === 'rafters' ? 2 * roof.overhang : 0;
  if (place === 'roof') {
    return {
      developedWidth: lengthOf(roof.line) + overhang + 2 * edge,
      developedLength: context.length + 2 * lap,
    };
  }
  const height = extent.upTo - extent.from + 2 * edge;
  return {
    developedWidth: height,
    developedLength: (place === 'sides' ? context.length : context.width) + 2 * lap,
  };
}

/** What is said of sides and ends, or what the coverings and the frame make of them. */
export function readOpening(covers: readonly Cover[], roof: Roof, context: Context): Opening {
  const { notes, shelter } = context;
  const at = (place: CoverPlace) => covers.find((cover) => cover.place === place);
  const sideCover = at('sides');
  const roofReachesGround = roof.springing === 0 && roof.type !== 'rafters' && at('roof') !== undefined;
  const sides = sideCover
    ? sideCover.skin.kind === 'mesh'
      ? 'screened'
      : 'clad'
    : roofReachesGround
      ? 'clad'
      : 'open';
  const ends = at('ends') ? 'clad' : 'open';
  return {
    sides: (wordIn(factNode(shelter, 'sides')) ??
      assume(
        notes,
        'shelter',
        'sides',
        sides,
        'word',
        'as they are covered',
        shelter.origin,
      )) as Opening['sides'],
    ends: (wordIn(factNode(shelter, 'ends')) ??
      assume(
        notes,
        'shelter',
        'ends',
        ends,
        'word',
        'as they are covered',
        shelter.origin,
      )) as Opening['ends'],
  };
}
