export * from './space/model.ts';
export { solveSpaceFrame } from './space/solve.ts';
