/** What a book is made from. Everything comes in from outside, the day too, so the same input gives the same bytes. */
import type { Evaluation } from '@tautline/checks';
import type { System } from '@tautline/quantity';
import type { PriceListNote } from '@tautline/shelter';
import type { Materials } from '@tautline/takeoff';

/** What is known of how the house goes in a storm. */
export interface Storm {
  /** 3 s gust, in the terms of the site's design gust, at which the film must be off, m/s. */
  readonly filmOff: number;
  /** Share of the first failure's gust that `filmOff` is, 0 to 1. */
  readonly margin: number;
  /** Parts by the gust that brings them to their limit, the first to go first. */
  readonly order: readonly {
    readonly part: string;
    readonly what: string;
    /** m/s */
    readonly gust: number;
    readonly sacrificial: boolean;
  }[];
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
  readonly storm?: Storm;
}
