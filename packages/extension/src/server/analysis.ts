/** The analysis worker of a server that is a process: a thread of it. */
import { type MessagePort, parentPort } from 'node:worker_threads';
import { type FromWorker, type Port, serveAnalyst, type ToWorker } from '@tautline/language/server';

if (parentPort !== null) {
  serveAnalyst(toParent(parentPort));
}

function toParent(parent: MessagePort): Port<FromWorker, ToWorker> {
  return {
    post: (message) => parent.postMessage(message),
    onMessage: (listener) => void parent.on('message', listener),
    onGone: (listener) => void parent.once('close', () => listener('the server is gone')),
    close: () => parent.close(),
  };
}
