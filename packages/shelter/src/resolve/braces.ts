/** Braces, guys and ties: where they start and end, and how many there are. */
import { crownOf, lengthOf, pointOn } from '../geometry/line.ts';
import type { Brace, Posts, Roof } from '../model/shelter.ts';
import { factNode, wordIn } from '../spec/nodes.ts';
import type { SpecNode } from '../spec/spec.ts';
import { type Context, marksOf, memberOrCableOf } from './context.ts';
import { readFoot } from './foot.ts';
import { assume, missing, numberFact } from './notes.ts';
import { clipsOf } from './supplies.ts';

/** The frame that braces are fixed to. */
export interface Braced {
  readonly roof: Roof;
  readonly sidePosts?: Posts | undefined;
}

const high = { above: 0, most: 30 };

export function readBrace(block: SpecNode, index: number, on: Braced, context: Context): Brace | undefined {
  const { notes } = context;
  const member = memberOrCableOf(block, ['shelter', 'braces'], context);
  if (!member) return undefined;
  const id = index === 0 ? 'braces' : `braces-${index + 1}`;
  const plane = (wordIn(block, 'plane') ??
    assume(
      notes,
      id,
      'plane',
      'along',
      'word',
      'braces usually hold a house along its length: common practice, no source',
      block.origin,
    )) as Brace['plane'];
  const usualPlace = plane === 'along' ? 'corners' : 'ends';
  const place =
    wordIn(factNode(block, 'at')) ??
    assume(notes, id, 'at', usualPlace, 'word', 'common practice, no source', block.origin);
  const height =
    numberFact(notes, block, 'height', high) ??
    assume(
      notes,
      id,
      'height',
      braceTop(on),
      'length',
      on.sidePosts ? 'the top of the side posts' : 'two thirds of the crown: common practice, no source',
      block.origin,
    );
  const stations = on.sidePosts?.stations ?? on.roof.stations;
  const tension =
    numberFact(notes, block, 'tension', { least: 0, most: 1e6 }) ??
    (member.kind === 'cable'
      ? assume(
          notes,
          id,
          'tension',
          0,
          'force',
          'pulled up by hand until it is straight: no pull is counted on; common practice, no source',
          block.origin,
        )
      : undefined);
  const base = {
    id,
    origin: block.origin,
    ...marksOf(block),
    role: 'brace',
    member,
    plane,
    ...(tension === undefined ? {} : { tension }),
    ...clipsOf(block, id, member, context),
  } as const;
  if (plane === 'across') {
    // A crossed pair in a frame, each from a foot to the far side at its height.
    const frames = place === 'every-bay' ? stations.length : 2;
    const far = context.width - (on.sidePosts ? 0 : xAt(on.roof, height));
    const from = { x: on.sidePosts ? 0 : footX(on.roof), y: 0, z: 0 };
    return { ...base, from, to: { x: far, y: height, z: 0 }, count: 2 * frames };
  }
  const every = place === 'every-bay';
  const bay = (every ? stations[1] : stations.find((z) => z >= height * 0.75)) ?? stations.at(-1)!;
  // In a single bay a pair crosses.
  const bays = every ? Math.max(2, stations.length - 1) : 2;
  const x = on.sidePosts ? 0 : xAt(on.roof, height);
  return {
    ...base,
    from: { x: on.sidePosts ? 0 : footX(on.roof), y: 0, z: 0 },
    to: { x, y: height, z: bay },
    count: 2 * bays,
  };
}

function braceTop({ roof, sidePosts }: Braced): number {
  return sidePosts ? sidePosts.height : (2 / 3) * crownOf(roof.line).y;
}

function footX(roof: Roof): number {
  return roof.line[0]!.x;
}

/** Where the left side of the frame reaches a height, m. */
function xAt(roof: Roof, height: number): number {
  const crown = crownOf(roof.line);
  let low = 0;
  let up = crown.s;
  for (let n = 0; n < 50; n++) {
    const middle = (low + up) / 2;
    if (pointOn(roof.line, middle).y < height) low = middle;
    else up = middle;
  }
  return pointOn(roof.line, Math.min(up, lengthOf(roof.line))).x;
}

export function readGuys(block: SpecNode, index: number, on: Braced, context: Context): Brace | undefined {
  const { notes } = context;
  const member = memberOrCableOf(block, ['shelter', 'guys'], context);
  if (!member) return undefined;
  const id = index === 0 ? 'guys' : `guys-${index + 1}`;
  const place =
    wordIn(factNode(block, 'at')) ??
    assume(notes, id, 'at', 'ends', 'word', 'common practice, no source', block.origin);
  const crown = crownOf(on.roof.line);
  const usual = place === 'ends' ? crown.y : braceTop(on);
  const height =
    numberFact(notes, block, 'height', high) ??
    assume(
      notes,
      id,
      'height',
      usual,
      'length',
      place === 'ends' ? 'the crown' : 'the top of the side',
      block.origin,
    );
  const out =
    numberFact(notes, block, 'out', { above: 0, most: 50 }) ??
    assume(
      notes,
      id,
      'out',
      height * 0.75,
      'length',
      'three quarters of its height: common practice, no source',
      block.origin,
    );
  const foot = readFoot(block, `${id}/foot`, 'screw', context);
  const tension = numberFact(notes, block, 'tension', { above: 0, most: 1e6 });
  const base = {
    id,
    origin: block.origin,
    ...marksOf(block),
    role: 'guy',
    member,
    foot,
    ...(tension === undefined ? {} : { tension }),
    ...clipsOf(block, id, member, context),
  } as const;
  if (place === 'ends') {
    return {
      ...base,
      plane: 'along',
      from: { x: crown.x, y: height, z: 0 },
      to: { x: crown.x, y: 0, z: -out },
      count: 2,
    };
  }
  const x = on.sidePosts ? 0 : xAt(on.roof, height);
  if (place === 'corners') {
    return { ...base, plane: 'along', from: { x, y: height, z: 0 }, to: { x, y: 0, z: -out }, count: 4 };
  }
  const stations = on.sidePosts?.stations ?? on.roof.stations;
  return {
    ...base,
    plane: 'across',
    from: { x, y: height, z: 0 },
    to: { x: x - out, y: 0, z: 0 },
    count: 2 * stations.length,
  };
}

export function readTies(block: SpecNode, index: number, on: Braced, context: Context): Brace | undefined {
  const { notes } = context;
  const member = memberOrCableOf(block, ['shelter', 'ties'], context);
  const id = index === 0 ? 'ties' : `ties-${index + 1}`;
  const height = numberFact(notes, block, 'height', high);
  if (height === undefined && !factNode(block, 'height'))
    missing(notes, block, ['shelter', 'ties', 'height']);
  if (!member || height === undefined) return undefined;
  const spacing =
    numberFact(notes, block, 'spaced', { above: 0, most: 1000 }) ??
    assume(notes, id, 'spaced', on.roof.spacing, 'length', 'one tie to every frame', block.origin);
  const x = height <= on.roof.springing ? 0 : xAt(on.roof, height);
  return {
    id,
    origin: block.origin,
    role: 'tie',
    member,
    plane: 'across',
    from: { x, y: height, z: 0 },
    to: { x: context.width - x, y: height, z: 0 },
    count: Math.max(1, Math.floor(context.length / spacing + 1e-9) + 1),
    ...clipsOf(block, id, member, context),
  };
}
