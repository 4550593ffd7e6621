import type { Shelter } from '@tautline/shelter';
import type { Response } from '../response/response.ts';
import { type RailDemand, railUnder } from './rail-demand.ts';

/**
 * Largest load of the frames on the eave rail between posts, over the responses asked for: what the posts
 * carry per frame is what the rail brings them. Undefined without an eave rail on posts.
 */
export function eaveDemand(
  shelter: Shelter,
  responses: readonly Response[],
  wanted: (response: Response) => boolean = () => true,
): RailDemand | undefined {
  const { eaveRail, sidePosts, roof } = shelter;
  if (eaveRail === undefined || sidePosts === undefined) return undefined;
  const share = Math.min(1, roof.spacing / sidePosts.spacing);
  let worst: { push: number; response: Response } | undefined;
  for (const response of responses) {
    if (response.status !== 'holds' || !wanted(response)) continue;
    for (const force of response.forces) {
      if (force.part !== sidePosts.id) continue;
      const push = -force.axial * share;
      if (worst === undefined || Math.abs(push) > Math.abs(worst.push)) worst = { push, response };
    }
  }
  return worst === undefined
    ? undefined
    : railUnder(eaveRail, worst.push / roof.spacing, worst.response.load.title, worst.response.load.duration);
}
