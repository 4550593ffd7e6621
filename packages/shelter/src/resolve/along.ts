/** What runs along the house: ridge, purlins, baseboards. */
import { undersideAt } from '../geometry/headroom.ts';
import { crownOf, lengthOf, pointOn } from '../geometry/line.ts';
import type { Rail, Roof } from '../model/shelter.ts';
import { factNode, factNodes, numberIn, wordIn } from '../spec/nodes.ts';
import type { SpecNode } from '../spec/spec.ts';
import { type Context, depthOf, marksOf, memberOf, memberOrCableOf } from './context.ts';
import { readFoot } from './foot.ts';
import { couplerAlong } from './joints.ts';
import { assume, type Notes, numberFact, problem } from './notes.ts';
import { postHeight, readPosts } from './posts.ts';
import { clipsOf, jointItemOf, wrappingOf } from './supplies.ts';

/** How far a ridge may be said off the crown before that is a mistake, m. */
const offCrown = 0.05;

/** Pull in a cable ridge when none is said, N: common practice, no source. */
const usualTension = 2000;

/** A ridge under the crown. Without posts of its own and no cable it is carried by the frames: a purlin. */
export function readRidge(block: SpecNode, roof: Roof, context: Context): Rail | undefined {
  const { notes } = context;
  const path = ['shelter', 'ridge'];
  const form = (wordIn(block, 'form') ?? 'rail') as Rail['form'];
  const member = memberOrCableOf(block, path, context);
  const crown = crownOf(roof.line);
  const height = numberFact(notes, block, 'height', postHeight) ?? crown.y;
  const postsBlock = factNode(block, 'posts');
  if (!member) return undefined;
  // What holds the frames up lies under them, and its posts end under it; what they carry is at their centre line.
  const carries = postsBlock !== undefined || form === 'cable';
  const thick = member.kind === 'cable' ? member.diameter : depthOf(member);
  const top = carries ? height - (crown.y - (undersideAt(roof, crown.x) ?? crown.y)) : height;
  const y = carries ? top - thick / 2 : height;
  const posts =
    postsBlock &&
    readPosts(
      postsBlock,
      {
        id: 'ridge/posts',
        where: 'centre',
        lines: [crown.x],
        height: Math.max(0.01, top - thick),
        path: [...path, 'posts'],
      },
      context,
    );
  if (postsBlock && !posts) return undefined;
  if ((form === 'cable') !== (member.kind === 'cable')) {
    const needed = form === 'cable' ? 'a cable' : 'a pipe, rod, pole or lumber';
    return problem(
      notes,
      'wrong-kind',
      `a ridge ${form} is made of ${needed}, and ${member.id} is not one`,
      block.origin,
    );
  }
  if (Math.abs(height - crown.y) > offCrown) {
    const off = height < crown.y ? 'hangs below' : 'stands above';
    const message = `the ridge ${off} the crown of the ${roof.type}: leave its height out, or change their rise to meet it`;
    problem(notes, 'ridge-off-crown', message, factNode(block, 'height')?.origin ?? block.origin, 'warning');
  }
  const joint = jointItemOf(factNode(block, 'joint'), context);
  const tied = wordIn(factNode(block, 'frames')) ?? usualTie(block, carries, context);
  const anchor = form === 'cable' ? readFoot(block, 'ridge/anchor', 'deadman', context) : undefined;
  const out = anchor === undefined ? undefined : anchorOutOf(block, y, context);
  const tension =
    form === 'cable'
      ? (numberFact(notes, block, 'tension', { above: 0, most: 1e6 }) ??
        assume(
          notes,
          'ridge',
          'tension',
          usualTension,
          'force',
          'pulled with a turnbuckle: common practice, no source',
          block.origin,
        ))
      : undefined;
  const free = form === 'cable' ? context.length : roof.spacing;
  return {
    id: 'ridge',
    origin: block.origin,
    ...marksOf(block),
    role: 'ridge',
    form,
    member,
    lines: [{ x: crown.x, y, s: crown.s }],
    span: posts ? Math.min(posts.spacing, context.length) : free,
    ...(posts ? { posts } : {}),
    ...(tension === undefined ? {} : { tension }),
    ...(anchor === undefined ? {} : { endAnchor: anchor }),
    ...(out === undefined ? {} : { anchorOut: out }),
    ...(joint === undefined ? {} : { joint, jointOrigin: factNode(block, 'joint')!.origin }),
    ...(member.kind === 'cable' ? {} : couplerAlong(member, context.length, context)),
    tied: tied === 'tied',
    ...wrappingOf(block, 'ridge', context),
    ...clipsOf(block, 'ridge', member, context),
  };
}

