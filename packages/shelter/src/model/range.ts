/** Shelters side by side. */
import type { CableItem, MemberItem } from './items.ts';
import type { Origin } from './origin.ts';
import type { Acceptance, Assumed, Shelter } from './shelter.ts';

/** One shelter of a range and where its left foot line stands, m from that of the first. */
export interface RangePlace {
  /** `stand-1` for every shelter of the first `stand` line, and so on. */
  readonly id: string;
  /** The `stand` line. */
  readonly origin: Origin;
  readonly shelter: Shelter;
  readonly x: number;
}

export interface Range {
  readonly name: string;
  readonly origin: Origin;
  /** From left to right. */
  readonly places: readonly RangePlace[];
  /** Clear distance between neighbours, m. */
  readonly gap: number;
  /** Members from each to the next, at this spacing along the house, m. */
  readonly tie?: {
    readonly member: MemberItem | CableItem;
    readonly spacing: number;
    readonly origin: Origin;
  };
  /** From the first foot line to the last, m. */
  readonly width: number;
  /** Findings of the range itself that somebody lives with. */
  readonly acceptances: readonly Acceptance[];
  /** What was taken for the range itself; each shelter lists its own. */
  readonly assumed: readonly Assumed[];
  readonly unmodelled: readonly { readonly what: string; readonly origin: Origin }[];
}
