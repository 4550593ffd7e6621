import type { MemberItem } from '@tautline/shelter';
import { sectionOf } from '@tautline/structure';

/** Smallest radius of gyration of a section, m: the narrow side of a rectangle, b / √12. */
export function leastRadius(member: MemberItem): number {
  const { section } = member;
  if (section.shape === 'rectangle') return Math.min(section.depth, section.breadth) / Math.sqrt(12);
  const { secondMoment, area } = sectionOf(member);
  return Math.sqrt(secondMoment / area);
}
