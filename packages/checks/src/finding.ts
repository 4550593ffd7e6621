import type { Step } from '@tautline/loads';
import type { KindName } from '@tautline/quantity';
import type { Origin, SpecEdit } from '@tautline/shelter';

export type Severity = 'error' | 'warning' | 'information';
/**
 * What a check is about when it is not whether the house stands: heat, light and water of the crop; how long things
 * last; what is bought; what the spec says.
 */
export type Nature = 'climate' | 'keeping' | 'stock' | 'paperwork';
export type Verdict = 'passes' | 'near its limit' | 'fails' | 'not checked';

/** A number with the kind that says how to show it. SI. */
export interface Measured {
  readonly value: number;
  readonly kind: KindName;
}

/** A piece of a message: text is put together at the edge, in the user's own units. */
export type MessagePiece = string | Measured;

/** A change that makes the finding go away, worked out by re-running the check. */
export interface Fix {
  /** e.g. ['Space the bows ', {value: 0.9, kind: 'length'}, ' apart'] */
  readonly title: readonly MessagePiece[];
  readonly edits: readonly SpecEdit[];
  /** Utilisation of the same check after the change. */
  readonly utilisationAfter: number;
  /** Ids of other checks that fail already and are further from passing after the change. */
  readonly worse: readonly string[];
}

export interface Finding {
  /** Check id, e.g. 'frame-ponding'. */
  readonly id: string;
  readonly verdict: Verdict;
  /** What its check is about; absent where that is whether the house stands. */
  readonly nature?: Nature;
  readonly severity: Severity;
  /** Part id and place. */
  readonly part: string;
  readonly origin: Origin;
  readonly related: readonly {
    readonly origin: Origin;
    readonly message: string;
  }[];
  readonly message: readonly MessagePiece[];
  readonly demand?: Measured;
  readonly capacity?: Measured;
  /** demand / capacity in the sense of the check; > 1 fails, > 0.85 is near its limit. */
  readonly utilisation?: number;
  readonly loadCase?: string;
  /** Source id. */
  readonly source: string;
  readonly steps: readonly Step[];
  /** Why it could not be checked, for 'not checked'. */
  readonly reason?: string;
  /** Set when an `accept` of the user covers it. */
  readonly accepted?: { readonly because: string; readonly until?: string };
}

/** What a check answers with: the runner adds which check it was and what that is about. */
export type Found = Omit<Finding, 'id' | 'nature'>;
