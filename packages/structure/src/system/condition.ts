/**
 * The moments in a frame's life at which it is looked at.
 *
 * - `built`: the cold day it goes up. Plastics have their full short-term modulus and nothing has relaxed.
 * - `service`: years later, in a gust. Sprung plastics have crept: the shape stays, the locked-in stress has
 *   fallen to the long-term share, and wind still meets the short-term modulus.
 * - `rain`: years later, with water standing on the roof for a day.
 * - `soaked`: years later, under loads that stay for a season or more (own weight, hung crop).
 */
import type { MemberItem } from '@tautline/shelter';
import { relaxedShare } from './member.ts';

export type ConditionId = 'built' | 'service' | 'rain' | 'soaked';

export interface Condition {
  readonly id: ConditionId;
  /** Temperature of the members, °C. */
  readonly temperature: number;
  /** True once the locked-in curvature has relaxed. */
  readonly relaxed: boolean;
  /** How long the load stays, hours. */
  readonly hours: number;
}

/** Temperature of the frame in a storm or in rain, °C: cloud and rain keep plastics near the handbook's 23 °C. */
export const stormTemperature = 23;

/** Hours of a short-term test, and of the years that a long-term modulus stands for (ten). */
const shortTerm = 0.1;
const longTerm = 87_600;

/** All that a frame takes of a condition which does not creep. */
export type Warmth = Pick<Condition, 'temperature'>;

export function conditionsAt(site: { coldest: number }): Record<ConditionId, Condition> {
  return {
    built: { id: 'built', temperature: site.coldest, relaxed: false, hours: shortTerm },
    service: { id: 'service', temperature: stormTemperature, relaxed: true, hours: shortTerm },
    rain: { id: 'rain', temperature: stormTemperature, relaxed: true, hours: 24 },
    soaked: { id: 'soaked', temperature: stormTemperature, relaxed: true, hours: longTerm },
  };
}

/**
 * Share of the short-term modulus that answers a load which stays for some hours: a straight line in
 * log-log between the short-term and the long-term modulus (the usual shape of creep curves; from memory).
 */
export function modulusShare(member: MemberItem, hours: number): number {
  const way = Math.log(hours / shortTerm) / Math.log(longTerm / shortTerm);
  return relaxedShare(member) ** Math.min(1, Math.max(0, way));
}
