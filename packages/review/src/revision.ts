/** What a review is made from: the shelters of one revision of the texts, as far as they were worked out. */
import type { Evaluation } from '@tautline/checks';
import type { SpecWorld } from '@tautline/shelter';
import type { Materials } from '@tautline/takeoff';

/** A shelter, variant or range as written. */
export interface Written {
  readonly name: string;
  /** Path of its file from the root of what is reviewed, with forward slashes. */
  readonly file: string;
  readonly kind: 'shelter' | 'variant' | 'range';
  /** Everything it can refer to, itself included. */
  readonly world: SpecWorld;
}

/** Lowest 3 s gust at which a part gives way that is not declared to go first, m/s, and which part. */
export interface FirstFailure {
  readonly gust: number;
  readonly part: string;
  /** Nothing gives way up to this gust, the fastest looked at. */
  readonly beyond: boolean;
}

/** What a review reads of a verdict. Plain data: it may come from another thread. */
export type Judged = Pick<Evaluation, 'shelter' | 'findings'>;

export interface Reviewed extends Written {
  /** Absent for ranges, for what could not be resolved, and where nothing changed that it follows from. */
  readonly evaluation?: Judged;
  readonly materials?: Materials;
  readonly firstFailure?: FirstFailure;
  /** Errors in the texts and in what they say, which keep it from being worked out. */
  readonly problems: readonly string[];
}

export interface Revision {
  /** How a reader calls it: a branch, a commit, `working tree`. */
  readonly label: string;
  readonly shelters: readonly Reviewed[];
}

/** Files that moved between the two revisions: the old path to the new one. */
export type RenamedFiles = ReadonlyMap<string, string>;
