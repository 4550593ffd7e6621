import { type Part, railsUnder, type Shelter } from '@tautline/shelter';

/** Every part that the spec declares to be the one that goes first in a storm. */
export function sacrificialParts(shelter: Shelter): readonly Part[] {
  const { roof, sidePosts, eaveRail, purlins, braces, covers } = shelter;
  const framed = roof.type === 'bows' || roof.type === 'rafters' ? roof.joints : [];
  const parts: readonly (Part | undefined)[] = [
    roof,
    ...framed,
    ...(roof.type === 'bows' ? [roof.foot] : []),
    sidePosts,
    sidePosts?.foot,
    ...railsUnder(shelter).flatMap((rail) => [rail, rail.posts, rail.posts?.foot]),
    eaveRail,
    ...purlins,
    ...braces,
    ...covers,
  ];
  return parts.flatMap((part) => (part?.sacrificial === true ? [part] : []));
}
