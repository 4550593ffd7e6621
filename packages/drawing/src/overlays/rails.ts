/** Ridge and eave rail under one load: what bends or pulls them between what carries them. */
import type { Shelter } from '@tautline/shelter';
import {
  eaveDemand,
  type FrameAnalysis,
  type RailDemand,
  type Response,
  ridgeDemand,
} from '@tautline/structure';

export interface LoadedRail {
  readonly noun: 'ridge' | 'eave rail';
  readonly demand: RailDemand;
  /** Where something carries it, along the house, m. */
  readonly carried: readonly number[];
}

/** Under this load alone: w L²/8 between posts, or the pull of a cable. */
export function loadedRails(
  shelter: Shelter,
  { ponding }: FrameAnalysis,
  response: Response,
): readonly LoadedRail[] {
  const { ridge, eaveRail, sidePosts, roof } = shelter;
  const standing =
    response.condition === 'permanent' || response.condition === 'season' ? (ponding?.standing ?? 0) : 0;
  const eave = eaveRail === undefined ? undefined : eaveDemand(shelter, [response]);
  return [
    ...(ridge === undefined
      ? []
      : [
          {
            noun: 'ridge' as const,
            demand: ridgeDemand(shelter, ridge, [response], standing),
            carried: ridge.posts?.stations ?? roof.stations,
          },
        ]),
    ...(eave === undefined
      ? []
      : [{ noun: 'eave rail' as const, demand: eave, carried: sidePosts?.stations ?? roof.stations }]),
  ];
}
