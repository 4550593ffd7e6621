/** The worker's side: answers one question after the other, and drops those that were taken back. */
import type { SpecDefinition, SpecWorld } from '@tautline/shelter';
import { kept, knownFrames } from '@tautline/structure';
import { bearingButForAmounts, bearingOn } from './bearing.ts';
import { type Billed, billed } from './bill.ts';
import { type FromWorker, type Heard, type Port, stopped, type ToWorker, worldWith } from './messages.ts';
import { repriced } from './repriced.ts';
import type { WorkedOut } from './result.ts';
import { swapNow } from './swap.ts';
import { answer, asksForAll, completed, fixesNow, never, workOut } from './work-out.ts';

type Question = Extract<ToWorker, { shelter: string }>;
/** With what it is about. */
type Asked = Question & { readonly world: SpecWorld };

/** In the next turn of the message loop. Timers of Node wait a millisecond at least; browsers have nothing else. */
const soon = (act: () => void): void => {
  if (typeof setImmediate === 'undefined') setTimeout(act, 0);
  else setImmediate(act);
};

/** Findings come first, and bills, which are quick, before what takes as long as the order of failure. */
const patienceFor = (question: Question): number => {
  if (question.type === 'bill') return 1;
  return question.type === 'analyse' && question.options.gusts !== true ? 0 : 2;
};

/** Shelters whose last result is remembered, for the stages and fixes that are asked for after it. */
const REMEMBERED = 12;

/** What a shelter came to, and the words it was worked out from. */
interface Result {
  readonly said: string;
  readonly butForAmounts: string;
  readonly result: WorkedOut;
}

/** Serves questions until the port closes. */
export function serveAnalyst(port: Port<FromWorker, ToWorker>): void {
  const definitions = new Map<string, SpecDefinition>();
  const heard: Heard = new Map();
  const last = new Map<string, Result>();
  const bills = new Map<string, { readonly said: string; readonly answer: Billed }>();
  /** A frame is not worked out again for a change of price, film or name, nor for a neighbour's. */
  const known = knownFrames();
  let waiting: Asked[] = [];
  let world: SpecWorld | undefined;
  let busy = false;

  /** What a shelter comes to, worked out once for the same words; `whole` with what is found by the gusts, too. */
  const resultFor = (
    world: SpecWorld,
    { shelter }: Question,
    on: string | undefined,
    whole: boolean,
    cancelled = never,
  ): WorkedOut => {
    const working = { cancelled, known };
    const said = `${on}\n${bearingOn(shelter, world)}`;
    const before = last.get(shelter);
    const same = before?.said === said ? before : undefined;
    const butForAmounts = same?.butForAmounts ?? `${on}\n${bearingButForAmounts(shelter, world)}`;
    const first =
      same?.result ??
      (before?.butForAmounts === butForAmounts ? repriced(world, before.result) : undefined) ??
      workOut(world, shelter, on, working, whole ? false : 'later');
    const result = whole ? completed(first, on, working) : first;
    // What was called off half way says nothing.
    if (!cancelled()) kept(last, shelter, { said, butForAmounts, result }, REMEMBERED);
    return result;
  };

  /** Of the same words, the same bill: an edit in one house asks again for those of all. */
  const billFor = (world: SpecWorld, { shelter }: Question): Billed => {
    const said = bearingOn(shelter, world);
    const before = bills.get(shelter);
    const answer = before?.said === said ? before.answer : billed(shelter, world);
    kept(bills, shelter, { said, answer }, REMEMBERED);
    return answer;
  };

  const next = (): void => {
    const question = waiting.shift();
    if (!question) {
      busy = false;
      return;
    }
    const { id, world } = question;
    if (question.type === 'analyse') {
      const { options } = question;
      const cancelled = stopped(question.stop);
      const before = resultFor(world, question, options.on, asksForAll(options), cancelled);
      const result = answer(before, options, { cancelled, known });
      port.post(cancelled() ? { type: 'dropped', id } : { type: 'analysed', id, result });
    } else if (question.type === 'bill') {
      port.post({ type: 'billed', id, billed: billFor(world, question) });
    } else if (question.type === 'swap') {
      const { request } = question;
      const swapped = swapNow(world, resultFor(world, question, request.on, true), request, { known });
      port.post({ type: 'swapped', id, ...(swapped ? { swapped } : {}) });
    } else {
      const { request } = question;
      const fixes = fixesNow(world, resultFor(world, question, request.on, true), request, { known });
      port.post({ type: 'fixed', id, fixes });
    }
    // A turn of the message loop between two questions lets a cancellation in.
    soon(next);
  };

  port.onMessage((message) => {
    if (message.type === 'know') {
      for (const [name, definition] of message.definitions) definitions.set(name, definition);
      last.clear();
      bills.clear();
    } else if (message.type === 'cancel') {
      const dropped = waiting.some(({ id }) => id === message.id);
      waiting = waiting.filter(({ id }) => id !== message.id);
      if (dropped) port.post({ type: 'dropped', id: message.id });
    } else if (message.type !== 'job') {
      if (message.own) world = worldWith(definitions, message.own, heard);
      if (!world) return port.post({ type: 'dropped', id: message.id });
      const later = waiting.findIndex((one) => patienceFor(one) > patienceFor(message));
      waiting.splice(later < 0 ? waiting.length : later, 0, { ...message, world });
      if (!busy) {
        busy = true;
        next();
      }
    }
  });
}
