/**
 * The moments in a frame's life at which it is looked at: the cold day it goes up, and years later under what stays as
 * long as each duration says.
 *
 * - `built`: plastics have their full short-term modulus and nothing has relaxed.
 * - the durations: sprung plastics have crept. The shape stays, the locked-in stress has fallen to the long-term share,
 *   and a load meets the modulus that is left after the hours it stays: the short-term one in a gust, the long-term one
 *   under own weight. What stays for days or longer is met in the heat of a hot noon as well.
 */
import { type Duration, HOURS } from '@tautline/loads';
import type { MemberItem } from '@tautline/shelter';
import { heatFactors, relaxedShare } from './member.ts';

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

/** Temperature of the frame in a storm, °C: cloud and rain keep plastics near the handbook's 23 °C. Own choice. */
export const stormTemperature = 23;

/** Hours of a short-term test, and of the years that a long-term modulus stands for (ten). */
const shortTerm = HOURS.gust;
const longTerm = HOURS.permanent;

/** What a site says of the temperature of pipes, °C. */
export interface Temperatures {
  /** Of a pipe on the day of building. */
  readonly coldest: number;
  /** Of a pipe under film in full sun. */
  readonly hottest: number;
}

/**
 * Temperature of the members, °C. What stays for days or longer is still there at the hottest noon, and the site's
 * hottest is already that of a pipe under film in full sun. Snow lies in the cold: the handbook's 23 °C is on the
 * careful side of it. A storm brings cloud, and nobody climbs a hot frame at noon: own choice.
 */
export function temperatureUnder({ coldest, hottest }: Temperatures, id: ConditionId): number {
  switch (id) {
    case 'built':
      return coldest;
    case 'permanent':
    case 'season':
    case 'days':
      return Math.max(hottest, stormTemperature);
    default:
      return stormTemperature;
  }
}

/**
 * The frame as it goes up, or under loads that stay so long. A pond is there at the next hot noon and has to be carried
 * then, but it gathers while it rains: how far the frame gives while water runs in is asked in the cool of the rain.
 */
export function conditionAt(site: Temperatures, id: ConditionId): Condition {
  const temperature = id === 'days' ? stormTemperature : temperatureUnder(site, id);
  if (id === 'built') return { id, temperature, relaxed: false, hours: shortTerm };
  return { id, temperature, relaxed: true, hours: HOURS[id] };
}

/** Modulus that meets the loads of a condition, Pa: what heat and the hours they stay leave of it. */
export function modulusIn(member: MemberItem, { temperature, hours }: Condition): number {
  return member.material.modulus * heatFactors(member, temperature).modulus * modulusShare(member, hours);
}

/**
 * Share of the short-term modulus that answers a load which stays for some hours: a straight line in
 * log-log between the short-term and the long-term modulus (the usual shape of creep curves; from memory).
 */
export function modulusShare(member: MemberItem, hours: number): number {
  const way = Math.log(hours / shortTerm) / Math.log(longTerm / shortTerm);
  return relaxedShare(member) ** Math.min(1, Math.max(0, way));
}
