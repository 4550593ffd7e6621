/**
 * The frame under a blown-up roof: two rows of posts whose heads the films pull together, with the ties between
 * them and the guys that hold them back. The films themselves are loads (`actions/blown.ts`).
 */
import type { Brace, Inflated, Posts, Shelter } from '@tautline/shelter';
import type { FrameOptions } from './bow-frame.ts';
import type { Condition } from './condition.ts';
import { type FrameSystem, SystemBuilder } from './frame-system.ts';
import { sectionOf } from './member.ts';
import { addSidePosts } from './posts.ts';
import { addTie, onPost, perFrame } from './ties.ts';

export function blownFrame(
  shelter: Shelter,
  roof: Inflated,
  posts: Posts,
  condition: Condition,
  { soil = false }: Pick<FrameOptions, 'soil'> = {},
): FrameSystem {
  const builder = new SystemBuilder();
  const left = roof.line[0]!.x;
  const [from, to] = [left, left + roof.span].map((x, side) =>
    builder.node({ x, y: roof.springing }, roof.id, side * roof.span),
  ) as [number, number];
  addSidePosts(builder, shelter, posts, condition, from, to, roof.spacing, 'rigid', soil);
  for (const brace of shelter.braces) {
    if (brace.plane !== 'across') continue;
    const [i, j] = [from, to].map((head) => onPost(builder, head, brace.from.y)) as [number, number];
    if (brace.role === 'tie') addTie(builder, shelter, brace, condition, i, j);
    if (brace.role === 'guy') addGuys(builder, shelter, brace, i, j);
  }
  builder.notes.push('The air between the films keeps its pressure in a gust: the fan follows at once.');
  return builder.finish(shelter, false);
}

/** Guys outside both rows hold the heads from moving inwards, and do nothing the other way. */
function addGuys(builder: SystemBuilder, shelter: Shelter, brace: Brace, from: number, to: number): void {
  const { member } = brace;
  const out = Math.abs(brace.to.x - brace.from.x);
  const length = Math.hypot(out, brace.to.y - brace.from.y);
  const modulus = member.kind === 'cable' ? member.modulus : member.material.modulus;
  const area = member.kind === 'cable' ? member.area : sectionOf(member).area;
  const share = perFrame(shelter, brace.count / 2);
  const stiffness = ((modulus * area) / length) * (out / length) ** 2 * share;
  for (const [node, side, direction] of [
    [from, 'left', -1],
    [to, 'right', 1],
  ] as const)
    builder.support(
      { node, dof: 'x', kind: 'contact', stiffness, gap: 0, direction },
      { part: brace.id, side, acts: 'x' },
    );
  builder.notes.push('What the guys press the posts down with is left out of the frame analysis.');
}
