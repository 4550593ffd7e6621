/** Net pressure of ASCE 7-16 27.3: what stands in every case. */
import { given, type Step } from '../step.ts';
import type { Outline } from './shape.ts';

/** G of ASCE 7-16 26.11 for rigid structures. */
export const GUST_EFFECT = 0.85;
/** GC_pi of ASCE 7-16 table 26.13-1. */
export const INSIDE: Record<Outline['enclosure'], number> = {
  enclosed: 0.18,
  'partly open': 0.18,
  'partly enclosed': 0.55,
  open: 0,
};

/** p = q_h (G C_p - GC_pi) on a stretch of the roof line, as a step. */
export function netStep(
  [from, to, cp]: readonly [number, number, number],
  inside: number,
  q: number,
  value: number,
  source: string,
): Step {
  return {
    symbol: 'p',
    meaning: `net pressure from ${Math.round(from * 100)} to ${Math.round(to * 100)} % of the roof line`,
    formula: 'p = q_h (G C_p - GC_pi)',
    inputs: [
      given('q_h', 'velocity pressure', q, 'pressure'),
      given('G', 'gust factor', GUST_EFFECT, 'ratio'),
      given('C_p', 'outside coefficient', cp, 'ratio'),
      given('GC_pi', 'inside coefficient (table 26.13-1)', inside, 'ratio'),
    ],
    value,
    kind: 'pressure',
    source,
  };
}
