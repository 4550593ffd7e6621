/**
 * The whole house as a frame in space: every frame at its station, what stands under it, what runs along it and what
 * braces it. Nodes and elements remember which part and which place they stand for. Axes as in the shelter.
 */

import type { SpaceModel } from '@tautline/mechanics';
import type { CableItem, MemberItem } from '@tautline/shelter';
import type { ConditionId } from '../system/condition.ts';
import type { FrameSystem } from '../system/frame-system.ts';
import type { Reach } from '../system/reaches.ts';

export type HouseRole =
  | 'frame'
  | 'tie'
  | 'post'
  | 'eave'
  | 'ridge'
  | 'ridge-post'
  | 'upright'
  | 'end-rail'
  | 'purlin'
  | 'brace'
  | 'guy'
  | 'anchor'
  | 'link';

export interface HouseNode {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly part: string;
  /** Arc length along the part's own line, m. */
  readonly at: number;
}

export interface HouseElement {
  readonly part: string;
  readonly role: HouseRole;
  /** Stock it is made of; links between crossing members have none. */
  readonly item?: MemberItem | CableItem;
  /** Arc length on the part's own line at both ends, m. */
  readonly from: number;
  readonly to: number;
  /** As drawn, or developed where it is bent, m. */
  readonly length: number;
  /** Which of several alike: frame number, line of a purlin, or brace number, from 0. */
  readonly piece: number;
}

/** What holds the house; index runs along `model.supports`. */
export interface HouseSupport {
  readonly part: string;
  readonly acts: 'x' | 'y' | 'z' | 'rx' | 'ry' | 'rz';
  readonly node: number;
}

/** One bow or rafter pair in the house. */
export interface HouseFrame {
  readonly z: number;
  /** Stretch of roof it carries, m from the front: half a bay at the ends. */
  readonly reach: Reach;
  /** House node of each roof node of the slice, and house element of each roof or tie element; -1 where there is none. */
  readonly nodes: readonly number[];
  readonly elements: readonly number[];
}

/** A side post and the stretch of wall it carries. */
export interface HousePost {
  readonly side: 'left' | 'right';
  readonly z: number;
  readonly reach: Reach;
  readonly elements: readonly number[];
  readonly foot: number;
}

/** An upright of an end frame. */
export interface HouseUpright {
  readonly end: 'front' | 'back';
  readonly x: number;
  readonly elements: readonly number[];
  readonly foot: number;
}

export interface HouseSystem {
  readonly condition: ConditionId;
  readonly model: SpaceModel;
  readonly nodes: readonly HouseNode[];
  readonly elements: readonly HouseElement[];
  readonly supports: readonly HouseSupport[];
  /** The plane system one frame is made from; loads are laid on it first. */
  readonly slice: FrameSystem;
  readonly frames: readonly HouseFrame[];
  readonly posts: readonly HousePost[];
  readonly uprights: readonly HouseUpright[];
  /** Weights of elements outside the frames, N/m by element. */
  readonly weights: ReadonlyMap<number, number>;
  /** Plain statements on how the house was simplified. */
  readonly notes: readonly string[];
}
