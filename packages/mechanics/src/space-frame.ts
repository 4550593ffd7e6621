export * from './space/critical.ts';
export { linearSpaceFrame } from './space/linear.ts';
export * from './space/model.ts';
export { solveSpaceFrame } from './space/solve.ts';
