/** Room under a frame. */
import type { MemberItem } from '../model/items.ts';
import type { Roof } from '../model/shelter.ts';
import { innerFilm } from './inner-film.ts';
import { heightAt, pointOn } from './line.ts';

/**
 * Clear height under the frame at a distance from the left side, m: the centre line less half the depth of
 * the member, square to its slope; under a blown-up roof its inner film. Undefined where nothing is overhead.
 */
export function clearHeightAt({ roof }: { readonly roof: Roof }, fromSide: number): number | undefined {
  const height = heightAt(roof.type === 'inflated' ? innerFilm(roof) : roof.line, fromSide);
  if (height === undefined) return undefined;
  const half = 'member' in roof ? depth(roof.member) / 2 : 0;
  const slope = slopeNear(roof, fromSide, height);
  return Math.max(0, height - half / Math.max(0.1, Math.cos(slope)));
}

/** Parts a stretch is looked at in: a roof line is lowest at an end of it, or under a crown or hanging film. */
const parts = 16;

/** Where the clear height is least between two places across the house, m; undefined where no roof is. */
export function leastClearOver(
  roof: Roof,
  from: number,
  to: number,
): { readonly x: number; readonly height: number } | undefined {
  let least: { readonly x: number; readonly height: number } | undefined;
  for (let n = 0; n <= parts; n++) {
    const x = from + ((to - from) * n) / parts;
    const height = clearHeightAt({ roof }, x);
    if (height !== undefined && (least === undefined || height < least.height)) least = { x, height };
  }
  return least;
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
