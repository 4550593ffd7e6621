/** Rails as a grower calls them, and what they carry between their posts. */
import { type Posts, type Rail, railsUnder, type Shelter } from '@tautline/shelter';
import {
  eaveDemand,
  type FrameAnalysis,
  type RailDemand,
  type Response,
  ridgeDemand,
} from '@tautline/structure';
import type { CheckInput } from './check.ts';

const nouns: Readonly<Record<Rail['role'], string>> = {
  ridge: 'ridge',
  eave: 'eave rail',
  purlin: 'purlins',
  baseboard: 'baseboards',
  grid: 'inner rail',
};

export const railNoun = ({ role }: Rail): string => nouns[role];

/** What the eave rail carries between its posts, over the responses asked for. */
export function eaveLoad(
  shelter: Shelter,
  analysis: Pick<FrameAnalysis, 'responses'>,
  wanted: (response: Response) => boolean,
): RailDemand | undefined {
  return eaveDemand(shelter, analysis.responses, wanted);
}

/** What the frames bring a ridge or an inner line. */
export interface RailDemands {
  /** Under one combination; undefined where it brings nothing. */
  readonly inResponse: (response: Response) => RailDemand | undefined;
  /** Without wind and beside the combinations: water that stands at the crown. */
  readonly calm: readonly RailDemand[];
}

export function railDemands(
  { shelter, frame }: Pick<CheckInput, 'shelter' | 'frame'>,
  rail: Rail,
): RailDemands {
  const standing = frame.ok
    ? [frame.analysis.ridge, ...frame.analysis.inner].find((one) => one?.rail.id === rail.id)?.water
    : undefined;
  return {
    inResponse: (response) => {
      // In the whole house the rail has forces of its own.
      if (response.rails !== undefined) return response.rails.find((one) => one.rail.id === rail.id);
      return response.reactions.some(({ part }) => part === rail.id)
        ? ridgeDemand(shelter, rail, [response])
        : undefined;
    },
    calm: standing === undefined ? [] : [standing],
  };
}

export const postNoun = ({ role }: Rail): string => (role === 'ridge' ? 'ridge post' : 'inner post');

/** Rows of posts under the roof with the name of one of them. */
export function rowsUnder(shelter: Shelter): readonly { posts: Posts; rail: Rail; noun: string }[] {
  return railsUnder(shelter).flatMap((rail) =>
    rail.posts === undefined ? [] : [{ posts: rail.posts, rail, noun: postNoun(rail) }],
  );
}
