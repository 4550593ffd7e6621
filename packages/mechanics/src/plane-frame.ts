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
export type { Dip, RoofLine } from './plane/pond.ts';
export type { PondingAnswer, PondingOptions, PondingRoof } from './plane/ponding-model.ts';
export { pondingFactor, pondingPath } from './plane/ponding-path.ts';
export { solvePlaneFrame } from './plane/solve.ts';
