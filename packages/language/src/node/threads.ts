/** The analysis worker as a thread of Node. */
import { parentPort, Worker } from 'node:worker_threads';
import type { FromWorker, Port, ToWorker } from '../analyst/messages.ts';
import { serveAnalyst } from '../analyst/worker-side.ts';

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

/** Called in the thread's script. */
export function serveInThread(): void {
  const port = parentPort;
  if (!port) throw new Error('serveInThread is for worker threads');
  serveAnalyst({
    post: (message) => port.postMessage(message),
    onMessage: (listener) => void port.on('message', listener),
    onGone: (listener) => void port.on('close', () => listener('closed')),
    close: () => port.close(),
  });
}
