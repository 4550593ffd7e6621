/**
 * Works out what a shelter does: resolves its spec and evaluates it. Behind one interface, so that the
 * editor can have it done in a worker and the command line and tests in place.
 */

import { type Evaluation, evaluate, type Finding, type Fix, fixesFor } from '@tautline/checks';
import type { System } from '@tautline/quantity';
import { newNotes, type Problem, resolveItems, resolveShelter, type SpecWorld } from '@tautline/shelter';

/** Plain data: goes through a worker's messages as it is. */
export interface AnalysisResult {
  readonly shelter: string;
  readonly problems: readonly Problem[];
  /** Absent when the spec could not be resolved; the problems say why. */
  readonly evaluation?: Evaluation;
  /** Set when the calculation itself broke off: a fault of the program, never hidden. */
  readonly failure?: string;
}

export interface AnalysisOptions {
  /** Day that ages are counted to, ISO; ages are not checked without one. */
  readonly on?: string;
}

export interface FixRequest extends AnalysisOptions {
  readonly finding: Pick<Finding, 'id' | 'part'>;
  readonly system: System;
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
  fixes(world: SpecWorld, shelter: string, request: FixRequest, token?: CancelToken): Promise<readonly Fix[]>;
  dispose(): void;
}

/** Analyses at once, in place. */
export function analyseNow(
  world: SpecWorld,
  shelter: string,
  options: AnalysisOptions = {},
  cancelled: () => boolean = () => false,
): AnalysisResult {
  try {
    const resolved = resolveShelter(shelter, world);
    if (!resolved.shelter) return { shelter, problems: resolved.problems };
    const evaluation = evaluate(resolved.shelter, { ...options, cancelled });
    return { shelter, problems: resolved.problems, evaluation };
  } catch (error) {
    if (cancelled()) return { shelter, problems: [] };
    return { shelter, problems: [], failure: error instanceof Error ? error.message : String(error) };
  }
}

export function fixesNow(
  world: SpecWorld,
  shelter: string,
  { finding, system, ...options }: FixRequest,
  cancelled: () => boolean = () => false,
): readonly Fix[] {
  const { evaluation } = analyseNow(world, shelter, options, cancelled);
  const found = evaluation?.findings.find(({ id, part }) => id === finding.id && part === finding.part);
  if (!evaluation || !found) return [];
  try {
    const stock = { items: resolveItems(world, newNotes()) };
    return fixesFor(found, evaluation, { world, shelterName: shelter, stock, system, cancelled, ...options });
  } catch {
    // A change that cannot be tried out is not offered.
    return [];
  }
}

/** The analyst of the command line and of tests: answers at once, in place. */
export function createInProcessAnalyst(): Analyst {
  return {
    analyse: async (world, shelter, options, token) => {
      const result = analyseNow(world, shelter, options, () => token?.isCancellationRequested ?? false);
      return token?.isCancellationRequested ? undefined : result;
    },
    fixes: async (world, shelter, request, token) =>
      fixesNow(world, shelter, request, () => token?.isCancellationRequested ?? false),
    dispose: () => undefined,
  };
}
