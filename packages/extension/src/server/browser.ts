/**
 * The language server as a web worker (editor in a browser). The same script, started again under another
 * name, does the calculations, so that a long one never holds up completion.
 */
import {
  createWorkerAnalyst,
  type FromWorker,
  type Port,
  serveAnalyst,
  startServer,
  type ToWorker,
} from '@tautline/language/server';
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  createConnection,
} from 'vscode-languageserver/browser.js';
import { clientFiles } from './client-files.ts';
import { sheets } from './sheets.ts';

const analystName = 'tautline-analyst';
// Typed as what a worker's own scope and a worker seen from outside have in common.
const scope = globalThis as unknown as Worker & { readonly name: string; readonly location: Location };

if (scope.name === analystName) {
  serveAnalyst(portOf<FromWorker, ToWorker>(scope, () => undefined));
} else {
  const connection = createConnection(new BrowserMessageReader(scope), new BrowserMessageWriter(scope));
  startServer(connection, {
    fileSystem: () => clientFiles(connection),
    analyst: createWorkerAnalyst(() => {
      const worker = new Worker(scope.location.href, { name: analystName });
      return portOf<ToWorker, FromWorker>(worker, (listener) =>
        worker.addEventListener('error', (event) => listener(`the calculation broke off: ${event.message}`)),
      );
    }),
    sheets,
  });
}

function portOf<Out, In>(other: Worker, onGone: (listener: (reason: string) => void) => void): Port<Out, In> {
  return {
    post: (message) => other.postMessage(message),
    onMessage: (listener) =>
      other.addEventListener('message', (event: MessageEvent<In>) => listener(event.data)),
    onGone,
    close: () => other.terminate?.(),
  };
}
