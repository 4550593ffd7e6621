/** The server's side of the analysis worker: questions with numbers, answers by number, a new worker when one dies. */
import type { SpecWorld } from '@tautline/shelter';
import type { Analyst, CancelToken } from './analyst.ts';
import type { Billed } from './bill.ts';
import {
  type FromWorker,
  newStop,
  nothingTold,
  type OwnWords,
  type Port,
  partedWorld,
  type ToWorker,
  tellToStop,
} from './messages.ts';
import type { AnalysisResult, PricedFix } from './result.ts';
import type { Swapped } from './swap.ts';

/** How long a cancelled calculation may still run before its worker is put down, ms. */
const PATIENCE = 4000;

/** Nothing where the words are those of the question before. */
interface Words {
  readonly own?: OwnWords;
}

interface Waiting {
  answer(message: FromWorker | { readonly type: 'gone'; readonly reason: string }): void;
}

/**
 * An analyst that works in a worker. `start` starts one; it is called again when a worker dies or when
 * a calculation nobody waits for does not end.
 */
export function createWorkerAnalyst(start: () => Port<ToWorker, FromWorker>): Analyst {
  let port: Port<ToWorker, FromWorker> | undefined;
  let lastId = 0;
  let told = nothingTold();
  /** The world of the question before: several shelters of a file are asked for one after the other. */
  let last: SpecWorld | undefined;
  const waiting = new Map<number, Waiting>();

  const gone = (reason: string): void => {
    port = undefined;
    last = undefined;
    told = nothingTold();
    const left = [...waiting.values()];
    waiting.clear();
    for (const one of left) one.answer({ type: 'gone', reason });
  };

  const connected = (): Port<ToWorker, FromWorker> => {
    if (port) return port;
    const fresh = start();
    fresh.onMessage((message) => {
      const one = waiting.get(message.id);
      waiting.delete(message.id);
      one?.answer(message);
    });
    fresh.onGone((reason) => {
      if (port === fresh) gone(reason);
    });
    port = fresh;
    return fresh;
  };

  /** Sends the worker what it does not know of the catalogue, and gives back the rest of a world that is new to it. */
  const introduce = (world: SpecWorld, to: Port<ToWorker, FromWorker>): Words => {
    if (world === last) return {};
    const { fresh, packed } = partedWorld(world, told);
    if (fresh.length > 0) to.post({ type: 'know', definitions: fresh });
    last = world;
    return { own: packed.own };
  };

  const ask = <T>(
    question: (id: number, own: Words, stop: SharedArrayBuffer | undefined) => ToWorker,
    world: SpecWorld,
    read: (message: Parameters<Waiting['answer']>[0] | undefined) => T,
    token: CancelToken | undefined,
  ): Promise<T> =>
    new Promise((resolve) => {
      if (token?.isCancellationRequested) return resolve(read(undefined));
      const to = connected();
      lastId += 1;
      const id = lastId;
      const own = introduce(world, to);
      const stop = newStop();
      const cancelling = token?.onCancellationRequested(() => {
        if (!waiting.has(id)) return;
        if (stop) tellToStop(stop);
        to.post({ type: 'cancel', id });
        waiting.set(id, { answer: () => clearTimeout(timer) });
        const timer = setTimeout(() => {
          if (!waiting.has(id) || port !== to) return;
          to.close();
          gone('a calculation did not end');
        }, PATIENCE);
        resolve(read(undefined));
      });
      waiting.set(id, {
        answer: (message) => {
          cancelling?.dispose();
          resolve(read(message));
        },
      });
      to.post(question(id, own, stop));
    });

  return {
    analyse: (world, shelter, options = {}, token) =>
      ask<AnalysisResult | undefined>(
        (id, own, stop) => ({ type: 'analyse', id, ...own, shelter, options, ...(stop ? { stop } : {}) }),
        world,
        (message) => {
          if (message?.type === 'analysed') return message.result;
          if (message?.type === 'gone') return { shelter, problems: [], failure: message.reason };
          return undefined;
        },
        token,
      ),
    bill: (world, shelter, token) =>
      ask<Billed | undefined>(
        (id, own) => ({ type: 'bill', id, ...own, shelter }),
        world,
        (message) => {
          if (message?.type === 'billed') return message.billed;
          return message?.type === 'gone' ? { failure: message.reason } : undefined;
        },
        token,
      ),
    fixes: (world, shelter, request, token) =>
      ask<readonly PricedFix[]>(
        (id, own) => ({ type: 'fixes', id, ...own, shelter, request }),
        world,
        (message) => (message?.type === 'fixed' ? message.fixes : []),
        token,
      ),
    swap: (world, shelter, request, token) =>
      ask<Swapped | undefined>(
        (id, own) => ({ type: 'swap', id, ...own, shelter, request }),
        world,
        (message) => (message?.type === 'swapped' ? message.swapped : undefined),
        token,
      ),
    dispose: () => {
      port?.close();
      gone('closed');
    },
  };
}
