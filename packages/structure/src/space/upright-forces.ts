/** What the uprights of the end frames carry, combination by combination. */
import type { Reaction } from '../response/response.ts';
import { stateIn } from '../system/condition.ts';
import type { HouseResponse, HouseStates, UprightUnder } from './house-result.ts';

export function uprightsUnder(states: HouseStates, responses: readonly HouseResponse[]): UprightUnder[] {
  return responses.flatMap((response) => {
    if (response.status !== 'holds') return [];
    const { system } = stateIn(states, response.condition);
    return system.uprights.map(({ end, x, elements, foot }): UprightUnder => {
      const forces = elements.flatMap((element) => {
        const force = response.result.elementForces[element]!;
        return [
          { axial: force.axial, across: force.momentZI, along: force.momentYI },
          { axial: force.axial, across: force.momentZJ, along: force.momentYJ },
        ].map(({ axial, across, along }) => ({ axial, moment: Math.hypot(across, along) }));
      });
      const sum = { x: 0, y: 0, z: 0, rx: 0, ry: 0, rz: 0 };
      let part = '';
      system.supports.forEach((support, n) => {
        if (support.node !== foot) return;
        sum[support.acts] += response.result.reactions[n] ?? 0;
        part = support.part;
      });
      const reaction: Reaction = {
        part,
        side: 'line',
        horizontal: Math.hypot(sum.x, sum.z),
        vertical: sum.y,
        moment: Math.hypot(sum.rz, sum.rx),
      };
      return { load: response.load, condition: response.condition, end, x, forces, reaction };
    });
  });
}
