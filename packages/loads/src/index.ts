export type { Source } from './source.ts';
export type { Step, StepInput } from './step.ts';
export type * from './wind/wind-case.ts';
