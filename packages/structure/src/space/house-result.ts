import type { SpaceResult } from '@tautline/mechanics';
import type { CombinedLoad, LoadCase } from '../actions/load-case.ts';
import type { Reaction, ResponseStatus } from '../response/response.ts';
import type { ByCondition, ConditionId } from '../system/condition.ts';
import type { HouseSystem } from './house.ts';

/** The house as it stands once built, before any load. */
export interface HouseState {
  readonly system: HouseSystem;
  readonly result: SpaceResult;
  readonly status: ResponseStatus;
}

export type HouseStates = ByCondition<HouseState>;

/** The whole house under one combination, from the state it is in by then. */
export interface HouseResponse {
  readonly load: CombinedLoad;
  /** The state of the house that it starts from. */
  readonly condition: ConditionId;
  readonly status: ResponseStatus;
  /** Share of the load that was reached, 1 when it holds. */
  readonly reached: number;
  readonly result: SpaceResult;
}

/** The most a piece of bracing or a rail carries over all combinations. */
export interface PieceForces {
  readonly part: string;
  readonly piece: number;
  /** N, largest pull and largest push; 0 where there is none. */
  readonly pull: number;
  readonly push: number;
  /** Largest bending, N·m. */
  readonly moment: number;
  readonly loadCase: string;
}

export interface Racking {
  /** Nothing holds the house along its length: it was steadied to work out the rest. */
  readonly unheld: boolean;
  /** Largest movement along the house under wind along it, m, and the height it happens at. */
  readonly drift: number;
  readonly driftHeight: number;
  readonly loadCase: string;
  /** Share of the push along that each kind of part brings to the ground, N, by part id. */
  readonly held: readonly { readonly part: string; readonly force: number }[];
  readonly bracing: readonly PieceForces[];
}

/** Geometrically linear response beside the full one, for what large movements do. */
export interface LinearShare {
  readonly load: string;
  /** Largest movement, m, in small-movement theory and in full. */
  readonly linear: number;
  readonly full: number;
}

/** One combination followed upwards from where the house stands under it. */
export interface LoadPath {
  readonly load: string;
  /** Times this load at which the house gives way; null when it stands up to the cap, or was not found. */
  readonly givesWayAt: number | null;
  /** Times this load at which it was last seen standing. */
  readonly stableAt: number;
  readonly cap: number;
  readonly iterations: number;
}

/** One upright of an end frame under one combination. */
export interface UprightUnder {
  readonly load: CombinedLoad;
  readonly condition: ConditionId;
  readonly end: 'front' | 'back';
  /** Across the house, m. */
  readonly x: number;
  /** At both ends of every piece, from the ground up: N (tension positive) and N·m, both planes together. */
  readonly forces: readonly { readonly axial: number; readonly moment: number }[];
  /** What the ground gives it. */
  readonly reaction: Reaction;
}

export interface HouseCost {
  readonly unknowns: number;
  /** Entries of the factor. */
  readonly entries: number;
  readonly iterations: number;
}

export interface HouseAnalysis {
  readonly states: HouseStates;
  readonly responses: readonly HouseResponse[];
  readonly cases: readonly LoadCase[];
  readonly racking: Racking;
  /** Purlins, eave rails and ridge, line by line. */
  readonly runners: readonly PieceForces[];
  /** Uprights of the end frames under every combination that the house holds; empty without any. */
  readonly uprights: readonly UprightUnder[];
  /** Rails of the two end frames, one piece each; empty without any. */
  readonly endRails: readonly PieceForces[];
  readonly linear: readonly LinearShare[];
  readonly loadPaths: readonly LoadPath[];
  readonly cost: HouseCost;
  readonly notCovered: readonly string[];
  readonly notes: readonly string[];
}
