/** The worker's side: answers one question after the other, and drops those that were taken back. */
import type { SpecDefinition, SpecWorld } from '@tautline/shelter';
import { knownFrames } from '@tautline/structure';
import { wallClock } from './clock.ts';
import { type FromWorker, type Port, type ToWorker, worldWith } from './messages.ts';
import type { AnalysisResult } from './result.ts';
import { swapNow } from './swap.ts';
import { answer, fixesNow, never, workOut } from './work-out.ts';

type Question = Extract<ToWorker, { own: string }>;

/** In the next turn of the message loop. Timers of Node wait a millisecond at least; browsers have nothing else. */
const soon = (act: () => void): void => {
  if (typeof setImmediate === 'undefined') setTimeout(act, 0);
  else setImmediate(act);
};

/** Shelters whose last result is remembered, for the stages and fixes that are asked for after it. */
const REMEMBERED = 12;

/** Serves questions until the port closes. */
export function serveAnalyst(port: Port<FromWorker, ToWorker>): void {
  const known = new Map<string, SpecDefinition>();
  const last = new Map<string, { readonly said: string; readonly result: AnalysisResult }>();
  /** A frame is not worked out again for a change of price, film or name, nor for a neighbour's. */
  const frames = knownFrames();
  let waiting: Question[] = [];
  let busy = false;

  /** What a shelter comes to, worked out once for the same words. */
  const resultFor = (
    world: SpecWorld,
    { shelter, own }: Question,
    on: string | undefined,
  ): AnalysisResult => {
    const said = `${on}\n${own}`;
    const before = last.get(shelter);
    if (before?.said === said) return before.result;
    const result = workOut(world, shelter, on, never, wallClock, frames);
    last.delete(shelter);
    last.set(shelter, { said, result });
    const [oldest] = last.keys();
    if (last.size > REMEMBERED && oldest !== undefined) last.delete(oldest);
    return result;
  };

  const next = (): void => {
    const question = waiting.shift();
    if (!question) {
      busy = false;
      return;
    }
    const world = worldWith(known, question.own);
    if (question.type === 'analyse') {
      const { options } = question;
      const result = answer(resultFor(world, question, options.on), options, wallClock, frames);
      port.post({ type: 'analysed', id: question.id, result });
    } else if (question.type === 'swap') {
      const { request } = question;
      const swapped = swapNow(world, resultFor(world, question, request.on), request, frames);
      port.post({ type: 'swapped', id: question.id, ...(swapped ? { swapped } : {}) });
    } else {
      const { request } = question;
      const fixes = fixesNow(world, resultFor(world, question, request.on), request, never, frames);
      port.post({ type: 'fixed', id: question.id, fixes });
    }
    // A turn of the message loop between two questions lets a cancellation in.
    soon(next);
  };

  port.onMessage((message) => {
    if (message.type === 'know') {
      for (const [name, definition] of message.definitions) known.set(name, definition);
      last.clear();
    } else if (message.type === 'cancel') {
      const dropped = waiting.some(({ id }) => id === message.id);
      waiting = waiting.filter(({ id }) => id !== message.id);
      if (dropped) port.post({ type: 'dropped', id: message.id });
    } else if (message.type !== 'job') {
      // Findings before fixes and swaps: these can wait for the picture to be right.
      if (message.type === 'analyse') waiting.unshift(message);
      else waiting.push(message);
      if (!busy) {
        busy = true;
        next();
      }
    }
  });
}
