/**
 * The resolved shelter: what is to be built, in SI units, every part with its origin.
 * Axes: x across (0 at the left foot line, `width` at the right), y up from the ground, z along.
 */
import type { KindName } from '@tautline/quantity';
import type { FasteningItem, FilmItem, MemberItem, MeshItem, SheetItem, SupplyItem } from './items.ts';
import type { Origin } from './origin.ts';
import type { Foot, Part } from './part.ts';
import type { Roof, Straps } from './roof.ts';
import type { Brace, Posts, Rail } from './rows.ts';
import type { Site } from './site.ts';

export type * from './part.ts';
export type * from './roof.ts';
export type * from './rows.ts';

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

/** An assumed value in words; `say` shows a quantity. */
export function assumedText({ value, kind }: Assumed, say: (si: number, kind: KindName) => string): string {
  return typeof value === 'number' && kind !== 'word' && kind !== 'item' ? say(value, kind) : `${value}`;
}

/** What a fact takes: a quantity of a kind, a word, or the name of a stock item. */
export type FactKind = KindName | 'word' | 'item';

/** A quantity that the user did not give, or a word or the name of a stock item. */
export interface Assumed {
  readonly part: string;
  /** The word of the vocabulary that would say it in the block at `origin`, or a plain name where none would. */
  readonly fact: string;
  /** SI number or word. */
  readonly value: number | string;
  /** How to show it. */
  readonly kind: FactKind;
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
