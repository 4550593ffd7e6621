/** The clock behind the editor's calculations: what would hang the editor runs out of time instead, and says so. */
import type { EvaluateOptions } from '@tautline/checks';

export type Clock = NonNullable<EvaluateOptions['clock']>;

/** Wall time, s, and the usual time for each stage. */
export const wallClock: Clock = { now: () => performance.now() / 1000 };
