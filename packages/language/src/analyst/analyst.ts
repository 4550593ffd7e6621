/**
 * Works out what a shelter does: resolves its spec and evaluates it. Behind one interface, so that the
 * editor can have it done in a worker and tests in place.
 */
import {
  type AtGust,
  atGust,
  type Evaluation,
  evaluate,
  type Finding,
  type Fix,
  fixesFor,
  gustOrder,
} from '@tautline/checks';
import type { System } from '@tautline/quantity';
import {
  newNotes,
  type Problem,
  resolveItems,
  resolveRange,
  resolveShelter,
  type SpecWorld,
} from '@tautline/shelter';
import { type Bill, billOf, costOfEdits } from './bill.ts';
import { type LargestMoment, largestMoments } from './largest-moments.ts';
import { type Swapped, type SwapRequest, swapNow } from './swap.ts';

/** Plain data: goes through a worker's messages as it is. */
export interface AnalysisResult {
  readonly shelter: string;
  readonly problems: readonly Problem[];
  /** Absent when the spec could not be resolved; the problems say why. Always absent for a range. */
  readonly evaluation?: Evaluation;
  /** Absent when nothing has a price. */
  readonly bill?: Bill;
  /** Of each member of the typical frame. */
  readonly moments?: readonly LargestMoment[];
  /** The frame and its parts at the gust that was asked for. */
  readonly atGust?: AtGust;
  /** Set when the calculation itself broke off: a fault of the program, never hidden. */
  readonly failure?: string;
}

export interface AnalysisOptions {
  /** Day that ages are counted to, ISO; ages are not checked without one. */
  readonly on?: string;
  /** Also the order in which parts fail as the gust rises: several times the work of everything else. */
  readonly gusts?: boolean;
  /** Also the frame analysis itself, forces and displacements of every load: large. */
  readonly frame?: boolean;
  /** Also the frame at this gust, m/s, and what each part takes of its limit there. */
  readonly gust?: number;
}

export interface FixRequest {
  readonly on?: string;
  readonly finding: Pick<Finding, 'id' | 'part'>;
  readonly system: System;
}

/** A fix, and what it adds to the bill where that can be said. */
export interface PricedFix extends Fix {
  readonly cost?: { readonly change: number; readonly currency?: string };
}

/** Told by the caller that nobody waits for the answer any more. */
export interface CancelToken {
  readonly isCancellationRequested: boolean;
  onCancellationRequested(listener: () => void): { dispose(): void };
}

export interface Analyst {
  /** Undefined when it was cancelled. Never rejects for anything a spec says. */
  analyse(
    world: SpecWorld,
    shelter: string,
    options?: AnalysisOptions,
    token?: CancelToken,
  ): Promise<AnalysisResult | undefined>;
  /** Changes after which a finding is gone, worked out by trying them. */
  fixes(
    world: SpecWorld,
    shelter: string,
    request: FixRequest,
    token?: CancelToken,
  ): Promise<readonly PricedFix[]>;
  /** What comes of using the nth item that could stand in for one. */
  swap(
    world: SpecWorld,
    shelter: string,
    request: SwapRequest,
    token?: CancelToken,
  ): Promise<Swapped | undefined>;
  dispose(): void;
}

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

const turn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

/** An analyst for tests and for places without workers: works in place, after what is under way there. */
export function createInProcessAnalyst(): Analyst {
  return {
    analyse: async (world, shelter, options = {}, token) => {
      await turn();
      const cancelled = (): boolean => token?.isCancellationRequested ?? false;
      const result = workOut(world, shelter, options.on, cancelled);
      return cancelled() ? undefined : answer(result, options);
    },
    fixes: async (world, shelter, request, token) => {
      const cancelled = (): boolean => token?.isCancellationRequested ?? false;
      return fixesNow(world, workOut(world, shelter, request.on, cancelled), request, cancelled);
    },
    swap: async (world, shelter, request) => swapNow(world, workOut(world, shelter, request.on), request),
    dispose: () => undefined,
  };
}
