/**
 * Fixes are worked out, not advised: each candidate change is applied to the spec, the shelter resolved
 * and evaluated again, and only a change after which the check passes and nothing new fails is offered.
 */
import { applyEdits, resolveShelter, type Shelter, type SpecEdit, type SpecWorld } from '@tautline/shelter';
import type { KnownFrames } from '@tautline/structure';
import type { Lever, Stock } from '../check.ts';
import { type Evaluation, evaluate } from '../evaluate.ts';
import type { Finding, Fix, MessagePiece } from '../finding.ts';
import { checkOf, wholeHouseChecks } from '../registry.ts';

export interface FixContext {
  readonly world: SpecWorld;
  /** Name of the shelter's definition. */
  readonly shelterName: string;
  readonly stock: Stock;
  /** Units that changed numbers are rounded to. */
  readonly system: 'metric' | 'us';
  readonly on?: string;
  readonly cancelled?: () => boolean;
  /** Finds what was worked out before (`knownFrames`). */
  readonly known?: KnownFrames | undefined;
}

export interface Trial {
  readonly utilisation: number;
  readonly passes: boolean;
  /** Ids of other checks that failed before and fail by more after the change. */
  readonly worse: readonly string[];
}

/** Works out what comes of a change of the spec. */
export type Attempt = (edits: readonly SpecEdit[]) => Trial;

/** What failed before a change, by check and part, with how much it was used. */
type Failing = ReadonlyMap<string, number>;

/** Houses worked out in space in search of one finding's fixes, each a matter of seconds: own choice. */
const mostHouses = 16;

const noTrial: Trial = { utilisation: Number.POSITIVE_INFINITY, passes: false, worse: [] };

/** A share that grows by less than a tenth of itself is not told as worse: own choice. */
const worthTelling = 1.1;

/**
 * Every fix that makes this finding go away, smallest change of each kind; for a finding of the whole house in space
 * only so many houses are tried, and `evaluation` must be of the full tier; those that make something else that
 * fails worse come last. Where no single change does it, two at a time are tried.
 */
export function fixesFor(finding: Finding, evaluation: Evaluation, context: FixContext): Fix[] {
  const check = checkOf(finding.id);
  if (check?.levers === undefined || finding.verdict === 'passes' || finding.verdict === 'not checked')
    return [];
  const input = {
    shelter: evaluation.shelter,
    frame:
      evaluation.analysis === undefined
        ? ({ ok: false, reason: 'no analysis' } as const)
        : ({ ok: true, analysis: evaluation.analysis } as const),
    ...(evaluation.gusts === undefined ? {} : { gusts: evaluation.gusts }),
    ...(evaluation.house === undefined ? {} : { house: { ok: true, house: evaluation.house } as const }),
    ...(context.on === undefined ? {} : { on: context.on }),
  };
  const failing = new Map(
    evaluation.findings
      .filter((entry) => entry.verdict === 'fails')
      .map((entry) => [`${entry.id}@${entry.part}`, entry.utilisation ?? 0]),
  );
  let houses = wholeHouseChecks.has(finding.id) ? mostHouses : Number.POSITIVE_INFINITY;
  const attempt: Attempt = (edits) => {
    if (houses <= 0) return noTrial;
    houses -= 1;
    return trial(finding, edits, failing, context);
  };
  const levers = check.levers(input, finding, { ...context.stock, system: context.system });
  return tried(levers, attempt, context.system);
}

/** Each lever by itself; two at a time where none does it. Those that make something else worse come last. */
export function tried(levers: readonly Lever[], attempt: Attempt, system: 'metric' | 'us'): Fix[] {
  const single = levers.flatMap((lever) => {
    const fix = lever.type === 'number' ? tryNumber(lever, attempt, system) : tryChoice(lever, attempt);
    return fix === undefined ? [] : [fix];
  });
  const found = single.length > 0 ? single : tryTogether(levers, attempt, system);
  return found.sort((a, b) => a.worse.length - b.worse.length);
}

