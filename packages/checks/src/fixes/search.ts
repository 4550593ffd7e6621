/**
 * Fixes are worked out, not advised: each candidate change is applied to the spec, the shelter resolved
 * and evaluated again, and only a change after which the check passes and nothing new fails is offered.
 */
import { applyEdits, resolveShelter, type Shelter, type SpecEdit, type SpecWorld } from '@tautline/shelter';
import type { Lever, Stock } from '../check.ts';
import { type Evaluation, evaluate } from '../evaluate.ts';
import type { Finding, Fix } from '../finding.ts';
import { checkOf } from '../registry.ts';

export interface FixContext {
  readonly world: SpecWorld;
  /** Name of the shelter's definition. */
  readonly shelterName: string;
  readonly stock: Stock;
  /** Units that changed numbers are rounded to. */
  readonly system: 'metric' | 'us';
  readonly on?: string;
  readonly cancelled?: () => boolean;
}

interface Trial {
  readonly utilisation: number;
  readonly passes: boolean;
}

/** Every fix that makes this finding go away, smallest change of each kind. */
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
    ...(context.on === undefined ? {} : { on: context.on }),
  };
  const failing = new Set(
    evaluation.findings
      .filter((entry) => entry.verdict === 'fails')
      .map((entry) => `${entry.id}@${entry.part}`),
  );
  const attempt = (edits: readonly SpecEdit[]): Trial => trial(finding, edits, failing, context);
  return check.levers(input, finding, context.stock).flatMap((lever) => {
    const fix =
      lever.type === 'number' ? tryNumber(lever, attempt, context.system) : tryChoice(lever, attempt);
    return fix === undefined ? [] : [fix];
  });
}

function trial(
  finding: Finding,
  edits: readonly SpecEdit[],
  failing: ReadonlySet<string>,
  context: FixContext,
): Trial {
  const shelter = changed(edits, context);
  if (shelter === undefined) return { utilisation: Number.POSITIVE_INFINITY, passes: false };
  const after = evaluate(shelter, {
    gusts: false,
    ...(context.on === undefined ? {} : { on: context.on }),
    ...(context.cancelled === undefined ? {} : { cancelled: context.cancelled }),
  });
  const same = after.findings.filter(
    (entry) =>
      entry.id === finding.id && (entry.part === finding.part || finding.part.startsWith(entry.part)),
  );
  const utilisation = Math.max(0, ...same.map((entry) => entry.utilisation ?? 0));
  const fresh = after.findings.some(
    (entry) =>
      entry.verdict === 'fails' && entry.severity === 'error' && !failing.has(`${entry.id}@${entry.part}`),
  );
  const stillUnknown = after.notChecked.some((entry) => entry.id === finding.id) && same.length === 0;
  return { utilisation, passes: utilisation <= 1 && !fresh && !stillUnknown };
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

function tryChoice(
  lever: Extract<Lever, { type: 'choice' }>,
  attempt: (edits: readonly SpecEdit[]) => Trial,
): Fix | undefined {
  for (const option of lever.options) {
    const result = attempt(option.edits);
    if (result.passes)
      return {
        title: option.title,
        edits: option.edits,
        utilisationAfter: result.utilisation,
      };
  }
  return undefined;
}

/** Smallest move on a grid of handy steps that passes, by halving; the check is taken to be monotone in it. */
function tryNumber(
  lever: Extract<Lever, { type: 'number' }>,
  attempt: (edits: readonly SpecEdit[]) => Trial,
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
  };
}

/** k steps without the rounding dust of k * 0.05. */
function exact(k: number, step: number): number {
  return Number((k * step).toPrecision(12));
}
