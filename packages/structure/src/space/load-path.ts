/** How many times its load the whole house would stand, by following the loads upwards. */
import { lasts } from '@tautline/loads';
import { criticalSpacePath } from '@tautline/mechanics';
import { stateIn } from '../system/condition.ts';
import { layOnHouse } from './house-loads.ts';
import type { HouseResponse, HouseStates, LoadPath } from './house-result.ts';

/** Largest multiple of a combination that is looked at. */
export const loadPathCap = 2;
/** Newton corrections for one path. */
const mostCorrections = 60;

/**
 * The house's own weight and the gust that moves it furthest, each from where it stands under that combination
 * upwards, all of the combination growing alike.
 */
export function loadPaths(
  states: HouseStates,
  responses: readonly HouseResponse[],
  push: 'end' | 'skin',
  cancelled?: () => boolean,
): LoadPath[] {
  const held = responses.filter(({ status, load }) => status === 'holds' && load.use !== 'service');
  const weight = held.find(({ condition, load }) => condition !== 'built' && lasts(load.duration));
  const gusts = held.filter(({ load }) => load.wind !== undefined);
  const furthest = gusts.reduce<{ response: HouseResponse; moved: number } | undefined>((worst, response) => {
    const moved = movedBy(states, response);
    return worst === undefined || moved > worst.moved ? { response, moved } : worst;
  }, undefined);
  return [weight, furthest?.response].flatMap((response): LoadPath[] => {
    if (response === undefined) return [];
    const { system } = stateIn(states, response.condition);
    const path = criticalSpacePath(system.model, layOnHouse(system, response.load, push), {
      start: response.result.state,
      from: 1,
      cap: loadPathCap,
      maxIterations: mostCorrections,
      ...(cancelled === undefined ? {} : { cancelled }),
    });
    if (path.status === 'cancelled') return [];
    return [
      {
        load: response.load.title,
        givesWayAt: path.givesWayAt,
        stableAt: path.stableAt,
        cap: path.cap,
        iterations: path.iterations,
      },
    ];
  });
}

/** Largest movement from the built state, m. */
export function movedBy(states: HouseStates, { condition, result }: HouseResponse): number {
  const built = stateIn(states, condition).result.displacements;
  return result.displacements.reduce((far, d, n) => {
    const b = built[n]!;
    return Math.max(far, Math.hypot(d.dx - b.dx, d.dy - b.dy, d.dz - b.dz));
  }, 0);
}
