import {
  ballastUplift,
  concreteFootUplift,
  deadmanUplift,
  type GroundResult,
  screwAnchorUplift,
  stubUplift,
} from '@tautline/loads';
import type { Foot, MemberItem, Site } from '@tautline/shelter';
import { depthOf } from '@tautline/structure';

/** Why the hold of a foot cannot be told. */
export interface NoHold {
  readonly reason: string;
}

/**
 * What the ground holds a foot down with, by published methods for its kind. `member` is the bow or post
 * that goes into the ground itself when the foot has no stub; a wire has none.
 */
export function footUplift(foot: Foot, member: MemberItem | undefined, site: Site): GroundResult | NoHold {
  const { soil } = site;
  if (soil === 'rock') return { reason: 'stakes and posts in rock are not covered' };
  if (foot.kind === 'ballast') {
    return foot.mass === undefined
      ? { reason: 'the mass of the ballast was not said' }
      : ballastUplift({ soil, mass: foot.mass });
  }
  // What only stands on the ground holds nothing down.
  if (foot.kind === 'bearing')
    return { capacity: 0, safetyFactor: 1, allowable: 0, steps: [], source: 'derived' };
  if (foot.driven <= 0) return { reason: 'the foot does not go into the ground' };
  const stake = foot.stub ?? member;
  switch (foot.kind) {
    case 'stub':
    case 'driven':
    case 'poked':
      return stake === undefined
        ? { reason: 'the stake was not said' }
        : stubUplift({ soil, diameter: depthOf(stake), depth: foot.driven });
    case 'hole':
      // Earth thrown back holds less than ground that was never dug: the post is counted as a stake of its own width.
      return member === undefined
        ? { reason: 'what stands in the hole was not said' }
        : stubUplift({ soil, diameter: depthOf(member), depth: foot.driven });
    case 'concrete':
      return foot.across === undefined
        ? { reason: 'the width of the concrete was not said' }
        : concreteFootUplift({ soil, diameter: foot.across, depth: foot.driven });
    case 'screw': {
      const diameter = foot.anchor?.diameter ?? foot.across;
      return diameter === undefined
        ? { reason: 'the diameter of the screw was not said' }
        : screwAnchorUplift({ soil, breadth: diameter, depth: foot.driven });
    }
    case 'deadman': {
      const breadth = foot.across ?? foot.anchor?.diameter;
      if (breadth === undefined) return { reason: 'the size of the deadman was not said' };
      // A log or beam lies level, and lifts the ground over its whole length.
      const long =
        foot.across === undefined && foot.anchor?.form === 'plate' ? foot.anchor.length : undefined;
      return deadmanUplift({
        soil,
        breadth,
        ...(long === undefined ? {} : { length: Math.max(long, breadth) }),
        depth: foot.driven,
      });
    }
  }
}
