/** What is put inside a hollow member: its weight, and the stiffness of a bar in it. */
import type { Filled, MemberItem } from '@tautline/shelter';
import { gravity, sectionOf, weightPerLength } from './member.ts';

/** Density of plain concrete, kg/m3, as in the feet: from memory. */
const concrete = 2300;

/** Bending stiffness of the bar or stick inside at a height over the ground (m), which bends along with the pipe, N·m2. */
export function barStiffness(filled: Filled | undefined, height: number): number {
  if (filled?.member === undefined || height > filled.upTo) return 0;
  return filled.member.material.modulus * sectionOf(filled.member).secondMoment;
}

/** Weight of what is inside a member at a height over the ground (m), N/m. */
export function fillingWeight(filled: Filled | undefined, host: MemberItem, height: number): number {
  if (filled === undefined || height > filled.upTo) return 0;
  const bar = filled.member === undefined ? 0 : weightPerLength(filled.member);
  if (filled.with !== 'concrete' || host.section.shape !== 'round-hollow') return bar;
  const bore = Math.PI * (host.section.outside / 2 - host.section.wall) ** 2;
  const taken = filled.member === undefined ? 0 : sectionOf(filled.member).area;
  return bar + Math.max(0, bore - taken) * concrete * gravity;
}
