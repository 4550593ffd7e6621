/** Results of a file's shelters and ranges, and what becomes of them when there are new ones. Plain data. */
import type { Assumed, SpecWorld } from '@tautline/shelter';
import type { AnalysisResult, ToldFinding } from '../analyst/result.ts';
import type { WholeHouse } from '../analyst/whole-house.ts';
import type { Span } from '../spec/origin-key.ts';
import type { NamedMember } from './named.ts';
import type { Written } from './written.ts';

/** What a result was worked out from. */
export interface WorkedFrom {
  readonly written: Written;
  /** What that text and what it imports say. */
  readonly world: SpecWorld;
  /** All that bears on it of that, but for amounts of money: while this is the same, so is what is found. */
  readonly said: string;
  /** What says the prices in it: an earlier world, where amounts alone were typed over since. */
  readonly pricedBy: SpecWorld;
}

const from = ({ written, world, said, pricedBy }: WorkedFrom): WorkedFrom => ({
  written,
  world,
  said,
  pricedBy,
});

export interface ShelterResult extends AnalysisResult, WorkedFrom {
  /** The text as it is now cannot be worked out; the evaluation is that of the last text that could. */
  readonly kept: boolean;
  /** The first-failure gusts are those of an earlier text; new ones are on their way. */
  readonly gustsOld: boolean;
  /** What was found by the gusts of an earlier text, until what is found by those of this one is there. */
  readonly awaited?: readonly ToldFinding[];
  /** What the whole house in space adds, where it was worked out; `old` when the text has said other things since. */
  readonly whole?: WholeHouse & { readonly old: boolean };
}

/** Behind what is of an earlier text and is being worked out anew. */
export const beforeEdits = ' (before the last edits)';

/** Findings of the typical frame and what the whole house adds to them; or those of a range. */
export const findingsOf = ({
  evaluation,
  judged,
  awaited,
  whole,
}: Partial<ShelterResult>): readonly ToldFinding[] => [
  ...(evaluation?.findings ?? judged?.verdict.findings ?? []),
  ...(awaited ?? []),
  ...(whole?.findings ?? []),
];

/** What is found of the shelters of a range that are defined elsewhere, said where the range puts them up. */
export const guestFindings = ({
  guests,
}: RangeResult): readonly (ToldFinding & { readonly shelter: string })[] =>
  guests.flatMap(({ origin, shelter, result }) =>
    findingsOf(result).map((one) => ({ ...one, shelter, origin, message: [`${shelter}: `, ...one.message] })),
  );

/** What was taken for a shelter, or for a range itself. */
export const assumedIn = ({ evaluation, judged }: AnalysisResult): readonly Assumed[] =>
  evaluation?.assumed ?? judged?.verdict.assumed ?? [];

/** A shelter that stands in a range and is not defined in the same file. */
export interface RangeMember extends NamedMember {
  readonly result: AnalysisResult;
}

/** `shelter` is the name of the range. */
export interface RangeResult extends AnalysisResult, WorkedFrom {
  /** The range as it is now cannot be resolved; the verdict is that of the last text that could. */
  readonly kept: boolean;
  readonly members: readonly NamedMember[];
  readonly guests: readonly RangeMember[];
}

export interface FileAnalysis {
  readonly uri: string;
  /** Version of the text the results belong to. */
  readonly version: number;
  readonly written: Written;
  readonly world: SpecWorld;
  readonly results: readonly ShelterResult[];
  readonly ranges: readonly RangeResult[];
  /** Where the names of its shelters and ranges stood in that text. */
  readonly places: ReadonlyMap<string, Span>;
  /** The text has changed since. */
  readonly stale: boolean;
}

/** What is worked out of a file as its text is now: all of it, or the one that somebody waits for. */
export interface Seen extends Pick<FileAnalysis, 'world' | 'stale'> {
  readonly all: readonly (ShelterResult | RangeResult)[];
}

export const allOf = ({ world, stale, results, ranges }: FileAnalysis): Seen => ({
  world,
  stale,
  all: [...results, ...ranges],
});

/** A new result beside the one before it: what it lacks is kept until it is there. */
export function joined(
  fresh: AnalysisResult,
  before: ShelterResult | undefined,
  now: WorkedFrom,
): ShelterResult {
  const { evaluation } = fresh;
  const old = before?.evaluation;
  const whole = before?.whole ? { whole: { ...before.whole, old: true } } : {};
  if (!evaluation) {
    const kept = old !== undefined && fresh.failure === undefined;
    if (!kept || !before) return { ...fresh, ...now, kept: false, gustsOld: false };
    const { moments, awaited } = before;
    return {
      ...fresh,
      evaluation: old,
      ...(moments ? { moments } : {}),
      ...(awaited ? { awaited } : {}),
      ...whole,
      ...from(before),
      kept,
      gustsOld: before.gustsOld,
    };
  }
  const found = [...(old?.findings ?? []), ...(before?.awaited ?? [])].filter(({ id }) =>
    evaluation.awaits?.includes(id),
  );
  const awaited = found.length > 0 ? { awaited: found } : {};
  if (evaluation.gusts || !old?.gusts)
    return { ...fresh, ...awaited, ...whole, ...now, kept: false, gustsOld: false };
  return {
    ...fresh,
    ...awaited,
    ...whole,
    evaluation: { ...evaluation, gusts: old.gusts },
    ...now,
    kept: false,
    gustsOld: true,
  };
}

/** The same for a range: while it cannot be resolved, what was said of it stays. */
export function joinedRange(fresh: AnalysisResult, before: RangeResult | undefined, now: WorkedFrom) {
  const kept = !fresh.judged && fresh.failure === undefined && before?.judged !== undefined;
  if (!kept) return { ...fresh, ...now, kept };
  const { judged } = before;
  return { ...fresh, ...(judged ? { judged } : {}), ...from(before), kept };
}

/** Results of what a half-typed text does not name for a moment: as they were, until it does. */
export const hidden = <T extends ShelterResult | RangeResult>(
  before: readonly T[],
  names: readonly string[],
): readonly T[] =>
  before
    .filter(({ shelter, evaluation, judged }) => !names.includes(shelter) && (evaluation ?? judged))
    .map((one) => ({ ...one, kept: true }));

/** Whether a result is that of a text, too, in which this is all that bears on it. What has none is tried again. */
export const stands = (
  { said, kept, evaluation, judged }: ShelterResult | RangeResult,
  now: string,
): boolean => said === now && !kept && (evaluation ?? judged) !== undefined;
