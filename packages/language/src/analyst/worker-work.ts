/**
 * The server's side of the worker for long work. It is given one job at a time, so that one that does not stop
 * can be put down with its worker and nothing else is lost.
 */

import type { SpecDefinition } from '@tautline/shelter';
import { type Jobs, jobNamed, type LongWork } from './long-work.ts';
import {
  type FromWorker,
  type Heard,
  newStop,
  nothingTold,
  type Packed,
  type Port,
  partedWorld,
  stopped,
  type ToWorker,
  tellToStop,
  worldWith,
} from './messages.ts';
import { reason } from './reason.ts';

/** How long a job that was told to stop may still run before its worker is put down, ms. */
const PATIENCE = 1000;
/** The same where what it has so far is wanted: the step under way is finished first, ms. */
const PATIENCE_FOR_PART = 8000;

type Message = FromWorker | { readonly type: 'gone'; readonly reason: string };

/** A worker is started with the first job, and again after one that died or had to be put down. */
export function createWorkerWork(start: () => Port<ToWorker, FromWorker>): LongWork {
  let port: Port<ToWorker, FromWorker> | undefined;
  let lastId = 0;
  let hear: ((message: Message) => void) | undefined;
  let before: Promise<unknown> = Promise.resolve();
  let told = nothingTold();

  const gone = (reason: string): void => {
    port = undefined;
    told = nothingTold();
    hear?.({ type: 'gone', reason });
  };
  const connected = (): Port<ToWorker, FromWorker> => {
    if (port) return port;
    const fresh = start();
    fresh.onMessage((message) => hear?.(message));
    fresh.onGone((reason) => {
      if (port === fresh) gone(reason);
    });
    port = fresh;
    return fresh;
  };
  const putDown = (reason: string): void => {
    port?.close();
    gone(reason);
  };

  type Asked = Parameters<LongWork['run']>;
  const work = <T>(
    ...[job, worlds, input, { token, progress, partial = false } = {}]: Asked
  ): Promise<T | undefined> => {
    if (token?.isCancellationRequested) return Promise.resolve(undefined);
    const to = connected();
    const packed: Packed[] = [];
    for (const world of worlds) {
      const parted = partedWorld(world, told);
      if (parted.fresh.length > 0) to.post({ type: 'know', definitions: parted.fresh });
      packed.push(parted.packed);
    }
    lastId += 1;
    const id = lastId;
    const stop = newStop();
    return new Promise((resolve, reject) => {
      let timer: ReturnType<typeof setTimeout> | undefined;
      let over = false;
      const cancelling = token?.onCancellationRequested(() => {
        if (over) return;
        over = true;
        if (stop) {
          tellToStop(stop);
          timer = setTimeout(() => putDown('stopped'), partial ? PATIENCE_FOR_PART : PATIENCE);
        } else putDown('stopped');
      });
      hear = (message) => {
        if (message.type !== 'gone' && message.id !== id) return;
        if (message.type === 'progress') {
          if (!over) progress?.(message.share, message.next);
          return;
        }
        hear = undefined;
        clearTimeout(timer);
        cancelling?.dispose();
        if (message.type === 'done' && (partial || !over)) resolve(message.output as T);
        else if (over || message.type === 'dropped') resolve(undefined);
        else reject(new Error('reason' in message ? message.reason : `unexpected ${message.type}`));
      };
      to.post({ type: 'job', id, job, worlds: packed, input, partial, ...(stop ? { stop } : {}) });
    });
  };

  return {
    run: <T>(...asked: Asked) => {
      const turn = before.then(() => work<T>(...asked));
      before = turn.catch(() => undefined);
      return turn;
    },
    dispose: () => putDown('closed'),
  };
}

/** The worker's side: does the jobs it is told of until the port closes. */
export function serveJobs(port: Port<FromWorker, ToWorker>, jobs: Jobs): void {
  const known = new Map<string, SpecDefinition>();
  const heard: Heard = new Map();
  port.onMessage((message) => {
    if (message.type === 'know') for (const [name, one] of message.definitions) known.set(name, one);
    if (message.type !== 'job') return;
    const { id, job, worlds, input, partial, stop } = message;
    const cancelled = stopped(stop);
    const progress = (share: number, next: string): void => port.post({ type: 'progress', id, share, next });
    const read = worlds.map(({ own, ...rest }) => ({ ...rest, ...worldWith(known, own, heard) }));
    // In a promise from the start, so that a job may be synchronous or not, and throw in either.
    Promise.resolve()
      .then(() => jobNamed(jobs, job)(read, input, { cancelled, progress }))
      .then(
        (output) =>
          port.post(cancelled() && !partial ? { type: 'dropped', id } : { type: 'done', id, output }),
        (error: unknown) =>
          port.post(cancelled() ? { type: 'dropped', id } : { type: 'broke-off', id, reason: reason(error) }),
      );
  });
}
