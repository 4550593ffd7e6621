/** Braces, guys and ties in a section across the house. */
import type { Brace, Shelter } from '@tautline/shelter';
import { depthOf } from '../describe.ts';
import type { Frame } from '../scene/frame.ts';
import { band } from '../scene/outline.ts';
import { line, type Point, point, polygon, polyline, type Shape } from '../scene/shapes.ts';
import type { Anchor, Piece } from './anchors.ts';
import { footShapes } from './ground.ts';

/** Whether a brace stands in the two ends only, so that a typical frame has none. */
export const atEndsOnly = ({ role, plane, count }: Brace): boolean =>
  role === 'brace' && plane === 'across' && count <= 4;

/** Braces across the house that stand in the ends: beyond the typical frame, so dashed. */
export const braceBeyond = (shelter: Shelter, frame: Frame): Piece =>
  pieces(shelter.braces.filter(atEndsOnly), shelter, frame, true);

/** The other braces, guys and ties; those along the house are seen on edge and dashed. */
export const bracePieces = (shelter: Shelter, frame: Frame): Piece =>
  pieces(
    shelter.braces.filter((brace) => !atEndsOnly(brace)),
    shelter,
    frame,
    false,
  );

/** All braces across the house as the end of it shows them. */
export const endBraces = (shelter: Shelter, frame: Frame): Piece =>
  pieces(
    shelter.braces.filter(({ plane }) => plane === 'across'),
    shelter,
    frame,
    false,
  );

function pieces(braces: readonly Brace[], shelter: Shelter, frame: Frame, beyond: boolean): Piece {
  const shapes: Shape[] = [];
  const anchors: Anchor[] = [];
  for (const brace of braces) {
    const runs = runsOf(brace, shelter);
    for (const run of runs) shapes.push(...stretched(brace, run, frame, beyond));
    const [a, b] = runs[runs.length - 1] as readonly [Point, Point];
    anchors.push({
      part: brace.id,
      at: beyond ? between(a, b, frame, 0.3) : between(a, b, frame, 0.5),
      toward: point(-1, 0.5),
    });
    if (brace.foot && brace.plane === 'across') {
      const low = runs.map(([from, to]) => (from.y < to.y ? from : to));
      for (const { x } of low) shapes.push(...footShapes(brace.foot, frame, x, depthOf(brace.member), 0));
      anchors.push({
        part: brace.foot.id,
        at: frame.at(low.at(-1)?.x ?? 0, -brace.foot.driven * 0.7),
        toward: point(1, 0.4),
      });
    }
  }
  return { shapes, anchors };
}

const between = (a: Point, b: Point, frame: Frame, share: number): Point =>
  frame.at(a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share);

/** The one described and, where there is one on the other side, its mirror. */
function runsOf({ from, to, plane, count }: Brace, { width }: Shelter): readonly (readonly [Point, Point])[] {
  const one = [point(from.x, from.y), point(to.x, to.y)] as const;
  const both = count > 1 && (plane === 'across' ? from.x !== to.x : Math.abs(from.x - width / 2) > 1e-6);
  return both ? [one, [point(width - from.x, from.y), point(width - to.x, to.y)]] : [one];
}

function stretched(
  { id, plane, member }: Brace,
  [a, b]: readonly [Point, Point],
  frame: Frame,
  beyond: boolean,
): readonly Shape[] {
  const ends = [frame.at(a.x, a.y), frame.at(b.x, b.y)] as const;
  if (plane === 'along') return [line(id, 'member-hidden', ...ends)];
  if (member.kind === 'cable') return [line(id, beyond ? 'member-hidden' : 'cable', ...ends)];
  const outline = frame.all(band([a, b], depthOf(member)));
  return beyond
    ? [polyline(id, 'member-hidden', [...outline, outline[0] as Point])]
    : [polygon(id, 'post', outline)];
}
