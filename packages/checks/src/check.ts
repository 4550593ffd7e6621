import type { KindName } from '@tautline/quantity';
import type { Item, Range, Shelter, SpecEdit } from '@tautline/shelter';
import type { FrameAnalysis, HouseAnswer } from '@tautline/structure';
import type { Finding, Found, MessagePiece, Nature } from './finding.ts';
import type { GustOrder } from './gust-order.ts';
import type { Limit } from './limit.ts';

/** What a check may look at. */
export interface CheckInput {
  readonly shelter: Shelter;
  /** The plane analysis of the typical frame, or why there is none. */
  readonly frame:
    | { readonly ok: true; readonly analysis: FrameAnalysis }
    | { readonly ok: false; readonly reason: string };
  /** The whole house in space, or why there is none; absent in the live tier. */
  readonly house?: HouseAnswer;
  /** In which order parts give way as the gust rises; absent without a frame analysis, or when not wanted. */
  readonly gusts?: GustOrder;
  /** Why there are no gusts though they were wanted. */
  readonly noGusts?: string;
  /** The day for which ages are worked out, ISO; ages are not checked without one. */
  readonly on?: string;
}

/** Why the gusts that a check needs are not there. */
export function whyNoGusts({ frame, noGusts }: CheckInput): string {
  return frame.ok ? (noGusts ?? 'the gusts were not asked for') : frame.reason;
}

/** A change that may make a finding go away, to be tried out by re-running the check. */
export type Lever =
  /** A number moved in handy steps from where it stands; the smallest move that passes is looked for. */
  | {
      readonly type: 'number';
      readonly from: number;
      /** Furthest value worth trying. */
      readonly towards: number;
      /** Steps for display in metric and in US units, m (or the SI unit of the fact). */
      readonly steps: { readonly metric: number; readonly us: number };
      readonly title: (value: number) => readonly MessagePiece[];
      readonly edits: (value: number) => readonly SpecEdit[];
    }
  /** One of several things, the smallest change first. */
  | {
      readonly type: 'choice';
      readonly options: readonly {
        readonly title: readonly MessagePiece[];
        readonly edits: readonly SpecEdit[];
      }[];
    };

/** Stock a fix may reach for. */
export interface Stock {
  readonly items: readonly Item[];
  /** Units that sizes are rounded to; metric when absent. */
  readonly system?: 'metric' | 'us';
}

/** What one symbol of a check's formula means. */
export interface SymbolMeaning {
  readonly symbol: string;
  readonly meaning: string;
  readonly kind: KindName;
}

/** One check: a question asked of a shelter, with its explanation. One file each. */
export interface Check {
  readonly id: string;
  readonly title: string;
  /** Left out where it asks whether the house stands. */
  readonly nature?: Nature;
  /** What it asks, in a grower's words. */
  readonly asks: string;
  readonly matters: string;
  readonly formula: string;
  readonly symbols: readonly SymbolMeaning[];
  /** Ids of sources in @tautline/loads, or of trade facts. */
  readonly sources: readonly string[];
  readonly leavesOut: string;
  readonly mayBeAccepted: string;
  /**
   * What it asks besides the spec. Without it the runner answers 'not checked' with the reason; of the whole house,
   * which the live tier does not work out, it says nothing.
   */
  readonly needs?: 'frame' | 'gusts' | 'house';
  /** Whether it has anything to ask of a shelter; of every shelter when left out. */
  appliesTo?(shelter: Shelter): boolean;
  /** What it answers beside its limits. */
  run?(input: CheckInput): readonly Found[];
  /** The limits it judges, each stated once: the order of failure reads them too. */
  limits?(input: CheckInput): readonly Limit[];
  /** What it asks of shelters side by side, beyond what it asks of each. */
  onRange?(range: Range): readonly Found[];
  levers?(input: CheckInput, finding: Finding, stock: Stock): readonly Lever[];
  /** Levers for what `onRange` finds. */
  rangeLevers?(range: Range, finding: Finding): readonly Lever[];
}
