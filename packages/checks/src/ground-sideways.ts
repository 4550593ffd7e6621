import {
  ballastSliding,
  embeddedMoment,
  embeddedSideways,
  type SidewaysHold,
  type SidewaysInput,
  type Stay,
  type Step,
} from '@tautline/loads';
import type { Foot, MemberItem, Site } from '@tautline/shelter';
import { depthOf, gravity, sectionOf } from '@tautline/structure';
import type { NoHold } from './ground.ts';
import { memberLimit } from './resistance.ts';

export interface Sideways {
  /** Push at the ground, N. */
  readonly push: number;
  /** Bending of the foot at the ground, N·m. */
  readonly moment: number;
  /** Lift at the same time, N; negative where the foot is pressed down. */
  readonly lift: number;
  /** Whether the push is that of a gust, or stays. */
  readonly stay: Stay;
}

/** What a foot in the ground is, all but how it is pushed; and how its own bending was found. */
interface Embedded {
  readonly input: Omit<SidewaysInput, 'height' | 'pressed'>;
  readonly steps: readonly Step[];
}

/**
 * What the ground holds a foot with against a sideways push. The push counts as acting at the height that
 * gives the foot its bending, e = M / H. Stakes, posts and concrete by one method (`embeddedSideways`), stakes by
 * their own bending besides; ballast and pads by friction.
 */
export function footSideways(
  foot: Foot,
  member: MemberItem,
  site: Site,
  load: Sideways,
): SidewaysHold | NoHold {
  const { soil } = site;
  if (foot.kind === 'ballast' || foot.kind === 'bearing') {
    if (soil === 'rock') return { reason: 'how things slide on bare rock is not covered' };
    const mass = (foot.mass ?? 0) + Math.max(0, -load.lift) / gravity;
    if (mass <= 0) return { reason: 'nothing presses the foot to the ground' };
    const across = foot.across ?? depthOf(member);
    return ballastSliding({ soil, mass }, Math.max(0, load.lift), (Math.PI / 4) * across ** 2);
  }
  const embedded = inGround(foot, member, site, load.stay);
  if ('reason' in embedded) return embedded;
  const height = Math.abs(load.moment) / Math.max(Math.abs(load.push), 1e-6);
  const hold = embeddedSideways({ ...embedded.input, height, pressed: Math.max(0, -load.lift) });
  return { ...hold, steps: [...embedded.steps, ...hold.steps] };
}

/** Bending (N·m) that a foot may hold by its embedded length alone, with no push at the ground: how far it can clamp. */
export function footMoment(foot: Foot, member: MemberItem, site: Site, stay: Stay): number | undefined {
  const embedded = inGround(foot, member, site, stay);
  return 'reason' in embedded ? undefined : embeddedMoment(embedded.input);
}

function inGround(foot: Foot, member: MemberItem, site: Site, stay: Stay): Embedded | NoHold {
  const { soil } = site;
  if (soil === 'rock') return { reason: 'stakes and posts in rock are not covered' };
  if (foot.kind === 'screw' || foot.kind === 'deadman')
    return { reason: 'what a screw or a deadman holds sideways is not covered' };
  if (foot.driven <= 0) return { reason: 'the foot does not go into the ground' };
  const ground = { soil, depth: foot.driven, stay, basis: site.basis, waterlogged: site.soaked };
  switch (foot.kind) {
    case 'hole': {
      const { section } = member;
      const underside =
        section.shape === 'rectangle' ? section.depth * section.breadth : sectionOf(member).area;
      const input = { ...ground, ...acrossPost(member), setting: 'hole', underside } as const;
      return { input, steps: [] };
    }
    case 'concrete': {
      if (foot.across === undefined) return { reason: 'the width of the concrete was not said' };
      const underside = (Math.PI / 4) * foot.across ** 2;
      return { input: { ...ground, width: foot.across, setting: 'concrete', underside }, steps: [] };
    }
    case 'ballast':
    case 'bearing':
      return { reason: 'the foot does not go into the ground' };
    case 'stub':
    case 'driven':
    case 'poked': {
      const stake = foot.stub ?? member;
      // In the soil it is wet.
      const limit = memberLimit(site, stake, stay, true);
      const allowedMoment = limit.bending * sectionOf(stake).sectionModulus;
      const underside = sectionOf(member).area;
      const input = {
        ...ground,
        width: depthOf(stake),
        setting: 'driven',
        underside,
        allowedMoment,
      } as const;
      return { input, steps: limit.steps };
    }
  }
}

/** Width of a post against the soil; of a square post the diagonal, too, which IBC 1807.3.2.1 lets count. */
function acrossPost(member: MemberItem): Pick<SidewaysInput, 'width' | 'diagonal'> {
  const { section } = member;
  return section.shape === 'rectangle'
    ? {
        width: Math.min(section.depth, section.breadth),
        diagonal: Math.hypot(section.depth, section.breadth),
      }
    : { width: section.outside };
}
