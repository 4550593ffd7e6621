import type { PlaneElementForces, PlaneLoads, PlaneState } from './model.ts';
import type { Dip, RoofLine } from './pond.ts';

export interface PondingRoof extends RoofLine {
  /** what acts besides standing water: weight, film pull, hung crop */
  readonly baseLoads: PlaneLoads;
}

export interface PondingOptions {
  /** state to start from (the locked-in state of a sprung bow) */
  readonly start?: PlaneState | undefined;
  /** hollow of skin or setting out that starts a pond; without one a perfect line may never hold water */
  readonly dip?: Dip | undefined;
  /** depth of the sheet of rain running over the line, m, acting all along it; default 0 */
  readonly sheet?: number | undefined;
  /** water that can come, m3; default: as much as stays */
  readonly maxVolume?: number | undefined;
  /** pond depth at which growth counts as runaway, m; default an eighth of the line's width on plan */
  readonly deepest?: number | undefined;
  /** N/m3 */
  readonly weight?: number | undefined;
  readonly cancelled?: (() => boolean) | undefined;
}

export interface PondingAnswer {
  /**
   * drains: no low place holds water. bounded: the pond fills to its brim and runs over, or all the water there
   * is stands stably. runaway: every litre lowers the brim faster than it fills. not-converged: no balance found,
   * the frame did not even carry its base loads, or the input makes no sense (see reason).
   */
  readonly verdict: 'drains' | 'bounded' | 'runaway' | 'not-converged' | 'cancelled';
  readonly reason?: string;
  /** water standing at the end of the path, m3 */
  readonly volume: number;
  /** its greatest depth, m, and its surface level as y, m */
  readonly depth: number;
  readonly level: number;
  /** where its lowest point is, as x, m */
  readonly at: number;
  /** amount of water from which more water lowers the surface, m3: growth feeds on itself */
  readonly waterAtRunaway?: number;
  readonly state: PlaneState;
  readonly elementForces: readonly PlaneElementForces[];
  readonly reactions: readonly number[];
  /** largest bending moment in the frame at the end, N·m, and the element it is in */
  readonly peakMoment: number;
  readonly peakElement: number;
  /** the way there */
  readonly path: readonly { readonly volume: number; readonly level: number; readonly depth: number }[];
}
