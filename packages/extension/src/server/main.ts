/**
 * The language server as a process of its own (desktop and remote hosts). A worker thread does the
 * calculations, so that a long one never holds up completion.
 */
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import {
  createWorkerAnalyst,
  type FromWorker,
  type Port,
  startServer,
  type ToWorker,
} from '@tautline/language/server';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node.js';
import { clientFiles } from './client-files.ts';
import { registerDetails } from './detail-request.ts';
import { sheets } from './sheets.ts';

const connection = createConnection(ProposedFeatures.all);
const services = startServer(connection, {
  fileSystem: () => clientFiles(connection),
  // Bundled as CommonJS: the folder of the file itself is known.
  analyst: createWorkerAnalyst(() => toThread(new Worker(join(__dirname, 'analysis.cjs')))),
  sheets,
});
registerDetails(connection, services);

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
