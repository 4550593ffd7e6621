/**
 * The language server as a process of its own (desktop and remote hosts). The same file, started again as
 * a worker thread, does the calculations, so that a long one never holds up completion.
 */
import { isMainThread, type MessagePort, parentPort, Worker } from 'node:worker_threads';
import {
  createWorkerAnalyst,
  type FromWorker,
  type Port,
  serveAnalyst,
  startServer,
  type ToWorker,
} from '@tautline/language/server';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node.js';
import { clientFiles } from './client-files.ts';
import { sheets } from './sheets.ts';

if (isMainThread) {
  const connection = createConnection(ProposedFeatures.all);
  startServer(connection, {
    fileSystem: () => clientFiles(connection),
    // Bundled as CommonJS: the file's own name is there.
    analyst: createWorkerAnalyst(() => toThread(new Worker(__filename))),
    sheets,
  });
} else if (parentPort !== null) {
  serveAnalyst(toParent(parentPort));
}

function toThread(worker: Worker): Port<ToWorker, FromWorker> {
  return {
    post: (message) => worker.postMessage(message),
    onMessage: (listener) => void worker.on('message', listener),
    onGone: (listener) => {
      worker.once('error', (error) => listener(`the calculation broke off: ${error.message}`));
      worker.once('exit', () => listener('the calculation ended early'));
    },
    close: () => void worker.terminate(),
  };
}

function toParent(parent: MessagePort): Port<FromWorker, ToWorker> {
  return {
    post: (message) => parent.postMessage(message),
    onMessage: (listener) => void parent.on('message', listener),
    onGone: (listener) => void parent.once('close', () => listener('the server is gone')),
    close: () => parent.close(),
  };
}
