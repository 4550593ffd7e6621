import {
  ballastUplift,
  concreteFootUplift,
  deadmanUplift,
  expectedHold,
  type GroundResult,
  postUplift,
  type Stay,
  screwAnchorUplift,
  stubUplift,
} from '@tautline/loads';
import type { Foot, MemberItem, Site } from '@tautline/shelter';
import { depthOf } from '@tautline/structure';

/** Why the hold of a foot cannot be told. */
export interface NoHold {
  readonly reason: string;
}

/** Share of a hold from which on a load is told in words only, a hundred times what holds: own choice. */
const beyondCounting = 100;

/** Share of what may be counted on (N) that a load (N) asks for; a foot that holds next to nothing counts as a hundred. */
export function holdUse(load: number, allowed: number): number {
  return load <= 0 ? 0 : Math.min(beyondCounting, load / Math.max(allowed, 1e-9));
}

/** Whether a foot holds so little against a load that no share of it is worth telling. */
export const holdsNothing = (load: number, allowed: number): boolean =>
  holdUse(load, allowed) >= beyondCounting;

/** The ground as a message names it: 'soaked loam'. */
export const groundNamed = ({ soil, soaked }: Site): string => (soaked ? `soaked ${soil}` : soil);

/** Girth of a post in its hole, m. */
export function girthOf({ section }: MemberItem): number {
  return section.shape === 'rectangle' ? 2 * (section.depth + section.breadth) : Math.PI * section.outside;
}

/**
 * What the ground holds a foot down with, by published methods for its kind, soaked or drained as the site says.
 * `member` is the bow or post that goes into the ground itself when the foot has no stub; a wire has none. What is
 * pulled by wind alone may count on more than what is pulled for years.
 */
export function footUplift(
  foot: Foot,
  member: MemberItem | undefined,
  site: Site,
  stay: Stay = 'permanent',
): GroundResult | NoHold {
  const { soil } = site;
  const ground = { soil, waterlogged: site.soaked, depth: foot.driven, stay };
  if (soil === 'rock') return { reason: 'stakes and posts in rock are not covered' };
  if (foot.kind === 'ballast') {
    return foot.mass === undefined
      ? { reason: 'the mass of the ballast was not said' }
      : ballastUplift({ soil, mass: foot.mass });
  }
  // What only stands on the ground holds nothing down.
  if (foot.kind === 'bearing')
    return {
      capacity: 0,
      safetyFactor: 1,
      allowable: 0,
      expected: expectedHold(0, 'force'),
      steps: [],
      source: 'derived',
    };
  if (foot.driven <= 0) return { reason: 'the foot does not go into the ground' };
  const stake = foot.stub ?? member;
  switch (foot.kind) {
    case 'stub':
    case 'driven':
    case 'poked':
      return stake === undefined
        ? { reason: 'the stake was not said' }
        : stubUplift({ ...ground, diameter: depthOf(stake) });
    case 'hole':
      return member === undefined
        ? { reason: 'what stands in the hole was not said' }
        : postUplift({ ...ground, girth: girthOf(member) });
    case 'concrete':
      return foot.across === undefined
        ? { reason: 'the width of the concrete was not said' }
        : concreteFootUplift({ ...ground, diameter: foot.across });
    case 'screw': {
      const diameter = foot.anchor?.diameter ?? foot.across;
      return diameter === undefined
        ? { reason: 'the diameter of the screw was not said' }
        : screwAnchorUplift({ ...ground, breadth: diameter });
    }
    case 'deadman': {
      const breadth = foot.across ?? foot.anchor?.diameter;
      if (breadth === undefined) return { reason: 'the size of the deadman was not said' };
      // A log or beam lies level, and lifts the ground over its whole length.
      const long =
        foot.across === undefined && foot.anchor?.form === 'plate' ? foot.anchor.length : undefined;
      return deadmanUplift({
        ...ground,
        breadth,
        ...(long === undefined ? {} : { length: Math.max(long, breadth) }),
      });
    }
  }
}
