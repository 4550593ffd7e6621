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

/** Modulus of concrete pressed for long, Pa: 30 GPa over 1 + a creep coefficient of 2 (EN 1992-1-1 3.1.4): from memory. */
const concreteModulus = 10e9;

/**
 * What the filling of a post adds to its stiffness along it, N: the bar inside, or the concrete where there is none
 * (with a bar, the concrete is left to crack). Only where it is filled from the ground to its head.
 */
export function fillingAlong(filled: Filled | undefined, host: MemberItem, height: number): number {
  if (filled === undefined || filled.upTo < height - 0.05) return 0;
  if (filled.member !== undefined) return filled.member.material.modulus * sectionOf(filled.member).area;
  const { section } = host;
  if (filled.with !== 'concrete' || section.shape !== 'round-hollow') return 0;
  return concreteModulus * Math.PI * (section.outside / 2 - section.wall) ** 2;
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
