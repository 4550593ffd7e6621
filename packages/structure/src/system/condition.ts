/**
 * The moments in a frame's life at which it is looked at.
 *
 * - `built`: the cold day it goes up. Plastics have their full short-term modulus and nothing has relaxed.
 * - `service`: years later, in a gust. Sprung plastics have crept: the shape stays, the locked-in stress has
 *   fallen to the long-term share, and wind still meets the short-term modulus.
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

/** Temperature of the frame in a storm or in rain, °C: cloud and rain keep plastics near the handbook's 23 °C. */
export const stormTemperature = 23;

export function conditionsAt(site: { coldest: number }): Record<ConditionId, Condition> {
  return {
    built: {
      id: 'built',
      temperature: site.coldest,
      relaxed: false,
      sustained: false,
    },
    service: {
      id: 'service',
      temperature: stormTemperature,
      relaxed: true,
      sustained: false,
    },
    soaked: {
      id: 'soaked',
      temperature: stormTemperature,
      relaxed: true,
      sustained: true,
    },
  };
}
