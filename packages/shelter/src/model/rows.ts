/** What stands in rows, runs along the house or braces it. Axes as in the shelter. */
import type { CableItem, JointItem, MemberItem, SupplyItem } from './items.ts';
import type { Origin } from './origin.ts';
import type { Filled, Foot, Part, Wrapping } from './part.ts';

/** A row of posts. */
export interface Posts extends Part {
  readonly member: MemberItem;
  readonly where: 'sides' | 'centre' | 'line';
  /** x of each line, m. */
  readonly lines: readonly number[];
  readonly spacing: number;
  readonly stations: readonly number[];
  /** Ground to top, m. */
  readonly height: number;
  readonly foot: Foot;
  readonly topJoint?: JointItem;
  readonly filled?: Filled;
  readonly wrapping?: Wrapping;
}

/** A member along the house that carries the frames: eave rail, ridge, purlin. */
export interface Rail extends Part {
  readonly role: 'ridge' | 'eave' | 'purlin' | 'baseboard' | 'grid';
  readonly form: 'rail' | 'pipe' | 'cable';
  readonly member: MemberItem | CableItem;
  /** Cross positions: x and y of each line, m. */
  readonly lines: readonly { readonly x: number; readonly y: number; readonly s?: number }[];
  /** Distance between its supports along z, m (posts for ridge and eave, bows for purlins). */
  readonly span: number;
  /** Posts that carry it; absent where the frames carry it. */
  readonly posts?: Posts;
  /** Pretension, N (cable). */
  readonly tension?: number;
  readonly endAnchor?: Foot;
  /** How far beyond the ends of the house the end anchors of a cable stand, m. */
  readonly anchorOut?: number;
  readonly joint?: JointItem;
  /** What joins two lengths of it in line, where it is longer than it is sold. */
  readonly coupler?: JointItem;
  /** Where the places of its lines were said, if they were. */
  readonly placesSaid?: readonly Origin[];
  /** Where the joint was said. */
  readonly jointOrigin?: Origin;
  /** Whether it ties every frame to it; an untied ridge only pushes up. */
  readonly tied: boolean;
  readonly wrapping?: Wrapping;
  /** What holds the loops of a cable. */
  readonly clips?: SupplyItem;
}

export interface Brace extends Part {
  readonly role: 'brace' | 'guy' | 'tie';
  readonly member: MemberItem | CableItem;
  readonly from: { readonly x: number; readonly y: number; readonly z: number };
  readonly to: { readonly x: number; readonly y: number; readonly z: number };
  readonly count: number;
  readonly plane: 'along' | 'across';
  /** Pull put in when it is set up, as far as it was said, N. */
  readonly tension?: number;
  readonly foot?: Foot;
  /** What holds the loops of a wire. */
  readonly clips?: SupplyItem;
}
