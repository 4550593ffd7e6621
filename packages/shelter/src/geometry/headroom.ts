/** Room under a frame. */
import type { MemberItem } from '../model/items.ts';
import type { Shelter } from '../model/shelter.ts';
import { innerFilm } from './inner-film.ts';
import { heightAt, pointOn } from './line.ts';

/**
 * Clear height under the frame at a distance from the left side, m: the centre line less half the depth of
 * the member, square to its slope; under a blown-up roof its inner film. Undefined where nothing is overhead.
 */
export function clearHeightAt(shelter: Shelter, fromSide: number): number | undefined {
  const { roof } = shelter;
  const height = heightAt(roof.type === 'inflated' ? innerFilm(roof) : roof.line, fromSide);
  if (height === undefined) return undefined;
  const half = 'member' in roof ? depth(roof.member) / 2 : 0;
  const slope = slopeNear(shelter, fromSide, height);
  return Math.max(0, height - half / Math.max(0.1, Math.cos(slope)));
}

function depth(member: MemberItem): number {
  return member.section.shape === 'rectangle' ? member.section.depth : member.section.outside;
}

function slopeNear({ roof }: Shelter, x: number, y: number): number {
  const nearest = roof.line.reduce(
    (best, point) =>
      Math.hypot(point.x - x, point.y - y) < Math.hypot(best.x - x, best.y - y) ? point : best,
    roof.line[0]!,
  );
  return Math.abs(pointOn(roof.line, nearest.s).angle);
}
