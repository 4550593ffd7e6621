/**
 * The moments in a frame's life at which it is looked at.
 *
 * - `built`: the cold day it goes up. Plastics have their full short-term modulus and nothing has relaxed.
 * - `service`: years later on a hot day. Sprung plastics have crept: the shape stays, the locked-in stress
 *   has fallen to the long-term share, and wind still meets the short-term modulus at that temperature.
 * - `soaked`: the same with the long-term modulus, for loads that stay (hung crop, standing water).
 */
export type ConditionId = 'built' | 'service' | 'soaked';

export interface Condition {
  readonly id: ConditionId;
  /** Temperature of the members, °C. */
  readonly temperature: number;
  /** True once the locked-in curvature has relaxed. */
  readonly relaxed: boolean;
  /** True when loads stay long enough for the long-term modulus. */
  readonly sustained: boolean;
}

export function conditionsAt(site: { coldest: number; hottest: number }): Record<ConditionId, Condition> {
  return {
    built: { id: 'built', temperature: site.coldest, relaxed: false, sustained: false },
    service: { id: 'service', temperature: site.hottest, relaxed: true, sustained: false },
    soaked: { id: 'soaked', temperature: 23, relaxed: true, sustained: true },
  };
}
