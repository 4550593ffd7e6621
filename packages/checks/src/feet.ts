import type { Foot, MemberItem, Part, Posts, Shelter } from '@tautline/shelter';
import { fillingWeight, type Reaction, type Response, weightPerLength } from '@tautline/structure';
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

/** The reaction of a foot, left or right, at which a measure is largest, over combinations for strength. */
export function worstReaction(
  responses: readonly Response[],
  foot: string,
  measure: (reaction: Reaction, response: Response) => number,
): { readonly reaction: Reaction; readonly response: Response; readonly value: number } | undefined {
  let worst: { reaction: Reaction; response: Response; value: number } | undefined;
  for (const response of responses) {
    if (response.load.use === 'service' || response.status !== 'holds') continue;
    for (const reaction of response.reactions) {
      if (reaction.part !== foot) continue;
      const value = measure(reaction, response);
      if (worst === undefined || value > worst.value) worst = { reaction, response, value };
    }
  }
  return worst;
}

/** Weight of one post with what fills it, N. */
export function postWeight({ member, height, filled }: Posts): number {
  return weightPerLength(member) * height + fillingWeight(filled, member, 0) * (filled?.upTo ?? 0);
}
