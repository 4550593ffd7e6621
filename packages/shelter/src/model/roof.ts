/** The roof: bows, rafters, a cap, or two films blown up. Axes as in the shelter. */
import type { FasteningItem, FilmItem, JointItem, MemberItem, SheetItem, SupplyItem } from './items.ts';
import type { Filled, Foot, JointUse, Part, Wrapping } from './part.ts';

export type BowShape = 'elastic' | 'arc' | 'cold-bent' | 'laminated' | 'pointed';

/** A row of equal arches. */
export interface Bows extends Part {
  readonly type: 'bows';
  readonly member: MemberItem;
  readonly shape: BowShape;
  readonly spacing: number;
  /** Positions along z, ascending, m. */
  readonly stations: readonly number[];
  /** Between the feet, across, m (inside the shelter's width when seated on side posts). */
  readonly span: number;
  /** From the springing to the crown, m. */
  readonly rise: number;
  /** Developed length of the whole bow from end to end, m (without insertion into ground or stub). */
  readonly length: number;
  /** Which of the two the spec gives, the other follows; rise when absent. */
  readonly sizedBy?: 'rise' | 'length';
  /** Height of the springing over the ground, m: 0 from the ground, the rail's height on side posts. */
  readonly springing: number;
  /** Straight vertical leg below the bent part, m. */
  readonly leg: number;
  /** Part of the leg driven into the ground itself, m along it: more than its depth where it leans. */
  readonly legDriven: number;
  /** Centre line from left to right foot: arc length s, x, y, tangent angle (rad from +x), curvature (1/m). */
  readonly line: readonly CurvePoint[];
  readonly joints: readonly JointUse[];
  /** Fitting at the crown through which every bow passes, if any. */
  readonly crownFitting?: JointUse;
  /** Absent when the bows are seated on side posts. */
  readonly foot?: Foot;
  readonly filled?: Filled;
  /** Wrapped against abrasion of the film. */
  readonly wrapped: boolean;
  readonly wrapping?: Wrapping;
  /** What holds the boards of a laminated bow together. */
  readonly glue?: SupplyItem;
  readonly screws?: SupplyItem;
}

export interface CurvePoint {
  readonly s: number;
  readonly x: number;
  readonly y: number;
  readonly angle: number;
  readonly curvature: number;
}

/** Straight or cambered rafters. */
export interface Rafters extends Part {
  readonly type: 'rafters';
  readonly form: 'gable' | 'single-slope';
  readonly member: MemberItem;
  readonly spacing: number;
  readonly stations: readonly number[];
  readonly span: number;
  /** Ridge (or high side) above the eave, m. */
  readonly rise: number;
  /** Rise of the rafter's middle above its chord, m. */
  readonly camber: number;
  readonly overhang: number;
  readonly springing: number;
  /** Length of one rafter along the slope with overhang, m. */
  readonly length: number;
  readonly line: readonly CurvePoint[];
  readonly peakJoint?: JointUse;
  readonly eaveJoint?: JointUse;
  readonly joints: readonly JointUse[];
  /** Collar or tie between the two rafters, height above the eave, m. */
  readonly tie?: Part & {
    readonly member: MemberItem;
    readonly height: number;
    /** What joins two lengths of it. */
    readonly coupler?: JointItem;
  };
  readonly wrapped: boolean;
  readonly wrapping?: Wrapping;
  readonly filled?: undefined;
  readonly foot?: undefined;
}

/** A closed cap with no bows. */
export interface Cap extends Part {
  readonly type: 'cap';
  readonly sheet: SheetItem | FilmItem;
  /** What each rim of each cap stands on or is held by. */
  readonly foot: Foot;
  readonly spacing: number;
  readonly stations: readonly number[];
  readonly span: number;
  readonly rise: number;
  readonly springing: number;
  readonly line: readonly CurvePoint[];
}

/** Straps or ropes over a film. */
export interface Straps {
  readonly item: FasteningItem;
  /** m */
  readonly spacing: number;
  /** ISO day they went on, where they are not as old as the film. */
  readonly since?: string;
}

/** Two films held up by a fan. */
export interface Inflated extends Part {
  readonly type: 'inflated';
  /** Between the two films, Pa. */
  readonly pressure: number;
  readonly span: number;
  /** Of the outer film over the rails, m. */
  readonly rise: number;
  /** Of the inner film below the rails, m. */
  readonly hang: number;
  /** From the fan's stopping to somebody being there, s. */
  readonly answered: number;
  readonly springing: number;
  readonly spacing: number;
  readonly stations: readonly number[];
  readonly line: readonly CurvePoint[];
  readonly straps?: Straps;
}

export type Roof = Bows | Rafters | Cap | Inflated;
