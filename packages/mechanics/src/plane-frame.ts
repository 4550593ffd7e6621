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
export { solvePlaneFrame } from './plane/solve.ts';
