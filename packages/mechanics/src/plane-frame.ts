export { type BucklingResult, bucklingFactor } from './plane/buckling.ts';
export { type CriticalOptions, type CriticalPath, criticalLoadPath } from './plane/critical.ts';
export type {
  PlaneElement,
  PlaneElementForces,
  PlaneLoads,
  PlaneModel,
  PlaneNode,
  PlaneOptions,
  PlaneResult,
  PlaneState,
  PlaneStatus,
  PlaneSupport,
} from './plane/model.ts';
export type { RoofLine } from './plane/pond.ts';
export { pondingFactor } from './plane/ponding-factor.ts';
export type {
  Pond,
  PondingAnswer,
  PondingOptions,
  PondingStep,
  StandingPond,
} from './plane/ponding-model.ts';
export { pondingPath } from './plane/ponding-path.ts';
export { nodeShifts } from './plane/result.ts';
export { solvePlaneFrame } from './plane/solve.ts';
