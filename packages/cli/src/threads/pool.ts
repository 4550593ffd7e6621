/** Tasks spread over threads; each thread takes the next task when it is done with one. */
import { Worker } from 'node:worker_threads';
import { CannotRun } from '../exit.ts';
import type { Machine } from '../machine.ts';
import { doTask, type Task, type TaskResult } from './tasks.ts';

/** Of one thread, MB: two of them and the main thread stay under 1 GB. */
const threadMemory = 320;

export interface PoolOptions {
  readonly machine: Machine;
  readonly stopped?: AbortSignal;
  /** Told as tasks end. */
  readonly onDone?: (done: number) => void;
}

/**
 * Results in the order of the tasks; what was not done before it was stopped is undefined. Rejects with the
 * first failure of a task, and with CannotRun when a thread runs out of memory.
 */
export async function runTasks<T extends Task>(
  tasks: readonly T[],
  { machine, stopped, onDone }: PoolOptions,
): Promise<(TaskResult<T> | undefined)[]> {
  const results: (TaskResult<T> | undefined)[] = tasks.map(() => undefined);
  let next = 0;
  let done = 0;
  const take = (): number | undefined => (next < tasks.length && !stopped?.aborted ? next++ : undefined);
  const keep = (index: number, result: unknown): void => {
    results[index] = result as TaskResult<T>;
    done += 1;
    onDone?.(done);
  };
  const threads = Math.min(machine.threads, tasks.length);
  if (machine.threadScript === undefined || threads < 2) {
    for (let index = take(); index !== undefined; index = take()) {
      keep(index, await doTask(tasks[index] as T));
      // Lets an interrupt through.
      await new Promise((resolve) => setImmediate(resolve));
    }
    return results;
  }
  const script = machine.threadScript;
  await Promise.all(Array.from({ length: threads }, () => serveOne(script, tasks, take, keep, stopped)));
  return results;
}

type Answer = { readonly ok: true; readonly result: unknown } | { readonly ok: false; readonly why: string };

function serveOne(
  script: URL,
  tasks: readonly Task[],
  take: () => number | undefined,
  keep: (index: number, result: unknown) => void,
  stopped: AbortSignal | undefined,
): Promise<void> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(script, { resourceLimits: { maxOldGenerationSizeMb: threadMemory } });
    let index: number | undefined;
    const end = (failure?: Error): void => {
      stopped?.removeEventListener('abort', stop);
      void worker.terminate().then(() => (failure ? reject(failure) : resolve()));
    };
    const stop = (): void => end();
    const goOn = (): void => {
      index = take();
      if (index === undefined) end();
      else worker.postMessage(tasks[index]);
    };
    worker.on('message', (answer: Answer) => {
      if (!answer.ok) return end(new Error(answer.why));
      if (index !== undefined) keep(index, answer.result);
      goOn();
    });
    worker.on('error', (error: Error & { readonly code?: string }) =>
      end(
        error.code === 'ERR_WORKER_OUT_OF_MEMORY'
          ? new CannotRun(`A thread ran out of its ${threadMemory} MB of memory.`)
          : error,
      ),
    );
    stopped?.addEventListener('abort', stop);
    goOn();
  });
}
