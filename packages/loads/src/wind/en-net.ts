/** Net pressure of EN 1991-1-4: what stands in every case. */
import { given, type Step } from '../step.ts';
import type { Outline } from './shape.ts';

/**
 * c_pi, blown up and sucked in, across and along: where the openings are not known one by one (7.2.9(6)
 * note 2); with one dominant face (7.2.9(5)) 0.9 of the outside coefficient there, +0.8 or -0.8.
 */
const INSIDE = {
  usual: { across: [0.2, -0.3], along: 0.2 },
  'partly enclosed': { across: [0.72, -0.72], along: 0.72 },
} as const;

/** The inside coefficients for how the house is opened. */
export function insideOf(outline: Outline): (typeof INSIDE)['usual' | 'partly enclosed'] {
  return INSIDE[outline.enclosure === 'partly enclosed' ? 'partly enclosed' : 'usual'];
}

/** [from, to, c_pe] along the roof line. */
export type Part = readonly [number, number, number];

/** w = q_p (c_pe - c_pi) on a stretch of the roof line, as a step. */
export function netStep(
  [from, to, cp]: Part,
  inside: number,
  q: number,
  value: number,
  source: string,
): Step {
  return {
    symbol: 'w',
    meaning: `net pressure from ${Math.round(from * 100)} to ${Math.round(to * 100)} % of the roof line`,
    formula: 'w = q_p (c_pe - c_pi)',
    inputs: [
      given('q_p', 'peak velocity pressure', q, 'pressure'),
      given('c_pe', 'outside coefficient', cp, 'ratio'),
      given('c_pi', 'inside coefficient (7.2.9)', inside, 'ratio'),
    ],
    value,
    kind: 'pressure',
    source,
  };
}
