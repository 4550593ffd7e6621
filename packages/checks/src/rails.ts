import type { Shelter } from '@tautline/shelter';
import { eaveDemand, type FrameAnalysis, type RailDemand, type Response } from '@tautline/structure';

/** What the eave rail carries between its posts, over the responses asked for. */
export function eaveLoad(
  shelter: Shelter,
  analysis: Pick<FrameAnalysis, 'responses'>,
  wanted: (response: Response) => boolean,
): RailDemand | undefined {
  return eaveDemand(shelter, analysis.responses, wanted);
}
