/** What every part has, and what many parts have: feet, joints, fillings, wrappings. */
import type { AnchorItem, JointItem, MemberItem, SupplyItem } from './items.ts';
import type { Origin } from './origin.ts';

export interface Part {
  /** Stable identity inside the shelter, e.g. 'bows', 'ridge', 'bows/foot'. Same text, same id. */
  readonly id: string;
  readonly origin: Origin;
  /** Weak link chosen to go first in a storm. */
  readonly sacrificial?: boolean;
}

export type FootKind =
  | 'stub'
  | 'driven'
  | 'hole'
  | 'concrete'
  | 'deadman'
  | 'screw'
  | 'ballast'
  | 'bearing'
  | 'poked';

/** How a bow or post meets the ground. */
export interface Foot extends Part {
  readonly kind: FootKind;
  /** Stub or stake the member is slid over or tied to. */
  readonly stub?: MemberItem;
  readonly anchor?: AnchorItem;
  /** Whole length of the stub, m. */
  readonly length?: number;
  /** Depth in the ground, m (0 for bearing and ballast). */
  readonly driven: number;
  /** Diameter of the hole, footing or plate, m. */
  readonly across?: number;
  /** Mass of ballast or concrete, kg. */
  readonly mass?: number;
  /** Lean of stub or leg from the horizontal, rad: 90° is upright, less leans out so the bow meets it straight. */
  readonly lean?: number;
  /** What a concrete foot is set in. */
  readonly mix?: SupplyItem;
  /** Whether the member can turn at the foot: a long stub clamps, a loose socket does not. */
  readonly fixity: 'clamped' | 'pinned';
}

export interface JointUse extends Part {
  readonly item: JointItem;
  /** Arc length from the left foot along the member, m. Placed by the program where `assumed`. */
  readonly at: number;
  readonly assumed: boolean;
}

/** What is inside the lower part of a hollow member, from its bottom end up. */
export interface Filled {
  /** Height over the ground, m. */
  readonly upTo: number;
  readonly with: 'concrete' | 'rebar' | 'timber';
  /** The bar or stick inside. */
  readonly member?: MemberItem;
  /** The concrete it is filled with. */
  readonly mix?: SupplyItem;
}

/** A supply, or what its builder calls it; '' when nothing is known of it. */
export type Wrapping = SupplyItem | string;
