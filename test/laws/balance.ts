/** Reactions against loads, on one frame in its plane. */
import type { Evaluation } from '@tautline/checks';
import { stateIn } from '@tautline/structure';
import type { Break } from './law.ts';

/** Of the loads without regard to their sign: what a search for a balance stops at. */
const share = 0.01;

export function balances({ analysis, shelter }: Evaluation): Break[] {
  if (analysis === undefined || shelter.roof.type === 'cap') return [];
  return analysis.responses
    .filter(({ status }) => status === 'holds')
    .flatMap(({ load, condition, reactions }) => {
      const state = stateIn(analysis.states, condition);
      const { elements } = state.system;
      const sum = { x: 0, y: 0, all: 0 };
      const add = (x: number, y: number): void => {
        sum.x += x;
        sum.y += y;
        sum.all += Math.hypot(x, y);
      };
      for (const { element, wx, wy } of load.lines) {
        const length = elements[element]?.length ?? 0;
        add(wx * length, wy * length);
      }
      for (const { fx, fy } of load.points) add(fx, fy);
      const given = { x: 0, y: 0 };
      for (const { horizontal, vertical } of reactions) {
        given.x += horizontal;
        given.y += vertical;
      }
      const off = Math.hypot(sum.x + given.x, sum.y + given.y);
      if (off <= share * sum.all + 1) return [];
      return [
        {
          check: 'balance',
          part: load.title,
          told: `loads ${sum.x.toFixed(1)}, ${sum.y.toFixed(1)} N, reactions ${given.x.toFixed(1)}, ${given.y.toFixed(1)} N`,
        },
      ];
    });
}
