/** The largest bending moment of every member of the typical frame: what a hover shows of a whole analysis. */
import type { Evaluation } from '@tautline/checks';

export interface LargestMoment {
  readonly part: string;
  /** N·m, without sign, locked-in bending included. */
  readonly moment: number;
  /** Arc length along the part, m. */
  readonly at: number;
  readonly loadCase: string;
}

/** Only combinations the frame holds count: one that gives way has no answer to read forces from. */
export function largestMoments({ analysis }: Evaluation): readonly LargestMoment[] {
  const largest = new Map<string, LargestMoment>();
  for (const { forces, load, status } of analysis?.responses ?? []) {
    if (status !== 'holds') continue;
    for (const { part, moment, at } of forces) {
      const size = Math.abs(moment);
      const known = largest.get(part);
      if (!known || size > known.moment) largest.set(part, { part, moment: size, at, loadCase: load.title });
    }
  }
  return [...largest.values()];
}
