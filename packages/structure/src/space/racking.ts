/** What the whole house shows that one frame cannot: drift along it, bracing, and what runs along it. */

import { stateIn } from '../system/condition.ts';
import type { HouseElement, HouseRole, HouseSystem } from './house.ts';
import type { HouseResponse, HouseState, HouseStates, PieceForces, Racking } from './house-result.ts';

/** Movement along the house and the forces in its bracing. */
export function rackingOf(
  system: HouseSystem,
  states: HouseStates,
  responses: readonly HouseResponse[],
  unheld: boolean,
): Racking {
  const rider = system.slice.elements.length;
  let drift = 0;
  let driftHeight = 0;
  let worst: HouseResponse | undefined;
  for (const response of judged(responses)) {
    const pushed = response.load.lines.some((line) => line.element === rider && line.wx !== 0);
    if (!pushed) continue;
    const built = stateOf(states, response).result.displacements;
    response.result.displacements.forEach((moved, n) => {
      const along = Math.abs(moved.dz - built[n]!.dz);
      if (system.nodes[n]!.part === 'link' || (worst !== undefined && along <= drift)) return;
      [drift, driftHeight, worst] = [along, system.nodes[n]!.y, response];
    });
  }
  return {
    unheld,
    drift,
    driftHeight,
    loadCase: worst?.load.title ?? '',
    held: worst === undefined ? [] : heldBy(stateOf(states, worst).system, worst),
    bracing: forcesIn(states, responses, ['brace', 'guy', 'tie', 'anchor']),
  };
}

/** Forces in everything that runs along the house, line by line. */
export function runnersOf(states: HouseStates, responses: readonly HouseResponse[]): PieceForces[] {
  return forcesIn(states, responses, ['purlin', 'eave', 'ridge']);
}

/** Forces in the rails of the two end frames. */
export function endRailsOf(states: HouseStates, responses: readonly HouseResponse[]): PieceForces[] {
  return forcesIn(states, responses, ['end-rail']);
}

/** Combinations for members that the house stands up to. */
function judged(responses: readonly HouseResponse[]): HouseResponse[] {
  return responses.filter((response) => response.status === 'holds' && response.load.use !== 'service');
}

function stateOf(states: HouseStates, response: HouseResponse): HouseState {
  return stateIn(states, response.condition);
}

/** Force along the house on each kind of support, N. */
function heldBy(system: HouseSystem, response: HouseResponse): { part: string; force: number }[] {
  const sums = new Map<string, number>();
  system.supports.forEach((support, k) => {
    if (support.acts !== 'z') return;
    sums.set(support.part, (sums.get(support.part) ?? 0) + (response.result.reactions[k] ?? 0));
  });
  return [...sums].map(([part, force]) => ({ part, force }));
}

function forcesIn(
  states: HouseStates,
  responses: readonly HouseResponse[],
  roles: readonly HouseRole[],
): PieceForces[] {
  const pieces = new Map<string, PieceForces>();
  const add = (element: HouseElement, axial: number, moment: number, loadCase: string): void => {
    const key = `${element.part}/${element.role}/${element.piece}`;
    const own = pieces.get(key) ?? {
      part: element.part,
      piece: element.piece,
      pull: 0,
      push: 0,
      moment: 0,
      loadCase,
    };
    const larger = Math.abs(axial) > Math.max(own.pull, own.push) || moment > own.moment;
    pieces.set(key, {
      ...own,
      pull: Math.max(own.pull, axial),
      push: Math.max(own.push, -axial),
      moment: Math.max(own.moment, moment),
      ...(larger ? { loadCase } : {}),
    });
  };
  for (const response of judged(responses)) {
    stateOf(states, response).system.elements.forEach((element, k) => {
      if (!roles.includes(element.role)) return;
      const force = response.result.elementForces[k]!;
      const ends = [
        Math.hypot(force.momentYI, force.momentZI),
        Math.hypot(force.momentYJ, force.momentZJ),
        force.momentMid,
      ];
      const bent = element.item !== undefined && element.item.kind !== 'cable' && !force.slack;
      add(element, force.axial, bent ? Math.max(...ends) : 0, response.load.title);
    });
  }
  return [...pieces.values()];
}
