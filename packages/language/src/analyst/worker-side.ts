/** The worker's side: answers one question after the other, and drops those that were taken back. */
import type { SpecDefinition, SpecWorld } from '@tautline/shelter';
import { analyseNow, fixesNow } from './analyst.ts';
import type { Definitions, FromWorker, Port, ToWorker } from './messages.ts';

type Question = Extract<ToWorker, { id: number; own: Definitions }>;

/** Serves questions until the port closes. */
export function serveAnalyst(port: Port<FromWorker, ToWorker>): void {
  const known = new Map<string, SpecDefinition>();
  let waiting: Question[] = [];
  let busy = false;

  const worldOf = (own: Definitions): SpecWorld => ({ definitions: new Map([...known, ...own]) });

  const next = (): void => {
    const question = waiting.shift();
    if (!question) {
      busy = false;
      return;
    }
    const world = worldOf(question.own);
    if (question.type === 'analyse') {
      const result = analyseNow(world, question.shelter, question.options);
      port.post({ type: 'analysed', id: question.id, result });
    } else {
      const fixes = fixesNow(world, question.shelter, question.request);
      port.post({ type: 'fixed', id: question.id, fixes });
    }
    // A turn of the message loop between two questions lets a cancellation in.
    setTimeout(next, 0);
  };

  port.onMessage((message) => {
    if (message.type === 'know') {
      for (const [name, definition] of message.definitions) known.set(name, definition);
    } else if (message.type === 'cancel') {
      const dropped = waiting.some(({ id }) => id === message.id);
      waiting = waiting.filter(({ id }) => id !== message.id);
      if (dropped) port.post({ type: 'dropped', id: message.id });
    } else {
      // Findings before fixes: a quick fix can wait for the picture to be right.
      if (message.type === 'analyse') waiting.unshift(message);
      else waiting.push(message);
      if (!busy) {
        busy = true;
        setTimeout(next, 0);
      }
    }
  });
}
