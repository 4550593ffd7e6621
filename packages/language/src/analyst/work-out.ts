/** The calculations behind the analyst: resolve a spec, evaluate it, price it, try changes of it. */
import { atGust, evaluate, fixesFor, gustOrder } from '@tautline/checks';
import { newNotes, resolveItems, resolveRange, resolveShelter, type SpecWorld } from '@tautline/shelter';
import { billOf, costOfEdits } from './bill.ts';
import { largestMoments } from './largest-moments.ts';
import type { AnalysisOptions, AnalysisResult, FixRequest, PricedFix } from './result.ts';

type Cancelled = () => boolean;
const never: Cancelled = () => false;

/** Everything but the order of failure, frame analysis included. Never throws. */
export function workOut(
  world: SpecWorld,
  shelter: string,
  on: string | undefined,
  cancelled: Cancelled = never,
): AnalysisResult {
  try {
    if (world.definitions.get(shelter)?.word === 'range')
      return { shelter, problems: resolveRange(shelter, world).problems };
    const resolved = resolveShelter(shelter, world);
    if (!resolved.shelter) return { shelter, problems: resolved.problems };
    const evaluation = evaluate(resolved.shelter, {
      gusts: false,
      cancelled,
      ...(on === undefined ? {} : { on }),
    });
    const bill = billOf(resolved.shelter, world);
    return {
      shelter,
      problems: resolved.problems,
      evaluation,
      moments: largestMoments(evaluation),
      ...(bill ? { bill } : {}),
    };
  } catch (error) {
    if (cancelled()) return { shelter, problems: [] };
    return { shelter, problems: [], failure: reason(error) };
  }
}

/** Adds what was asked for beyond that, and leaves out what was not. */
export function answer(result: AnalysisResult, options: AnalysisOptions): AnalysisResult {
  const { evaluation } = result;
  if (!evaluation) return result;
  const { analysis, ...rest } = evaluation;
  try {
    const gusts =
      evaluation.gusts ??
      (options.gusts === true && analysis
        ? gustOrder(evaluation.shelter, analysis, options.on === undefined ? {} : { on: options.on })
        : undefined);
    const blown =
      options.gust !== undefined && analysis
        ? atGust(evaluation.shelter, analysis, options.gust, options.on)
        : undefined;
    return {
      ...result,
      ...(blown ? { atGust: blown } : {}),
      evaluation: {
        ...rest,
        ...(gusts ? { gusts } : {}),
        ...(options.frame === true && analysis ? { analysis } : {}),
      },
    };
  } catch (error) {
    return { shelter: result.shelter, problems: result.problems, failure: reason(error) };
  }
}

const reason = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** Fixes of a finding of something that `workOut` gave. */
export function fixesNow(
  world: SpecWorld,
  { shelter, evaluation, bill }: AnalysisResult,
  { finding, system, on }: FixRequest,
  cancelled: Cancelled = never,
): readonly PricedFix[] {
  const found = evaluation?.findings.find(({ id, part }) => id === finding.id && part === finding.part);
  if (!evaluation || !found) return [];
  try {
    const stock = { items: resolveItems(world, newNotes()) };
    const context = { world, shelterName: shelter, stock, system, cancelled };
    const fixes = fixesFor(found, evaluation, { ...context, ...(on === undefined ? {} : { on }) });
    return fixes.map((fix) => {
      const change = costOfEdits(fix.edits, shelter, world, bill);
      if (change === undefined) return fix;
      const currency = bill?.currency;
      return { ...fix, cost: { change, ...(currency === undefined ? {} : { currency }) } };
    });
  } catch {
    // A change that cannot be tried out is not offered.
    return [];
  }
}
