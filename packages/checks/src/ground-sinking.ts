import {
  bearingCapacity,
  type Expected,
  type GroundResult,
  groundAllowedAt,
  LOOSE_TOP,
  postUplift,
  type Step,
  stubUplift,
} from '@tautline/loads';
import type { Foot, MemberItem, Rail, Shelter, Site } from '@tautline/shelter';
import { depthOf, gravity } from '@tautline/structure';
import { girthOf, type NoHold } from './ground.ts';

export interface Sinking {
  /** Upright load it may take at the level of the site's combinations, N. */
  readonly allowed: number;
  /** Load at which it is expected to sink, in the state the site's ground is taken to be in. */
  readonly expected: Expected;
  readonly steps: readonly Step[];
  readonly source: string;
  /** What carries, in words. */
  readonly what: string;
}

/** A baseboard that the bows of a shelter stand on, and how far apart they do. */
export interface Boards {
  readonly rail: Rail;
  readonly spacing: number;
}

export function boardsUnder({ baseboards, roof }: Shelter): Boards | undefined {
  return baseboards === undefined ? undefined : { rail: baseboards, spacing: roof.spacing };
}

/**
 * Depth down to which a storm softens what a foot stands on, m: own choice, twice the loose top. Below it the
 * presumptive pressure of IBC 1806.2 serves in wet and dry seasons alike, and the factor of 3 covers the rest.
 */
const softened = 2 * LOOSE_TOP;

/** Side of the square with the area of a circle, m. */
function squareOf(diameter: number): number {
  return Math.sqrt(Math.PI / 4) * diameter;
}

/** Side and underside give together. */
function both(side: GroundResult, end: GroundResult): Expected {
  const { spread, source } = end.expected;
  return {
    median: side.expected.median + end.expected.median,
    spread,
    source,
    steps: [...side.expected.steps, ...end.expected.steps],
  };
}

/**
 * What the ground carries under a foot: skin friction and point of a stake, the underside of a post, pad or
 * concrete, or the edge of a baseboard that the bows stand on. Freshly driven stakes and their point count
 * together, each with its own safety.
 */
export function footSinking(
  foot: Foot,
  member: MemberItem,
  site: Site,
  boards: Boards | undefined,
): Sinking | NoHold {
  const { soil, basis } = site;
  const waterlogged = site.soaked;
  if (soil === 'rock') return { reason: 'feet on rock are not covered' };
  const bearing = (breadth: number, length: number, depth: number): GroundResult =>
    bearingCapacity({ soil, breadth, length, depth, waterlogged: waterlogged && depth < softened });
  const one = (result: GroundResult, what: string): Sinking => ({
    allowed: groundAllowedAt(result, basis),
    expected: result.expected,
    steps: result.steps,
    source: result.source,
    what,
  });
  switch (foot.kind) {
    case 'stub':
    case 'driven':
    case 'poked': {
      const ownEnd = depthOf(member);
      if (foot.kind === 'stub' && boards !== undefined && boards.rail.member.kind !== 'cable') {
        const section = boards.rail.member.section;
        const edge =
          section.shape === 'rectangle' ? Math.min(section.breadth, section.depth) : section.outside;
        return one(bearing(edge, boards.spacing, 0), 'the edge of the baseboard');
      }
      if (foot.driven <= 0) return { reason: 'the foot does not go into the ground' };
      const stake = foot.stub ?? member;
      const side = stubUplift({ soil, diameter: depthOf(stake), depth: foot.driven, waterlogged });
      // The bow's own end stands on the ground around a stub; a driven end bears at its point.
      const end = bearing(squareOf(ownEnd), squareOf(ownEnd), foot.kind === 'stub' ? 0 : foot.driven);
      return {
        allowed: groundAllowedAt(side, basis) + groundAllowedAt(end, basis),
        expected: both(side, end),
        steps: [...side.steps, ...end.steps],
        source: side.source,
        what: 'the side of the stake and the end of the member',
      };
    }
    case 'hole': {
      if (foot.driven <= 0) return { reason: 'the foot does not go into the ground' };
      const { section } = member;
      const [breadth, length] =
        section.shape === 'rectangle'
          ? [section.breadth, section.depth]
          : [squareOf(section.outside), squareOf(section.outside)];
      // The earth thrown back holds the post as it does against lift.
      const side = postUplift({ soil, girth: girthOf(member), depth: foot.driven, waterlogged });
      const end = bearing(breadth, length, foot.driven);
      return {
        allowed: groundAllowedAt(side, basis) + groundAllowedAt(end, basis),
        expected: both(side, end),
        steps: [...side.steps, ...end.steps],
        source: end.source,
        what: 'the underside and the sides of the post',
      };
    }
    case 'concrete':
    case 'bearing':
    case 'ballast': {
      if (foot.across === undefined)
        return { reason: `how wide the ${foot.kind === 'concrete' ? 'concrete' : 'pad'} is was not said` };
      const own = (foot.mass ?? 0) * gravity;
      const result = one(
        bearing(squareOf(foot.across), squareOf(foot.across), foot.driven),
        `its underside, ${foot.kind === 'concrete' ? 'in concrete' : 'on the ground'}`,
      );
      return { ...result, allowed: Math.max(0, result.allowed - own) };
    }
    case 'screw':
    case 'deadman':
      return { reason: 'a screw or a deadman holds against lift; what it carries is not covered' };
  }
}
