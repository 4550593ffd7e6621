/** The workers as threads of Node. */
import { parentPort, Worker } from 'node:worker_threads';
import type { Jobs } from '../analyst/long-work.ts';
import type { FromWorker, Port, ToWorker } from '../analyst/messages.ts';
import { serveAnalyst } from '../analyst/worker-side.ts';
import { serveJobs } from '../analyst/worker-work.ts';
import { idleCollection } from './idle-collection.ts';

/** Starts a thread from a bundled script that calls `serveInThread`. */
export function threadPort(script: string | URL): Port<ToWorker, FromWorker> {
  const worker = new Worker(script);
  // A thread alone does not keep the process alive.
  worker.unref();
  let over = false;
  const gone: ((reason: string) => void)[] = [];
  const end = (reason: string): void => {
    if (over) return;
    over = true;
    for (const listener of gone) listener(reason);
  };
  worker.on('error', (error) =>
    end(`the calculation broke off: ${error instanceof Error ? error.message : error}`),
  );
  worker.on('exit', () => end('the calculation ended early'));
  return {
    post: (message) => worker.postMessage(message),
    onMessage: (listener) => void worker.on('message', listener),
    onGone: (listener) => void gone.push(listener),
    close: () => {
      over = true;
      void worker.terminate();
    },
  };
}

/** Called in the thread's script: answers the analyst's questions, and does these jobs. */
export function serveInThread(jobs: Jobs = {}): void {
  const parent = parentPort;
  if (!parent) throw new Error('serveInThread is for worker threads');
  const rested = idleCollection();
  const port: Port<FromWorker, ToWorker> = {
    post: (message) => {
      parent.postMessage(message);
      rested();
    },
    onMessage: (listener) => void parent.on('message', listener),
    onGone: (listener) => void parent.on('close', () => listener('closed')),
    close: () => parent.close(),
  };
  serveAnalyst(port);
  serveJobs(port, jobs);
}
