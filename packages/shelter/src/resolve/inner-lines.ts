/** The lines of a grid of posts between the sides: they reach up under the roof and carry it by their rails. */
import { undersideAt } from '../geometry/headroom.ts';
import { arcAt, crownOf } from '../geometry/line.ts';
import type { Posts, Rail, Roof } from '../model/shelter.ts';
import { factNode, wordIn } from '../spec/nodes.ts';
import type { SpecNode } from '../spec/spec.ts';
import { type Context, depthOf, marksOf, memberOf } from './context.ts';
import { couplerAlong } from './joints.ts';
import { assume, numberFact } from './notes.ts';
import { readPosts } from './posts.ts';
import { jointItemOf, wrappingOf } from './supplies.ts';

/** Lines whose heights differ by less are one pair, m. */
const alike = 1e-6;
/** A line this near to a ridge that holds the roof up is that ridge's own, m. */
const underRidge = 0.05;

const path = ['shelter', 'posts'];

/** Whether the inner lines of a grid carry anything: they need a rail, and bows or rafters to lie on it. */
export function carriesInside(
  grid: SpecNode,
  shelter: SpecNode | { readonly children: readonly SpecNode[] },
) {
  const framed = shelter.children.some(({ word }) => word === 'bows' || word === 'rafters');
  return framed && factNode(grid, 'rail') !== undefined;
}

/**
 * Rails and posts of the inner lines, each pair at one height together. `own` are the side posts where the
 * same block says them. Nothing where `carriesInside` says no.
 */
export function readInnerLines(
  grid: SpecNode,
  on: { readonly roof: Roof; readonly ridge?: Rail | undefined; readonly own?: Posts | undefined },
  context: Context,
): readonly Rail[] {
  const { roof, ridge, own } = on;
  const railBlock = factNode(grid, 'rail');
  if (!railBlock || (roof.type !== 'bows' && roof.type !== 'rafters')) return [];
  const member = memberOf(railBlock, [...path, 'rail'], context);
  if (!member) return [];
  const joint = jointItemOf(factNode(railBlock, 'joint'), context);
  const ridgeAt = ridge === undefined ? Number.NaN : crownOf(roof.line).x;
  const heights: { under: number; lines: number[] }[] = [];
  for (const x of innerPlaces(grid, context)) {
    const under = undersideAt(roof, x);
    if (under === undefined || Math.abs(x - ridgeAt) <= underRidge) continue;
    const pair = heights.find((one) => Math.abs(one.under - under) < alike);
    if (pair) pair.lines.push(x);
    else heights.push({ under, lines: [x] });
  }
  const thick = depthOf(member);
  return heights.flatMap(({ under, lines }, index): Rail[] => {
    const id = index === 0 ? 'inner-rail' : `inner-rail-${index + 1}`;
    const height = Math.max(0.01, under - thick);
    const posts =
      own === undefined
        ? readPosts(grid, { id: `${id}/posts`, where: 'line', lines, height, path }, context)
        : standing(own, `${id}/posts`, lines, height);
    if (!posts) return [];
    return [
      {
        id,
        origin: railBlock.origin,
        ...marksOf(railBlock),
        role: 'grid',
        form: 'rail',
        member,
        lines: lines.map((x) => ({ x, y: under - thick / 2, s: arcAt(roof.line, x) })),
        span: Math.min(posts.spacing, context.length),
        posts,
        ...(joint === undefined ? {} : { joint }),
        ...couplerAlong(member, context.length, context),
        tied: true,
        ...wrappingOf(railBlock, id, context),
      },
    ];
  });
}

/** The side posts' fellows on other lines: the same stock and feet, another height. */
function standing(own: Posts, id: string, lines: readonly number[], height: number): Posts {
  const { filled } = own;
  return {
    ...own,
    id,
    where: 'line',
    lines,
    height,
    foot: { ...own.foot, id: `${id}/foot` },
    ...(filled === undefined ? {} : { filled: { ...filled, upTo: Math.min(filled.upTo, height) } }),
  };
}

/** x of the lines between the outer ones, spread evenly over the width, m. */
function innerPlaces(grid: SpecNode, context: Context): readonly number[] {
  const { notes, width } = context;
  const lines =
    numberFact(notes, grid, 'lines', { least: 2, most: 50 }) ??
    (factNode(grid, 'lines')
      ? undefined
      : assume(notes, 'side-posts', 'lines', 3, 'count', 'both sides and the middle', grid.origin));
  const gaps = Math.round(lines ?? 2) - 1;
  return Array.from({ length: gaps - 1 }, (_, n) => (width * (n + 1)) / gaps);
}

export function gridBlock(blocks: readonly SpecNode[]): SpecNode | undefined {
  return blocks.find((block) => wordIn(block, 'where') === 'grid');
}
