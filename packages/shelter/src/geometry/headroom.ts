/** Room under a frame. */
import type { MemberItem } from '../model/items.ts';
import type { Brace, Roof } from '../model/shelter.ts';
import { innerFilm } from './inner-film.ts';
import { crossingsAt, heightAt, pointOn } from './line.ts';

/** What may come down over a head: the roof, and what is straight across under it. */
export interface Overhead {
  readonly roof: Roof;
  readonly braces?: readonly Brace[];
}

/**
 * Underside of the frame at a distance from the left side, m: the centre line less half the depth of
 * the member, square to its slope; under a blown-up roof its inner film. Undefined where nothing is overhead.
 */
export function undersideAt(roof: Roof, fromSide: number): number | undefined {
  const height = heightAt(roof.type === 'inflated' ? innerFilm(roof) : roof.line, fromSide);
  if (height === undefined) return undefined;
  const half = 'member' in roof ? depth(roof.member) / 2 : 0;
  const slope = slopeNear(roof, fromSide, height);
  return Math.max(0, height - half / Math.max(0.1, Math.cos(slope)));
}

/** Underside of the lowest tie across at a distance from the left side, m; undefined where none is. */
export function tieUndersideAt({ roof, braces = [] }: Overhead, fromSide: number): number | undefined {
  const ties = braces
    .filter(({ role }) => role === 'tie')
    .map(({ from, to, member }) => ({ from: from.x, to: to.x, under: from.y - thickness(member) / 2 }));
  if (roof.type === 'rafters' && roof.tie !== undefined) {
    const y = roof.springing + roof.tie.height;
    const ends = roof.tie.height > 0 ? crossingsAt(roof.line, y) : roof.line.map(({ x }) => x);
    ties.push({ from: Math.min(...ends), to: Math.max(...ends), under: y - thickness(roof.tie.member) / 2 });
  }
  const over = ties.filter(({ from, to }) => fromSide >= from && fromSide <= to);
  return over.length === 0 ? undefined : Math.max(0, Math.min(...over.map(({ under }) => under)));
}

/** Clear height at a distance from the left side, m: under the frame, or under a tie where one is lower. */
export function clearHeightAt(overhead: Overhead, fromSide: number): number | undefined {
  const under = undersideAt(overhead.roof, fromSide);
  const tie = tieUndersideAt(overhead, fromSide);
  return under === undefined || tie === undefined ? under : Math.min(under, tie);
}

/** Parts a stretch is looked at in: a roof line is lowest at an end of it, or under a crown or hanging film. */
const parts = 16;

/** Where the clear height is least between two places across the house, m; undefined where no roof is. */
export function leastClearOver(
  overhead: Overhead,
  from: number,
  to: number,
): { readonly x: number; readonly height: number } | undefined {
  let least: { readonly x: number; readonly height: number } | undefined;
  for (let n = 0; n <= parts; n++) {
    const x = from + ((to - from) * n) / parts;
    const height = clearHeightAt(overhead, x);
    if (height !== undefined && (least === undefined || height < least.height)) least = { x, height };
  }
  return least;
}

function thickness(member: Brace['member']): number {
  return member.kind === 'cable' ? member.diameter : depth(member);
}

function depth(member: MemberItem): number {
  return member.section.shape === 'rectangle' ? member.section.depth : member.section.outside;
}

function slopeNear(roof: Roof, x: number, y: number): number {
  const nearest = roof.line.reduce(
    (best, point) =>
      Math.hypot(point.x - x, point.y - y) < Math.hypot(best.x - x, best.y - y) ? point : best,
    roof.line[0]!,
  );
  return Math.abs(pointOn(roof.line, nearest.s).angle);
}
