/** Two revisions of one file's shelters worked out and compared, as a page. Runs in the worker. */
import { cautionLine } from '@tautline/book/cautions';
import { evaluate } from '@tautline/checks';
import { countedFor, type Job } from '@tautline/language/server';
import type { System } from '@tautline/quantity';
import {
  type Figures,
  firstFailureOf,
  reviewOf,
  reviewPage,
  type Written,
  workedOut,
} from '@tautline/review';
import { resolveShelter, type SpecWorld } from '@tautline/shelter';

/** Name of the job in the worker. */
export const reviewJob = 'review';

/** One revision without its world, which goes beside it. */
export interface ReviewSide {
  readonly label: string;
  readonly shelters: readonly Omit<Written, 'world'>[];
  /** Errors in the texts themselves. */
  readonly problems: readonly string[];
}

export interface ReviewInput {
  readonly before: ReviewSide;
  readonly after: ReviewSide;
  /** Units to show everything in; each shelter in its own when absent. */
  readonly system?: System;
  readonly on?: string;
}

interface Side extends Written {
  readonly problems: readonly string[];
}

/** Worlds: the earlier, the later. Gives the page. */
export const review: Job = async ([old, now], input, { cancelled, progress }): Promise<string> => {
  const { before, after, system, on } = input as ReviewInput;
  const total = before.shelters.length + after.shelters.length;
  let done = 0;
  const [left, right] = await workedOut(
    withWorld(before, old),
    withWorld(after, now),
    new Map(),
    problemsOf,
    (one): Figures => {
      progress(done / total, one.name);
      done += 1;
      return cancelled() ? {} : figuresOf(one, on);
    },
  );
  const made = reviewOf({ label: before.label, shelters: left }, { label: after.label, shelters: right });
  return reviewPage(made, { caution: cautionLine, ...(system === undefined ? {} : { system }) });
};

const withWorld = ({ shelters, problems }: ReviewSide, world: SpecWorld | undefined): Side[] =>
  world ? shelters.map((one) => ({ ...one, world, problems })) : [];

function problemsOf({ name, kind, world, problems }: Side): readonly string[] {
  const said = kind === 'range' ? [] : resolveShelter(name, world).problems;
  const errors = said.filter(({ severity }) => severity === 'error').map(({ message }) => message);
  return [...new Set([...problems, ...errors])];
}

function figuresOf({ name, world }: Side, on: string | undefined): Figures {
  const { shelter } = resolveShelter(name, world);
  if (shelter === undefined) return {};
  const evaluation = evaluate(shelter, on === undefined ? {} : { on });
  const firstFailure = firstFailureOf(evaluation);
  return {
    evaluation,
    materials: countedFor(shelter, world),
    ...(firstFailure === undefined ? {} : { firstFailure }),
  };
}
