/**
 * Works out what a shelter does. Behind one interface, so that the editor can have it done in a worker and tests
 * in place.
 */
import type { SpecWorld } from '@tautline/shelter';
import { type Billed, billed } from './bill.ts';
import type { AnalysisOptions, AnalysisResult, FixRequest, PricedFix } from './result.ts';
import { type Swapped, type SwapRequest, swapNow } from './swap.ts';
import { answer, asksForAll, fixesNow, workOut } from './work-out.ts';

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
  /** What a shelter or range costs; undefined when it was cancelled. */
  bill(world: SpecWorld, shelter: string, token?: CancelToken): Promise<Billed | undefined>;
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

const turn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

/** An analyst for tests and for places without workers: works in place, after what is under way there. */
export function createInProcessAnalyst(): Analyst {
  return {
    analyse: async (world, shelter, options = {}, token) => {
      await turn();
      const cancelled = (): boolean => token?.isCancellationRequested ?? false;
      const gusts = asksForAll(options) ? false : 'later';
      const result = workOut(world, shelter, options.on, { cancelled }, gusts);
      return cancelled() ? undefined : answer(result, options, { cancelled });
    },
    bill: async (world, shelter) => {
      await turn();
      return billed(shelter, world);
    },
    fixes: async (world, shelter, request, token) => {
      const cancelled = (): boolean => token?.isCancellationRequested ?? false;
      return fixesNow(world, workOut(world, shelter, request.on, { cancelled }), request, { cancelled });
    },
    swap: async (world, shelter, request) => swapNow(world, workOut(world, shelter, request.on), request),
    dispose: () => undefined,
  };
}
