import type { Shelter } from '@tautline/shelter';
import type { CombinedLoad, LoadCase } from '../actions/load-case.ts';
import type { FrameAnalysis } from '../analyse.ts';
import { ridgeDemand } from '../rail/rail-demand.ts';
import { combinedLoads } from '../response/combinations.ts';
import { respond } from '../response/solve.ts';
import { stateIn } from '../system/condition.ts';

/** Corrections after which a frame at another gust counts as having no balance: one that holds takes 15 to 60. */
export const searchBound = 150;

/** The combinations of a site with the wind of another gust (m/s): pressure goes with the square of the speed. */
export function loadsAtGust(
  shelter: Shelter,
  cases: readonly LoadCase[],
  gust: number,
): readonly CombinedLoad[] {
  const scale = (gust / shelter.site.gust) ** 2;
  return combinedLoads(
    shelter,
    cases.map((loadCase) => (loadCase.nature === 'wind' ? scaled(loadCase, scale) : loadCase)),
  );
}

/**
 * The typical frame with every combination that has wind solved again at another gust (m/s, 3 s at 10 m in the
 * terms of the site's); the others stand. Throws RangeError on a gust that is negative or not finite.
 */
export function analysisAtGust(shelter: Shelter, analysis: FrameAnalysis, gust: number): FrameAnalysis {
  if (!(gust >= 0) || !Number.isFinite(gust)) throw new RangeError(`${gust} is no gust`);
  const loads = new Map(loadsAtGust(shelter, analysis.cases, gust).map((load) => [load.id, load]));
  const responses = analysis.responses.map((response) => {
    const load = response.load.wind === undefined ? undefined : loads.get(response.load.id);
    return load === undefined
      ? response
      : respond(stateIn(analysis.states, response.condition), load, response.condition, {
          corrections: searchBound,
        });
  });
  const { ridge, inner = [] } = shelter;
  return {
    ...analysis,
    responses,
    inner: inner.map((rail) => ridgeDemand(shelter, rail, responses)),
    ...(ridge === undefined
      ? {}
      : { ridge: ridgeDemand(shelter, ridge, responses, analysis.ponding?.standing ?? 0) }),
  };
}

/** Combinations with wind that members, joints and feet are designed for. */
export function blowsForStrength(load: CombinedLoad): boolean {
  return load.wind !== undefined && load.use !== 'service';
}

function scaled(loadCase: LoadCase, scale: number): LoadCase {
  return {
    ...loadCase,
    lines: loadCase.lines.map((line) => ({ ...line, wx: scale * line.wx, wy: scale * line.wy })),
    points: loadCase.points.map((point) => ({ ...point, fx: scale * point.fx, fy: scale * point.fy })),
  };
}
