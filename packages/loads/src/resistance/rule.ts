/** What a family and a basis make of the strengths of a material. */
import type { Step } from '../step.ts';

/** Ways a member gives way. */
export type Way = 'bending' | 'compression' | 'tension' | 'shear';

/** Factors on the strengths, and how they were put together. */
export interface Rule {
  readonly bending: number;
  readonly compression: number;
  /** Compressive over bending strength of the material; 1 when absent. */
  readonly crushing?: number;
  readonly tension: number;
  readonly shear: number;
  readonly formula: string;
  readonly inputs: Step['inputs'];
  /** Where a way of giving way has a formula or inputs other than those of bending. */
  readonly ways?: Partial<Record<Way, Pick<Step, 'formula' | 'inputs'>>>;
  readonly source: string;
  readonly notCovered: readonly string[];
}
