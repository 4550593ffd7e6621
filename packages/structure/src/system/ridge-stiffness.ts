/**
 * How stiffly a ridge holds each frame it carries, at the frame furthest from its posts.
 */
import type { Rail, Shelter } from '@tautline/shelter';
import { cableUnderLoad } from '../rail/cable-rail.ts';
import { footGive } from './foot-hold.ts';
import type { SystemBuilder } from './frame-system.ts';
import { sectionOf, sidewaysSection } from './member.ts';

export interface RidgeStiffness {
  /** N/m at one frame. */
  readonly perFrame: number;
  /**
   * Sideways, N/m at one frame halfway between posts: what runs along gives, and its posts stand as cantilevers.
   * 0 where it has none or the frames lie loose.
   */
  readonly sideways: number;
  readonly tied: boolean;
}

/** Arc lengths at which the inner lines of a grid hold a frame, m. */
export const innerPlaces = ({ inner = [] }: Shelter): readonly number[] =>
  inner.flatMap(({ lines }) => lines.flatMap(({ s }) => s ?? []));

/**
 * Holds the node over each inner line of a grid up and down as its rail gives. Its posts are not counted on to hold
 * sideways.
 */
export function holdInside(builder: SystemBuilder, shelter: Shelter, nodeAt: (s: number) => number): void {
  for (const rail of shelter.inner ?? []) {
    const { perFrame } = ridgeStiffness(shelter, rail, 0);
    rail.lines.forEach(({ x, s }) => {
      if (s === undefined) return;
      const side = rail.lines.length === 1 ? 'line' : x < shelter.width / 2 ? 'left' : 'right';
      builder.support(
        { node: nodeAt(s), dof: 'y', kind: 'spring', stiffness: perFrame },
        { part: rail.id, side, acts: 'y' },
      );
    });
  }
  if ((shelter.inner ?? []).length > 0)
    builder.notes.push('Inner posts are counted on to carry, not to hold the frame sideways.');
}

/** Holds the crown node the way the ridge does: tied both ways and sideways, loose only from below. */
export function holdCrown(builder: SystemBuilder, node: number, ridge: RidgeStiffness): void {
  const meaning = { part: 'ridge', side: 'crown' as const };
  if (!ridge.tied) {
    builder.support(
      { node, dof: 'y', kind: 'contact', stiffness: ridge.perFrame, gap: 0, direction: 1 },
      { ...meaning, acts: 'y' },
    );
    builder.notes.push('The ridge only pushes up: nothing ties the frames to it.');
    return;
  }
  builder.support({ node, dof: 'y', kind: 'spring', stiffness: ridge.perFrame }, { ...meaning, acts: 'y' });
  if (ridge.sideways > 0) {
    builder.support({ node, dof: 'x', kind: 'spring', stiffness: ridge.sideways }, { ...meaning, acts: 'x' });
  }
}

/**
 * Posts clamped in the ground, k = 3 E I / h³ each (handbook), shared out to the frames, and the ridge that gives
 * sideways between them (`alongRidge`): one behind the other, 1/k = 1/k_posts + 1/k_ridge.
 */
function sidewaysStiffness(shelter: Shelter, ridge: Rail, alongRidge: number, soil: boolean): number {
  const posts = ridge.posts;
  if (!ridge.tied || posts === undefined || posts.foot.fixity !== 'clamped') return 0;
  const { member, height, foot } = posts;
  const bends = height ** 3 / (3 * member.material.modulus * sectionOf(member).secondMoment);
  // A foot that gives lets the head move by its own movement, and by its turning over the height.
  const give = soil ? footGive(shelter.site, foot, member) : undefined;
  const each = 1 / (bends + (give === undefined ? 0 : 1 / give.sideways + height ** 2 / give.turning));
  const perFrame = each * Math.min(1, shelter.roof.spacing / posts.spacing);
  return 1 / (1 / perFrame + 1 / alongRidge);
}

/**
 * Stiffness of the ridge at midspan for one frame, N/m.
 *
 * A rail or pipe is taken as simply supported over its posts under the frames' even push w:
 * δ = 5 w L⁴ / 384 E I (handbook), so one frame at spacing s meets k = 384 E I s / 5 L⁴. A cable is
 * worked out at the push it gets (its sag stiffens it), so the caller passes the push of one frame; sideways it
 * gives as a string under its pull, δ = w L² / 8 T (handbook).
 */
export function ridgeStiffness(
  shelter: Shelter,
  ridge: Rail,
  pushPerFrame: number,
  soil = false,
): RidgeStiffness {
  const spacing = shelter.roof.spacing;
  const { member, span, tied } = ridge;
  if (member.kind === 'cable') {
    const push = Math.max(pushPerFrame, 1);
    const { sag, tension } = cableUnderLoad(member, span, ridge.tension ?? 0, push / spacing);
    const sideways = sidewaysStiffness(shelter, ridge, (8 * tension * spacing) / span ** 2, soil);
    return { perFrame: push / sag, sideways, tied };
  }
  const bending = (secondMoment: number): number =>
    (384 * member.material.modulus * secondMoment * spacing) / (5 * span ** 4);
  const sideways = sidewaysStiffness(shelter, ridge, bending(sidewaysSection(member).secondMoment), soil);
  return { perFrame: bending(sectionOf(member).secondMoment), sideways, tied };
}