function trial(finding: Finding, edits: readonly SpecEdit[], failing: Failing, context: FixContext): Trial {
  const shelter = changed(edits, context);
  if (shelter === undefined) return noTrial;
  const after = evaluate(shelter, {
    gusts: false,
    ...(wholeHouseChecks.has(finding.id) ? { tier: 'full', beyond: false } : {}),
    known: context.known,
    ...(context.on === undefined ? {} : { on: context.on }),
    ...(context.cancelled === undefined ? {} : { cancelled: context.cancelled }),
  });
  const own = after.findings.filter((entry) => entry.id === finding.id);
  const itself = own.filter((entry) => entry.part === finding.part);
  // What is not found by its own name may be found by that of the part it belongs to.
  const same = itself.length > 0 ? itself : own.filter((entry) => finding.part.startsWith(entry.part));
  const utilisation = Math.max(0, ...same.map((entry) => entry.utilisation ?? 0));
  const fresh = after.findings.some(
    (entry) =>
      entry.verdict === 'fails' && entry.severity === 'error' && !failing.has(`${entry.id}@${entry.part}`),
  );
  // What was measured and cannot be any more is not cured; a fault of kind that is gone is.
  const stillUnknown =
    finding.utilisation !== undefined &&
    after.notChecked.some((entry) => entry.id === finding.id) &&
    same.length === 0;
  const worse = after.findings
    .filter((entry) => {
      const before = failing.get(`${entry.id}@${entry.part}`);
      return (
        entry.id !== finding.id && before !== undefined && (entry.utilisation ?? 0) > before * worthTelling
      );
    })
    .map((entry) => entry.id);
  // A fault of kind has no utilisation: its verdict says whether it is still there.
  const stillFails = same.some((entry) => entry.verdict === 'fails');
  const passes = utilisation <= 1 && !stillFails && !fresh && !stillUnknown;
  return { utilisation, passes, worse: [...new Set(worse)] };
}

/** The shelter after the edits, or undefined when they cannot be resolved. */
function changed(edits: readonly SpecEdit[], context: FixContext): Shelter | undefined {
  const definitions = applyEdits(context.world.definitions, edits);
  const resolved = resolveShelter(context.shelterName, {
    ...context.world,
    definitions,
  });
  return resolved.problems.some((problem) => problem.severity === 'error') ? undefined : resolved.shelter;
}

function tryChoice(lever: Extract<Lever, { type: 'choice' }>, attempt: Attempt): Fix | undefined {
  for (const option of lever.options) {
    const result = attempt(option.edits);
    if (result.passes)
      return {
        title: option.title,
        edits: option.edits,
        utilisationAfter: result.utilisation,
        worse: result.worse,
      };
  }
  return undefined;
}

/** Smallest move on a grid of handy steps that passes, by halving; the check is taken to be monotone in it. */
function tryNumber(
  lever: Extract<Lever, { type: 'number' }>,
  attempt: Attempt,
  system: 'metric' | 'us',
): Fix | undefined {
  const step = lever.steps[system];
  const up = lever.towards > lever.from;
  const first = up ? Math.floor(lever.from / step + 1e-9) + 1 : Math.ceil(lever.from / step - 1e-9) - 1;
  const last = up ? Math.floor(lever.towards / step + 1e-9) : Math.ceil(lever.towards / step - 1e-9);
  const count = up ? last - first : first - last;
  if (count < 0) return undefined;
  const valueAt = (index: number): number => exact(up ? first + index : first - index, step);
  const resultAt = new Map<number, Trial>();
  const at = (index: number): Trial => {
    const known = resultAt.get(index);
    if (known !== undefined) return known;
    const result = attempt(lever.edits(valueAt(index)));
    resultAt.set(index, result);
    return result;
  };
  if (!at(count).passes) return undefined;
  let low = -1;
  let high = count;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (at(middle).passes) high = middle;
    else low = middle;
  }
  const value = valueAt(high);
  return {
    title: lever.title(value),
    edits: lever.edits(value),
    utilisationAfter: at(high).utilisation,
    worse: at(high).worse,
  };
}

/** Another item of stock together with a moved number: the first item for which a move is found. */
function tryTogether(levers: readonly Lever[], attempt: Attempt, system: 'metric' | 'us'): Fix[] {
  const numbers = levers.filter((lever) => lever.type === 'number');
  for (const option of levers.flatMap((lever) => (lever.type === 'choice' ? lever.options : []))) {
    for (const number of numbers) {
      const both = (edits: readonly SpecEdit[]): Trial => attempt([...option.edits, ...edits]);
      const fix = tryNumber(number, both, system);
      if (fix !== undefined)
        return [{ ...fix, title: joined(option.title, fix.title), edits: [...option.edits, ...fix.edits] }];
    }
  }
  return [];
}

/** Two titles as one sentence. */
function joined(first: readonly MessagePiece[], second: readonly MessagePiece[]): readonly MessagePiece[] {
  const [start, ...rest] = second;
  const small = typeof start === 'string' ? start.charAt(0).toLowerCase() + start.slice(1) : start;
  return [...first, ', and ', ...(small === undefined ? [] : [small]), ...rest];
}

/** k steps without the rounding dust of k * 0.05. */
function exact(k: number, step: number): number {
  return Number((k * step).toPrecision(12));
}
