/** What a thing is expected to reach, beside what a load basis lets one count on. */
import type { Step } from './step.ts';

export interface Expected {
  /** Middle of the strengths such things have, with no safety in it; in the unit of the capacity it stands beside. */
  readonly median: number;
  /** Coefficient of variation of the strength. */
  readonly spread: number;
  /** How the median follows from what the catalogue or the soil gives. */
  readonly steps: readonly Step[];
  /** Id in the source list. */
  readonly source: string;
}
