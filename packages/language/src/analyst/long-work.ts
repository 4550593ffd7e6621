/**
 * Work that takes seconds, in a worker of its own, so that findings while typing never wait for it: the whole
 * house in space, exploring, reviews. One job after the other; each tells its progress and can be stopped.
 */
import type { SpecWorld } from '@tautline/shelter';
import type { CancelToken } from './analyst.ts';

export interface Doing {
  /** True when nobody waits for the answer any more. */
  readonly cancelled: () => boolean;
  /** Told the share that is done, 0 to 1, and what comes next. */
  readonly progress: (share: number, next: string) => void;
}

/** Plain data in, plain data out. May throw when stopped. */
export type Job = (worlds: readonly SpecWorld[], input: unknown, doing: Doing) => unknown;

/** Jobs by name. */
export type Jobs = Readonly<Record<string, Job>>;

export interface Asking {
  readonly token?: CancelToken;
  readonly progress?: Doing['progress'];
  /** The job, told to stop, gives what it has so far, and that is wanted. */
  readonly partial?: boolean;
}

export interface LongWork {
  /**
   * What the job gives; undefined when it was stopped, unless `partial` was asked for and came in time. Rejects when
   * it broke off.
   */
  run<T>(job: string, worlds: readonly SpecWorld[], input: unknown, asking?: Asking): Promise<T | undefined>;
  dispose(): void;
}

/** For tests and for places without workers: works in place, and can be stopped only before it begins. */
export function createInPlaceWork(jobs: Jobs): LongWork {
  let last: Promise<unknown> = Promise.resolve();
  return {
    run: <T>(...[name, worlds, input, { token, progress, partial } = {}]: Parameters<LongWork['run']>) => {
      const cancelled = (): boolean => token?.isCancellationRequested ?? false;
      const turn = last.then(async () => {
        await new Promise((resolve) => setTimeout(resolve, 0));
        if (cancelled()) return undefined;
        const given = await jobNamed(jobs, name)(worlds, input, {
          cancelled,
          progress: progress ?? (() => undefined),
        });
        return cancelled() && partial !== true ? undefined : (given as T);
      });
      last = turn.catch(() => undefined);
      return turn;
    },
    dispose: () => undefined,
  };
}

/** Throws when there is no such job: a fault of the program. */
export function jobNamed(jobs: Jobs, name: string): Job {
  const job = jobs[name];
  if (job === undefined) throw new Error(`there is no job called ${name}`);
  return job;
}
