/** What a ridge, an inner rail or an eave rail brings its posts and carries itself. */
import type { Duration } from '@tautline/loads';
import type { Rail } from '@tautline/shelter';

/** What presses one post down, in the combination that does it most. */
export interface PostLoad {
  /** N */
  readonly down: number;
  readonly loadCase: string;
  readonly duration: Duration;
}

/** What lifts one post by the frames tied to its rail, in the combination that does it most. */
export interface PostLift {
  /** The weight of the rail taken off, that of the post not, N. */
  readonly up: number;
  readonly loadCase: string;
}

/** Where a cable ends: it runs over its last post and down to an anchor in the ground. */
export interface CableEnd extends PostLoad {
  /** Pull of the part that runs down, N. */
  readonly stay: number;
  /** Level pull that meets it, N. */
  readonly pull: number;
  /** Slope at which it runs down, rad. */
  readonly slope: number;
}

/** What a ridge or eave rail has to carry between its posts, in the worst combination. */
export interface RailDemand {
  readonly rail: Rail;
  /** Even load along the rail, N/m (positive down on the rail). */
  readonly load: number;
  readonly loadCase: string;
  readonly duration: Duration;
  /** Bending moment M = w L²/8 (N·m) for a rail or pipe over one bay; pull (N) for a cable. */
  readonly moment?: number;
  readonly pull?: number;
  /** Sag in the middle, m. */
  readonly sag: number;
  /** A post between two bays. */
  readonly post: PostLoad;
  readonly lift: PostLift;
  /** A cable's end post and stay: the worst under the loads of each duration. */
  readonly ends?: readonly CableEnd[];
  /** The same under water standing at the crown alone, where some stands. */
  readonly water?: RailDemand;
}
