/** Posts at the sides and under a ridge, and the rails along their heads. */
import { stationsAlong } from '../geometry/stations.ts';
import type { Posts, Rail } from '../model/shelter.ts';
import { factNode, wordIn } from '../spec/nodes.ts';
import type { SpecNode } from '../spec/spec.ts';
import { type Context, marksOf, memberOf } from './context.ts';
import { readFilled } from './filled.ts';
import { readFoot } from './foot.ts';
import { couplerAlong, readJoints } from './joints.ts';
import { assume, type Bounds, missing, numberFact, problem, someLength } from './notes.ts';
import { jointItemOf, wrappingOf } from './supplies.ts';

/** Distance between posts when none is said, m: common practice, no source. */
const usualPostSpacing = 2.4;

export const postHeight: Bounds = { above: 0, most: 30 };

interface Standing {
  readonly id: string;
  readonly where: Posts['where'];
  /** x of each line, m. */
  readonly lines: readonly number[];
  /** Ground to top, m. */
  readonly height: number;
  readonly path: readonly string[];
}

export function readPosts(block: SpecNode, standing: Standing, context: Context): Posts | undefined {
  const { notes } = context;
  const member = memberOf(block, standing.path, context);
  const spacing =
    numberFact(notes, block, 'spaced', someLength) ??
    (factNode(block, 'spaced')
      ? undefined
      : assume(
          notes,
          standing.id,
          'spaced',
          usualPostSpacing,
          'length',
          'common practice, no source',
          block.origin,
        ));
  if (!member || spacing === undefined) return undefined;
  const stations = stationsAlong(context.length, spacing);
  if (!stations) {
    return problem(
      notes,
      'too-many',
      'that spacing would make thousands of posts: is its unit right?',
      block.origin,
    );
  }
  const foot = readFoot(block, `${standing.id}/foot`, 'hole', context);
  const jointed = { id: standing.id, member, length: standing.height, beyond: 0 };
  const top = factNode(block, 'joint') ? readJoints(block, jointed, context) : undefined;
  const topJoint = top?.at.get('top') ?? top?.at.get('eave') ?? top?.at.get('crown');
  const filled = readFilled(block, standing.height, context);
  return {
    id: standing.id,
    origin: block.origin,
    ...marksOf(block),
    member,
    where: standing.where,
    lines: standing.lines,
    spacing,
    stations,
    height: standing.height,
    foot,
    ...(topJoint === undefined ? {} : { topJoint: topJoint.item }),
    ...(filled === undefined ? {} : { filled }),
    ...wrappingOf(block, standing.id, context),
  };
}

export interface Sides {
  readonly posts: Posts;
  readonly rail?: Rail;
}

/** Posts along both sides, or the outer lines of a grid, and the rails on their heads. */
export function readSidePosts(block: SpecNode, context: Context): Sides | undefined {
  const path = ['shelter', 'posts'];
  const height = numberFact(context.notes, block, 'height', postHeight);
  if (height === undefined) {
    return factNode(block, 'height') ? undefined : missing(context.notes, block, [...path, 'height']);
  }
  const lines = [0, context.width];
  const posts = readPosts(block, { id: 'side-posts', where: 'sides', lines, height, path }, context);
  if (!posts) return undefined;
  const railBlock = factNode(block, 'rail');
  const member = railBlock && memberOf(railBlock, [...path, 'rail'], context);
  if (!railBlock || !member) return { posts };
  const joint = jointItemOf(factNode(railBlock, 'joint'), context);
  const rail: Rail = {
    id: 'eave-rail',
    origin: railBlock.origin,
    ...marksOf(railBlock),
    role: 'eave',
    form: 'rail',
    member,
    lines: lines.map((x) => ({ x, y: height })),
    span: Math.min(posts.spacing, context.length),
    posts,
    ...(joint === undefined ? {} : { joint }),
    ...couplerAlong(member, context.length, context),
    tied: true,
    ...wrappingOf(railBlock, 'eave-rail', context),
  };
  return { posts, rail };
}

/** The posts that carry the sides of the roof: those at the sides, or a grid. */
export function sidePostsBlock(blocks: readonly SpecNode[]): SpecNode | undefined {
  const at = (where: string) => blocks.find((block) => wordIn(block, 'where') === where);
  return at('sides') ?? at('grid');
}
