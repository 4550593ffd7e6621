/**
 * How stiffly a ridge holds each frame it carries, at the frame furthest from its posts.
 */
import type { Rail, Shelter } from '@tautline/shelter';
import { cableUnderLoad } from '../rail/cable-rail.ts';
import { sectionOf } from './member.ts';

export interface RidgeStiffness {
  /** N/m at one frame. */
  readonly perFrame: number;
  readonly tied: boolean;
}

/**
 * Stiffness of the ridge at midspan for one frame, N/m.
 *
 * A rail or pipe is taken as simply supported over its posts under the frames' even push w:
 * δ = 5 w L⁴ / 384 E I (handbook), so one frame at spacing s meets k = 384 E I s / 5 L⁴. A cable is
 * worked out at the push it gets (its sag stiffens it), so the caller passes the push of one frame.
 */
export function ridgeStiffness(shelter: Shelter, ridge: Rail, pushPerFrame: number): RidgeStiffness {
  const spacing = shelter.roof.spacing;
  const span = ridge.span;
  if (ridge.member.kind === 'cable') {
    const push = Math.max(pushPerFrame, 1);
    const { sag } = cableUnderLoad(ridge.member, span, ridge.tension ?? 0, push / spacing);
    return { perFrame: push / sag, tied: ridge.tied };
  }
  const stiffness =
    (384 * ridge.member.material.modulus * sectionOf(ridge.member).secondMoment * spacing) / (5 * span ** 4);
  return { perFrame: stiffness, tied: ridge.tied };
}
