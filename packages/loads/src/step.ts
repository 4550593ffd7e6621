/** One line of a calculation: what was worked out, how, from what, with which result, by whose rule. */
import type { KindName } from '@tautline/quantity';
export interface Step {
  /** Symbol as the source writes it, e.g. 'q_z'. */
  readonly symbol: string;
  readonly meaning: string;
  /** The formula in plain symbols, e.g. 'q = 0.613 K_z K_zt K_d V²'. */
  readonly formula: string;
  readonly inputs: readonly StepInput[];
  /**
   * The formula is words: what was looked up, counted, found by solving a frame. Without it the formula is worked out
   * by the tests from its inputs and from what stands above it, and has to give the value.
   */
  readonly prose?: true;
  /** SI value. */
  readonly value: number;
  /** Kind of quantity for display (a kind of @tautline/quantity). */
  readonly kind: KindName;
  /** Id in the source list. */
  readonly source: string;
}

export interface StepInput {
  readonly symbol: string;
  readonly meaning: string;
  readonly value: number;
  readonly kind: KindName;
  /** True when the user did not give it. */
  readonly assumed?: boolean;
}

/** An input of a step; shorter to write than the object. */
export function given(symbol: string, meaning: string, value: number, kind: KindName): StepInput {
  return { symbol, meaning, value, kind };
}

/** An input that the program chose because nobody gave it. */
export function assumed(symbol: string, meaning: string, value: number, kind: KindName): StepInput {
  return { symbol, meaning, value, kind, assumed: true };
}
