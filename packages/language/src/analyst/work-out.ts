/** The calculations behind the analyst: resolve a spec, evaluate it, price it, try changes of it. */
import {
  atGust,
  type Evaluation,
  evaluate,
  evaluateRange,
  type Finding,
  type Fix,
  fixesFor,
  gustOrder,
  rangeFixesFor,
} from '@tautline/checks';
import {
  newNotes,
  resolveItems,
  resolveRange,
  resolveShelter,
  type Shelter,
  type SpecWorld,
} from '@tautline/shelter';
import { type KnownFrames, stagesBy } from '@tautline/structure';
import { billOfNamed, costOfEdits } from './bill.ts';
import { type Clock, wallClock } from './clock.ts';
import { largestMoments } from './largest-moments.ts';
import { reason } from './reason.ts';
import {
  type AnalysisOptions,
  type AnalysisResult,
  type FixRequest,
  type PricedFix,
  toldFinding,
  type WorkedOut,
} from './result.ts';

type Cancelled = () => boolean;
export const never: Cancelled = () => false;

/** How the work is done; what it comes to is the same. */
export interface Working {
  readonly cancelled?: Cancelled;
  /** A stage that takes longer than this allows is not checked, and the evaluation says so. */
  readonly clock?: Clock;
  /** Finds frames that were worked out before. */
  readonly known?: KnownFrames;
}

/**
 * Everything but the order of failure and the bill, frame analysis included. With `later`, what is found by the gusts is left for
 * `completed`. How long stages took is left out, so that the same words give the same answer. Never throws.
 */
export function workOut(
  world: SpecWorld,
  shelter: string,
  on: string | undefined,
  working: Working = {},
  gusts: false | 'later' = false,
): WorkedOut {
  try {
    if (world.definitions.get(shelter)?.word === 'range') return workOutRange(shelter, world, on);
    const resolved = resolveShelter(shelter, world);
    if (!resolved.shelter) return { shelter, problems: resolved.problems };
    const evaluation = evaluated(resolved.shelter, on, gusts, working);
    return {
      shelter,
      problems: resolved.problems,
      evaluation,
      moments: largestMoments(evaluation),
    };
  } catch (error) {
    if (working.cancelled?.()) return { shelter, problems: [] };
    return { shelter, problems: [], failure: reason(error) };
  }
}

function evaluated(
  shelter: Shelter,
  on: string | undefined,
  gusts: false | 'later',
  { cancelled = never, clock = wallClock, known }: Working,
): Evaluation {
  const { stages: _times, ...evaluation } = evaluate(shelter, {
    gusts,
    cancelled,
    clock,
    known,
    ...(on === undefined ? {} : { on }),
  });
  return evaluation;
}

/** A result with what its evaluation still awaits. */
export function completed(result: WorkedOut, on: string | undefined, working: Working = {}): WorkedOut {
  const { shelter, problems, evaluation } = result;
  if (evaluation?.awaits === undefined) return result;
  try {
    return { ...result, evaluation: evaluated(evaluation.shelter, on, false, working) };
  } catch (error) {
    return { shelter, problems, failure: reason(error) };
  }
}

function workOutRange(name: string, world: SpecWorld, on: string | undefined): WorkedOut {
  const { range, problems } = resolveRange(name, world);
  if (!range) return { shelter: name, problems };
  return {
    shelter: name,
    problems,
    judged: { range, verdict: evaluateRange(range, on) },
  };
}

/** Whether what is found by the gusts is wanted, too. */
export const asksForAll = ({ gusts, steps }: AnalysisOptions): boolean => gusts === true || steps === true;

/** What is told of it: adds what was asked for beyond that, and leaves out what was not. */
export function answer(
  result: WorkedOut,
  options: AnalysisOptions,
  { cancelled = never, clock = wallClock, known }: Working = {},
): AnalysisResult {
  const { evaluation, judged, ...same } = result;
  const findings = evaluation?.findings ?? judged?.verdict.findings;
  const calculated = options.steps === true && findings ? { calculated: findings } : {};
  if (judged) {
    const verdict = { ...judged.verdict, findings: judged.verdict.findings.map(toldFinding) };
    return { ...same, ...calculated, judged: { ...judged, verdict } };
  }
  if (!evaluation) return same;
  const { analysis, ...rest } = evaluation;
  const on = options.on === undefined ? {} : { on: options.on };
  try {
    // A cap has no frame, and is ranked by balance alone.
    const rankable = analysis !== undefined || evaluation.shelter.roof.type === 'cap';
    const ranked =
      evaluation.gusts === undefined && options.gusts === true && rankable
        ? stagesBy(clock, cancelled).run('gusts', (stop) =>
            gustOrder(evaluation.shelter, analysis, { ...on, cancelled: stop, solve: known?.solve }),
          )
        : undefined;
    const gusts = ranked?.ok === true ? ranked.value : evaluation.gusts;
    const late = ranked?.ok === false ? [{ id: 'gusts', reason: ranked.reason }] : [];
    const blown =
      options.gust !== undefined && analysis
        ? atGust(evaluation.shelter, analysis, options.gust, options.on)
        : undefined;
    return {
      ...same,
      ...calculated,
      ...(blown ? { atGust: blown } : {}),
      evaluation: {
        ...rest,
        findings: rest.findings.map(toldFinding),
        notChecked: [...rest.notChecked, ...late],
        ...(gusts ? { gusts } : {}),
        ...(options.frame === true && analysis ? { analysis } : {}),
      },
    };
  } catch (error) {
    return { shelter: result.shelter, problems: result.problems, failure: reason(error) };
  }
}

/** Fixes of a finding of something that `workOut` gave. */
export function fixesNow(
  world: SpecWorld,
  result: WorkedOut,
  request: FixRequest,
  working: Working = {},
): readonly PricedFix[] {
  const { shelter } = result;
  try {
    const fixes = searched(world, result, request, working);
    const bill = fixes.length > 0 ? billOfNamed(shelter, world) : undefined;
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

function searched(
  world: SpecWorld,
  { shelter, evaluation, judged }: WorkedOut,
  { finding, system, on }: FixRequest,
  { cancelled = never, known }: Working,
): readonly Fix[] {
  const same = ({ id, part }: Finding): boolean => id === finding.id && part === finding.part;
  const day = on === undefined ? {} : { on };
  if (judged) {
    const found = judged.verdict.findings.find(same);
    return found ? rangeFixesFor(found, judged.range, { world, system, ...day }) : [];
  }
  const found = evaluation?.findings.find(same);
  if (!evaluation || !found) return [];
  const stock = { items: resolveItems(world, newNotes()) };
  return fixesFor(found, evaluation, {
    world,
    shelterName: shelter,
    stock,
    system,
    cancelled,
    known,
    ...day,
  });
}
