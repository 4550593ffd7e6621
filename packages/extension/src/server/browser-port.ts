import type { Port } from '@tautline/language/server';

/** A worker as one of its sides sees the other: `other` is the worker, or inside it its own scope. */
export function portOf<Out, In>(other: Worker): Port<Out, In> {
  return {
    post: (message) => other.postMessage(message),
    onMessage: (listener) =>
      other.addEventListener('message', (event: MessageEvent<In>) => listener(event.data)),
    onGone: (listener) =>
      other.addEventListener('error', (event) => listener(`the calculation broke off: ${event.message}`)),
    close: () => other.terminate(),
  };
}
