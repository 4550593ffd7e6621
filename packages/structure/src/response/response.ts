import type { PlaneResult } from '@tautline/mechanics';
import type { CombinedLoad } from '../actions/load-case.ts';
import type { RailDemand } from '../rail/rail-load.ts';
import type { ConditionId } from '../system/condition.ts';
import type { FrameSystem } from '../system/frame-system.ts';

/** Forces at one place of a member, for one member (posts are scaled back from the smeared frame). */
export interface SectionForce {
  readonly element: number;
  readonly part: string;
  /** Arc length along the part, m. */
  readonly at: number;
  /** N, tension positive. */
  readonly axial: number;
  /** N·m, locked-in bending included. */
  readonly moment: number;
  /** N */
  readonly shear: number;
}

/** What the ground or the ridge gives one frame. Forces on the frame, N and N·m. */
export interface Reaction {
  readonly part: string;
  readonly side: 'left' | 'right' | 'crown' | 'line';
  /** Along +x, N. */
  readonly horizontal: number;
  /** Upwards on the frame, N: negative means the frame pulls up on its support. */
  readonly vertical: number;
  readonly moment: number;
}

export type ResponseStatus = 'holds' | 'gives way' | 'no answer';

/** The frame under one combination. */
export interface Response {
  readonly load: CombinedLoad;
  readonly condition: ConditionId;
  readonly status: ResponseStatus;
  /** Share of the load that was reached, 1 when it holds. */
  readonly reached: number;
  readonly forces: readonly SectionForce[];
  readonly reactions: readonly Reaction[];
  /** What rails under the roof carry by their own forces, where the whole house was worked out. */
  readonly rails?: readonly RailDemand[];
  /** Node displacements from the built shape, m. */
  readonly displacements: readonly {
    readonly dx: number;
    readonly dy: number;
  }[];
}

/** The frame as it stands once built, before any load. */
export interface BuiltState {
  readonly system: FrameSystem;
  readonly result: PlaneResult;
  readonly status: ResponseStatus;
}