/** How far out the anchors of a cable stand that runs down to them from a height `y`: said by distance or by slope, m. */
function anchorOutOf(block: SpecNode, y: number, { notes }: Context): number {
  const out = numberFact(notes, block, 'out', { above: 0, most: 50 });
  const slope = numberFact(notes, block, 'slope', {
    least: (10 * Math.PI) / 180,
    most: (80 * Math.PI) / 180,
  });
  if (out !== undefined && slope !== undefined)
    problem(
      notes,
      'said-twice',
      'how far out the anchors stand is said by `out` and by `slope`: leave one of them out',
      factNode(block, 'slope')?.origin ?? block.origin,
    );
  if (out !== undefined) return out;
  if (slope !== undefined) return y / Math.tan(slope);
  return assume(
    notes,
    'ridge',
    'out',
    y,
    'length',
    'as far out as the cable is high, so that it runs down at 45°: common practice, no source',
    block.origin,
  );
}

/** A ridge that the frames carry is fixed to them; one that carries them is usually tied, which is assumed. */
function usualTie(block: SpecNode, carries: boolean, { notes }: Context): string {
  const why = 'frames are usually tied or screwed to the ridge';
  return carries ? assume(notes, 'ridge', 'frames', 'tied', 'word', why, block.origin) : 'tied';
}

/** Whether a ridge holds the frames up, rather than being carried by them. */
export function holdsUp(ridge: Rail): boolean {
  return ridge.posts !== undefined || ridge.form === 'cable';
}

export function readPurlins(block: SpecNode, roof: Roof, context: Context): Rail | undefined {
  const { notes } = context;
  const member = memberOf(block, ['shelter', 'purlins'], context);
  const count = numberIn(block, 'count');
  if (!member || count === undefined) return undefined;
  if (!Number.isInteger(count) || count < 1 || count > 100) {
    return problem(notes, 'out-of-range', 'purlins come as 1, 2, 3 ... lines, up to 100', block.origin);
  }
  const places = purlinPlaces(block, count, lengthOf(roof.line), notes);
  const placesSaid = factNodes(block, 'at').map((fact) => fact.origin);
  const joint = jointItemOf(factNode(block, 'joint'), context);
  return {
    id: 'purlins',
    origin: block.origin,
    ...marksOf(block),
    role: 'purlin',
    form: member.kind === 'pipe' ? 'pipe' : 'rail',
    member,
    lines: places.map((s) => {
      const { x, y } = pointOn(roof.line, s);
      return { x, y, s };
    }),
    span: roof.spacing,
    ...(placesSaid.length === 0 ? {} : { placesSaid }),
    ...couplerAlong(member, context.length, context),
    ...(joint === undefined ? {} : { joint, jointOrigin: factNode(block, 'joint')!.origin }),
    tied: true,
    ...wrappingOf(block, 'purlins', context),
  };
}

/** Arc lengths of the purlin lines: those said, or as many as asked, evenly over the arc. */
function purlinPlaces(block: SpecNode, count: number, length: number, notes: Notes): readonly number[] {
  const said = factNodes(block, 'at').flatMap((fact) => {
    const at = numberIn(fact);
    const each = wordIn(fact, 'sides') !== undefined;
    if (at !== undefined && at > 0 && at < length) return each ? [at, length - at] : [at];
    problem(notes, 'out-of-range', 'the purlin lies beyond the ends of the frame', fact.origin);
    return [];
  });
  if (said.length > 0) {
    if (said.length !== count) {
      problem(
        notes,
        'count-differs',
        `${count} purlins are said, and places for ${said.length}: change the number, or say a place for each`,
        block.origin,
        'warning',
      );
    }
    return said.sort((a, b) => a - b);
  }
  const even = Array.from({ length: count }, (_, n) => (length * (n + 1)) / (count + 1));
  const why = 'spread evenly over the frame';
  assume(notes, 'purlins', 'first line', even[0]!, 'length', why, block.origin);
  return even;
}

export function readBaseboards(block: SpecNode, roof: Roof, context: Context): Rail | undefined {
  const member = memberOf(block, ['shelter', 'baseboards'], context);
  if (!member) return undefined;
  const joint = jointItemOf(factNode(block, 'joint'), context);
  return {
    id: 'baseboards',
    origin: block.origin,
    role: 'baseboard',
    form: 'rail',
    member,
    lines: [
      { x: 0, y: 0 },
      { x: context.width, y: 0 },
    ],
    span: roof.spacing,
    ...(joint === undefined ? {} : { joint, jointOrigin: factNode(block, 'joint')!.origin }),
    ...couplerAlong(member, context.length, context),
    tied: true,
  };
}
