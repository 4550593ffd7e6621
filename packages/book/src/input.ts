/** What a book is made from. Everything comes in from outside, the day too, so the same input gives the same bytes. */
import type { Evaluation, MessagePiece } from '@tautline/checks';
import type { System } from '@tautline/quantity';
import type { PriceListNote } from '@tautline/shelter';
import type { Materials } from '@tautline/takeoff';

/** Something that keeping the shelter asks for. What @tautline/review calls a duty fits. */
export interface KeepingDuty {
  readonly kind: string;
  readonly part: string;
  readonly what: string;
  readonly why: readonly MessagePiece[];
  /** ISO; absent where the spec does not say what it is counted from. */
  readonly day?: string;
}

export interface BookInput {
  readonly evaluation: Evaluation;
  readonly materials: Materials;
  /** First line of the shelter's comment. */
  readonly title: string;
  /** Title of the project. */
  readonly project?: string;
  readonly priceLists?: readonly PriceListNote[];
  /** Day the book is made, ISO. */
  readonly on: string;
  readonly system: System;
  readonly paper: 'a4' | 'letter';
  readonly duties: readonly KeepingDuty[];
}
