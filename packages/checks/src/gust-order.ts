import type { Origin } from '@tautline/shelter';
import type { MessagePiece } from './finding.ts';
import { measured } from './judge.ts';

/** A part and the gust that brings it to its limit. */
export interface FirstFailure {
  readonly part: string;
  readonly origin: Origin;
  /** What gives, e.g. 'the bow bends past its strength'. */
  readonly what: string;
  /** Check that sets the limit. */
  readonly check: string;
  /** 3 s gust at 10 m in the terms of the site's gust, m/s; 0 when the limit is passed without wind. */
  readonly gust: number;
  readonly loadCase: string;
  /** Declared to give way first. */
  readonly sacrificial: boolean;
  /** The frame breaks before: carried on from the last gust it held, with the square of the gust. */
  readonly estimated: boolean;
}

/** When it gives, in words: `the bow bends past its strength at 31 m/s`. */
export const failsAt = ({ what, gust }: Pick<FirstFailure, 'what' | 'gust'>): readonly MessagePiece[] =>
  gust > 0 ? [`${what} at `, measured(gust, 'speed')] : [`${what} already without wind`];

/** A part that the wind loads and that has no place in the ranking. */
export interface Unranked {
  readonly part: string;
  readonly origin: Origin;
  /** What it is, e.g. 'eave rail'. */
  readonly noun: string;
  readonly why: readonly MessagePiece[];
  /** No limit is known: it may go before everything in the ranking. False where it reaches none in the gusts looked at. */
  readonly unknown: boolean;
}

/** Share of the lowest first-failure gust at which film should be off: common practice, no source. */
export const filmOffMargin = 0.8;

export interface GustOrder {
  /** Lowest gust first. */
  readonly failures: readonly FirstFailure[];
  /** Every other part that the wind loads, and why it is not among them. */
  readonly unranked: readonly Unranked[];
  /** Fastest gust looked at, m/s. */
  readonly upTo: number;
  /** The first part, not sacrificial, that is past its limit without wind: then there is no gust to have the film off by. */
  readonly withoutWind?: FirstFailure;
  /**
   * Have the film off before this gust, m/s: `filmOffMargin` times the first that is not sacrificial. A shelter
   * that has no film has something else to do by then, `stormOff`.
   */
  readonly filmOff?: { readonly gust: number; readonly margin: number; readonly first: FirstFailure };
}
