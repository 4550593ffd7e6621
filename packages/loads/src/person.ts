/** A person on or against the frame. */
import type { Basis } from './combinations.ts';
import { given, type Step } from './step.ts';

export interface PersonLoad {
  /** Upright point load anywhere on a bow or rafter, N (someone reaching from a ladder, or working on it). */
  readonly onRoof: number;
  /** Sideways push at 1.1 m on a bow, post or door frame, N. */
  readonly push: number;
  /** Height of the push over the ground, m. */
  readonly pushHeight: number;
  readonly steps: readonly Step[];
  readonly source: string;
}

/**
 * Point load of maintenance and a push. ASCE 7-16 table 4.3-1: screen and fabric roofs on a frame 0.89 kN;
 * EN 1991-1-1 table 6.10: 1.0 kN. Push: 0.22 kN, the ASCE 7 4.5.1 load on the infill of a guard.
 */
export function personLoad(basis: Basis): PersonLoad {
  const onRoof = basis === 'eurocode' ? 1000 : 890;
  const source = basis === 'eurocode' ? 'en1991-1-1:6.10' : 'asce7-16:4.3-1';
  return {
    onRoof,
    push: 220,
    pushHeight: 1.1,
    source,
    steps: [
      {
        symbol: 'Q',
        meaning: 'person at work on the frame',
        formula: 'Q from the table',
        prose: true,
        inputs: [],
        value: onRoof,
        kind: 'force',
        source,
      },
      {
        symbol: 'H',
        meaning: 'person leaning on the frame',
        formula: 'H from the code, 1.1 m up',
        prose: true,
        inputs: [given('h', 'height of the push', 1.1, 'length')],
        value: 220,
        kind: 'force',
        source: 'asce7-16:4.5.1',
      },
    ],
  };
}
