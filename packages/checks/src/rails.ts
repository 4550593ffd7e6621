/** Rails as a grower calls them, and what they carry between their posts. */
import { type Posts, type Rail, railsUnder, type Shelter } from '@tautline/shelter';
import {
  eaveDemand,
  type FrameAnalysis,
  type RailDemand,
  type Response,
  ridgeDemand,
} from '@tautline/structure';

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

/** A rail that holds the roof up between its sides, with what the analysis found on it. */
export interface RailUnder {
  readonly rail: Rail;
  /** Absent where the analysis brings nothing to it. */
  readonly demand?: RailDemand;
  /** A post of it, as a grower calls it. */
  readonly post: string;
}

/** Ridge and inner lines with their loads. */
export function loadedRails(shelter: Shelter, { ridge, inner }: FrameAnalysis): readonly RailUnder[] {
  return railsUnder(shelter).map((rail) => {
    const demand = [ridge, ...inner].find((one) => one?.rail.id === rail.id);
    return { rail, post: postNoun(rail), ...(demand === undefined ? {} : { demand }) };
  });
}

/** The same under one response by itself, without standing water. */
export const railInResponse = (shelter: Shelter, rail: Rail, response: Response): RailDemand =>
  ridgeDemand(shelter, rail, [response]);

export const postNoun = ({ role }: Rail): string => (role === 'ridge' ? 'ridge post' : 'inner post');

/** Rows of posts under the roof with the name of one of them. */
export function rowsUnder(shelter: Shelter): readonly { posts: Posts; rail: Rail; noun: string }[] {
  return railsUnder(shelter).flatMap((rail) =>
    rail.posts === undefined ? [] : [{ posts: rail.posts, rail, noun: postNoun(rail) }],
  );
}
