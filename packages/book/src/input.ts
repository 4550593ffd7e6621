/** What a book is made from. Everything comes in from outside, the day too, so the same input gives the same bytes. */
import type { Evaluation } from '@tautline/checks';
import type { System } from '@tautline/quantity';
import type { PriceListNote } from '@tautline/shelter';
import type { Materials } from '@tautline/takeoff';

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
}
