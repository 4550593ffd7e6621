/** How a foot holds what stands on it: firm, or as the soil around it gives. */
import { footSprings } from '@tautline/loads';
import type { Foot, MemberItem, Site } from '@tautline/shelter';
import type { FrameSupport, SystemBuilder } from './frame-system.ts';
import { sectionOf } from './member.ts';

export interface FootGive {
  /** N/m at ground level. */
  readonly sideways: number;
  /** N·m/rad at ground level. */
  readonly turning: number;
}

/**
 * Springs of the soil around a foot that goes into it; undefined for feet that only stand on the ground, for those
 * that hold by an anchor, and on rock. `member` is what stands in the ground where the foot has no stub.
 */
export function footGive(site: Site, foot: Foot, member: MemberItem): FootGive | undefined {
  const { kind, driven, stub } = foot;
  if (site.soil === 'rock' || driven <= 0) return undefined;
  // Concrete does not bend.
  if (kind === 'concrete') return footSprings({ soil: site.soil, depth: driven, waterlogged: site.soaked });
  if (kind !== 'stub' && kind !== 'driven' && kind !== 'poked' && kind !== 'hole') return undefined;
  const stake = stub ?? member;
  const rigidity = stake.material.modulus * sectionOf(stake).secondMoment;
  return footSprings({ soil: site.soil, depth: driven, rigidity, waterlogged: site.soaked });
}

export interface Held {
  readonly node: number;
  readonly part: string;
  readonly side: FrameSupport['side'];
  /** Whether the foot keeps what stands on it from turning. */
  readonly clamped: boolean;
  /** What the ground gives by; firm when absent. */
  readonly give?: FootGive | undefined;
  /** Feet to one frame, where they stand further apart than the frames. */
  readonly share?: number;
}

/** Stands a node of the plane system on its foot. */
export function holdFoot(builder: SystemBuilder, { node, part, side, clamped, give, share = 1 }: Held): void {
  const along = (dof: 'x' | 'y' | 'r', spring: number | undefined): void => {
    builder.support(
      spring === undefined
        ? { node, dof, kind: 'fixed' }
        : { node, dof, kind: 'spring', stiffness: share * spring },
      { part, side, acts: dof },
    );
  };
  along('x', give?.sideways);
  along('y', undefined);
  if (clamped) along('r', give?.turning);
}

/** What the springs of feet leave out. */
export const givingFeet =
  'Feet give sideways and in turning as the soil does, push and moment each by itself; they do not lift or sink.';
