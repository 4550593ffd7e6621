import type { Part, Shelter } from '@tautline/shelter';

/** Every part that the spec declares to be the one that goes first in a storm. */
export function sacrificialParts(shelter: Shelter): readonly Part[] {
  const { roof, sidePosts, ridge, eaveRail, purlins, braces, covers } = shelter;
  const framed = roof.type === 'bows' || roof.type === 'rafters' ? roof.joints : [];
  const parts: readonly (Part | undefined)[] = [
    roof,
    ...framed,
    ...(roof.type === 'bows' ? [roof.foot] : []),
    sidePosts,
    sidePosts?.foot,
    ridge,
    ridge?.posts,
    ridge?.posts?.foot,
    eaveRail,
    ...purlins,
    ...braces,
    ...covers,
  ];
  return parts.flatMap((part) => (part?.sacrificial === true ? [part] : []));
}
