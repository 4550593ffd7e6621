import type { PlaneElementForces, PlaneState } from './model.ts';

export interface PondingOptions {
  /** how far the skin may sag between the frames, m; default 0: water stands in hollows of the line alone */
  readonly sag?: number | undefined;
  /**
   * how much deeper than the first pocket the water is followed, m: a pond that has not come up to its brim by then
   * counts as running away; default a sixteenth of the line's width on plan (own choice)
   */
  readonly rise?: number | undefined;
  /** N/m3 */
  readonly weight?: number | undefined;
  readonly cancelled?: (() => boolean) | undefined;
}

/** A pond as it stands on the line, for the width that drains onto it. */
export interface Pond {
  /** m3 */
  readonly volume: number;
  /** greatest depth, half way between two frames, m */
  readonly depth: number;
  /** surface as y, m */
  readonly level: number;
  /** its lowest point as x, and from where to where the water reaches, m */
  readonly at: number;
  readonly from: number;
  readonly to: number;
  /** the skin below the water half way between two frames, from one edge of the water to the other */
  readonly bottom: readonly { readonly x: number; readonly y: number }[];
}

/** A pond in balance with the frame below it. */
export interface StandingPond extends Pond {
  /** frame with base loads and water; `loads` has each member's water spread evenly along it */
  readonly state: PlaneState;
  readonly elementForces: readonly PlaneElementForces[];
  readonly reactions: readonly number[];
}

export interface PondingStep {
  /** water on the line, m3, and what its pocket would hold up to its brim on the shape bent by that water */
  readonly volume: number;
  readonly holds: number;
  /** greatest depth, m, and surface as y, m */
  readonly depth: number;
  readonly level: number;
}

export interface PondingAnswer {
  /**
   * drains: no place holds water. comes to rest: the pond fills to its brim and runs over, the frame bent under it.
   * runs away: the pocket grows faster than it fills, until the frame gives way or the pond is as deep as is looked
   * at. no answer: no balance was found with the first water, or the input makes no sense (see reason).
   */
  readonly verdict: 'drains' | 'comes to rest' | 'runs away' | 'no answer' | 'cancelled';
  readonly reason?: string;
  /**
   * how the path ended that was followed to learn the reserve: the frame gives way at once under more water, the
   * pocket grows faster than it fills, the water is as deep as is looked at, the reserve is as large as is looked at
   */
  readonly ended?: 'gives way' | 'outgrows' | 'deep' | 'enough';
  /** the pocket before the frame gives under it, full; absent when nothing holds water */
  readonly first?: Pond;
  /** the pond that comes to rest */
  readonly rest?: StandingPond;
  /**
   * water standing in all pockets of the line, each looked at by itself, m3: what comes to rest or, where it runs
   * away, `tipping`; all else in the answer is of the worst pocket
   */
  readonly together: number;
  /**
   * Greatest ratio along the path of the water on the line to what its pocket holds on the shape bent by that water:
   * above 1 exactly when the pond comes to rest. Never more than 10; infinity when it drains, 0 without an answer.
   */
  readonly reserve: number;
  /** true where the path was not followed to the end of what the frame bears: the reserve is at least that much */
  readonly atLeast: boolean;
  /** water at which the reserve is found, m3: from there on more water makes the pocket grow faster than it fills */
  readonly tipping: number;
  /** the way there, in balance at every step */
  readonly path: readonly PondingStep[];
}
