/**
 * The resolved shelter: what is to be built, in SI units, every part with its origin.
 * Axes: x across (0 at the left foot line, `width` at the right), y up from the ground, z along.
 */
import type {
  AnchorItem,
  CableItem,
  FasteningItem,
  FilmItem,
  JointItem,
  MemberItem,
  MeshItem,
  SheetItem,
  SupplyItem,
} from './items.ts';
import type { Origin } from './origin.ts';
import type { Site } from './site.ts';

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

/** A supply, or what its builder calls it; '' when nothing is known of it. */
export type Wrapping = SupplyItem | string;

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

/** Two films held up by a fan. */
/** Straps or ropes over a film. */
export interface Straps {
  readonly item: FasteningItem;
  /** m */
  readonly spacing: number;
  /** ISO day they went on, where they are not as old as the film. */
  readonly since?: string;
}

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

export type CoverPlace = 'roof' | 'sides' | 'ends';

export interface Cover extends Part {
  readonly place: CoverPlace;
  readonly skin: FilmItem | MeshItem | SheetItem;
  readonly layers: 1 | 2;
  /** Width of the film across the house along the arc, with allowances, m. */
  readonly developedWidth: number;
  readonly developedLength: number;
  /** For sides: from the ground up to this height, m. */
  readonly from: number;
  readonly upTo: number;
  /** Pull when it is put on, N per m of edge. */
  readonly tension: number;
  readonly fastening?: FasteningItem;
  /** Spacing of straps or clips, or of fixings in boards, m. */
  readonly fasteningSpacing?: number;
  /** ISO day the fastening went on, where it is not as old as the skin. */
  readonly fastenedSince?: string;
  readonly straps?: Straps;
  /** What holds a channel or board. */
  readonly screws?: SupplyItem;
  /** ISO date the skin went on. */
  readonly installed?: string;
  /** Width of one roll as bought, when the user names it, m. */
  readonly rollWidth?: number;
  /** Temperature when put on, °C. */
  readonly fittedAt: number;
}

export interface Crop extends Part {
  readonly name: string;
  /** Hung from the frame, N per m2 of ground. */
  readonly hung: number;
  /** Height of the crop, m, and closest row to the side, m. */
  readonly height: number;
  readonly fromSide: number;
}

/** Uprights and a rail in both ends, that doors and end film are fixed to. */
export interface EndFrames extends Part {
  readonly member: MemberItem;
  /** Of each end, from left to right: where it stands and how far up the roof is there, m. */
  readonly uprights: readonly { readonly x: number; readonly height: number }[];
  readonly foot: Foot;
  /** A level rail from side to side, m. */
  readonly rail?: {
    readonly member: MemberItem;
    readonly height: number;
    readonly from: number;
    readonly to: number;
    readonly origin: Origin;
  };
}

/** A door in one end or both. m. */
export interface Door extends Part {
  readonly width: number;
  readonly height: number;
  /** x of the left edge of the opening. */
  readonly left: number;
  readonly end: 'front' | 'back' | 'both';
  /** What the leaf is framed of; absent when it was not said. */
  readonly leaf?: MemberItem;
  readonly hinges?: SupplyItem;
  readonly latch?: SupplyItem;
}

/** Something under the roof that is no part of the frame; `lefts.length` equal ones stand side by side. */
export interface Thing extends Part {
  readonly kind: 'bench' | 'bed' | 'tank' | 'obstacle';
  /** What the grower calls it, else its kind. */
  readonly name: string;
  /** Across and along the house, m. */
  readonly width: number;
  readonly length: number;
  /** x of the left edge of each, ascending, m. */
  readonly lefts: readonly number[];
  /** z of the near end, m. */
  readonly starts: number;
  /** Ground to top, m; 0 where nothing is said. */
  readonly height: number;
  /** Room to keep free above it, m. */
  readonly clearance: number;
}

export interface Requirement extends Part {
  readonly subject: string;
  readonly comparison: '>=' | '<=' | '>' | '<';
  readonly value: number;
  /** e.g. distance from the side at which headroom is asked, m. */
  readonly at?: number;
}

export interface Acceptance extends Part {
  readonly check: string;
  readonly because: string;
  /** ISO date. */
  readonly until?: string;
}

/** A value the user did not give. */
export interface Assumed {
  readonly part: string;
  /** The word of the vocabulary that would say it in the block at `origin`, or a plain name where none would. */
  readonly fact: string;
  /** SI number or word. */
  readonly value: number | string;
  /** Kind for display, a key of the quantity package, 'word', or 'item' for the name of a stock item. */
  readonly kind: string;
  readonly why: string;
  readonly origin: Origin;
}

/** Something that was said but is not part of the model. */
export interface Unmodelled {
  readonly what: string;
  readonly origin: Origin;
  /** Something has to be bought for it, which no take-off counts. */
  readonly toBuy?: boolean;
}

export interface Gutter extends Part {
  /** Along both eaves, or between two shelters side by side. */
  readonly where: 'sides' | 'between';
  /** Width at its top and depth, m, as far as they were said. */
  readonly across?: number;
  readonly depth?: number;
}

export type Irrigation = 'none' | 'drip' | 'sprinkler' | 'hand';

export interface Opening {
  readonly ends: 'open' | 'clad';
  readonly sides: 'open' | 'clad' | 'screened';
}

export interface Shelter extends Part {
  readonly name: string;
  readonly site: Site;
  readonly width: number;
  readonly length: number;
  /** Ridge direction from north, rad. */
  readonly orientation: number;
  readonly roof: Roof;
  readonly sidePosts?: Posts;
  readonly eaveRail?: Rail;
  /** A ridge with posts of its own, or a cable: it holds the frames up. One that the frames carry is a purlin. */
  readonly ridge?: Rail;
  /** Lines of a grid of posts between the sides, each pair at one height with its posts: they hold the frames up. */
  readonly inner?: readonly Rail[];
  readonly baseboards?: Rail;
  readonly purlins: readonly Rail[];
  readonly braces: readonly Brace[];
  readonly covers: readonly Cover[];
  readonly crops: readonly Crop[];
  readonly things: readonly Thing[];
  readonly requirements: readonly Requirement[];
  readonly acceptances: readonly Acceptance[];
  readonly opening: Opening;
  readonly gutters?: readonly Gutter[];
  readonly endFrames?: EndFrames;
  readonly doors?: readonly Door[];
  readonly irrigation?: Irrigation;
  /** People climb on the frame or lean against it, as far as it was said. */
  readonly climbed?: boolean;
  /** ISO date the frame stood. */
  readonly built?: string;
  readonly assumed: readonly Assumed[];
  /** Everything that was said but is not modelled, for the report's "not checked" list. */
  readonly unmodelled: readonly Unmodelled[];
}
