import type { Foot, MemberItem, Part, Posts, Shelter } from '@tautline/shelter';
import { fillingWeight, type Reaction, type Response, weightPerLength } from '@tautline/structure';
import { type Use, worstOf } from './limit.ts';
import { rowsUnder } from './rails.ts';

/** A foot of the typical frame and what stands on it. */
export interface FrameFoot {
  readonly foot: Foot;
  readonly owner: Part & { readonly member: MemberItem };
  readonly noun: string;
  /** Frames that one foot carries: posts further apart than the frames take more than one each. */
  readonly frames: number;
}

export function frameFeet(shelter: Shelter): readonly FrameFoot[] {
  const { roof, sidePosts } = shelter;
  const feet: FrameFoot[] = [];
  if (roof.type === 'bows' && roof.foot !== undefined)
    feet.push({ foot: roof.foot, owner: roof, noun: 'bow', frames: 1 });
  if (sidePosts !== undefined) {
    feet.push({
      foot: sidePosts.foot,
      owner: sidePosts,
      noun: 'side post',
      frames: Math.max(1, sidePosts.spacing / roof.spacing),
    });
  }
  return feet;
}

/** Feet of the frames, and of the posts under a ridge or an inner line. */
export const feetOf = (shelter: Shelter): readonly Foot[] => [
  ...frameFeet(shelter).map(({ foot }) => foot),
  ...rowsUnder(shelter).map(({ posts }) => posts.foot),
];

/** The reaction of a foot, left or right, at which a use is largest in one response. */
export function worstUnder(
  { reactions }: Response,
  foot: string,
  use: (reaction: Reaction) => Use | undefined,
): Use | undefined {
  return worstOf(reactions.filter(({ part }) => part === foot).map(use));
}

/** Weight of one post with what fills it, N. */
export function postWeight({ member, height, filled }: Posts): number {
  return weightPerLength(member) * height + fillingWeight(filled, member, 0) * (filled?.upTo ?? 0);
}
