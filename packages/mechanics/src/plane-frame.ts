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
} from "./plane/model.ts";
export { solvePlaneFrame } from "./plane/solve.ts";
