/**
 * The moments in a frame's life at which it is looked at: the cold day it goes up, and years later under what stays as
 * long as each duration says.
 *
 * - `built`: plastics have their full short-term modulus and nothing has relaxed.
 * - the durations: sprung plastics have crept. The shape stays, the locked-in stress has fallen to the long-term share,
 *   and a load meets the modulus that is left after the hours it stays: the short-term one in a gust, the long-term one
 *   under own weight.
 */
import { type Duration, HOURS } from '@tautline/loads';
import type { MemberItem } from '@tautline/shelter';
import { relaxedShare } from './member.ts';

export type ConditionId = 'built' | Duration;

export interface Condition {
  readonly id: ConditionId;
  /** Temperature of the members, °C. */
  readonly temperature: number;
  /** True once the locked-in curvature has relaxed. */
  readonly relaxed: boolean;
  /** How long the load stays, hours. */
  readonly hours: number;
}

/** Something for each condition that was asked for; the frame as built is always there. */
export type ByCondition<T> = { readonly built: T } & { readonly [duration in Duration]?: T };

/** That of one condition. Throws RangeError where no load asked for it. */
export function stateIn<T>(states: ByCondition<T>, condition: ConditionId): T {
  const found = states[condition];
  if (found === undefined) throw new RangeError(`no load of this frame stays as '${condition}' says`);
  return found;
}

/** Temperature of the frame in a storm or in rain, °C: cloud and rain keep plastics near the handbook's 23 °C. */
export const stormTemperature = 23;

/** Hours of a short-term test, and of the years that a long-term modulus stands for (ten). */
const shortTerm = HOURS.gust;
const longTerm = HOURS.permanent;

/** All that a frame takes of a condition which does not creep. */
export type Warmth = Pick<Condition, 'temperature'>;

/** The frame as it goes up, or under loads that stay so long. */
export function conditionAt(site: { readonly coldest: number }, id: ConditionId): Condition {
  if (id === 'built') return { id, temperature: site.coldest, relaxed: false, hours: shortTerm };
  return { id, temperature: stormTemperature, relaxed: true, hours: HOURS[id] };
}

/**
 * Share of the short-term modulus that answers a load which stays for some hours: a straight line in
 * log-log between the short-term and the long-term modulus (the usual shape of creep curves; from memory).
 */
export function modulusShare(member: MemberItem, hours: number): number {
  const way = Math.log(hours / shortTerm) / Math.log(longTerm / shortTerm);
  return relaxedShare(member) ** Math.min(1, Math.max(0, way));
}
