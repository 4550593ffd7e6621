/**
 * The language server as a web worker (editor in a browser). One worker below it works out findings while
 * somebody types, so that a calculation never holds up completion; another does what takes seconds. Where the
 * page is not isolated from others, memory cannot be shared: long work that is stopped then ends with its worker.
 */
import {
  createWorkerAnalyst,
  createWorkerWork,
  type FromWorker,
  startServer,
  type ToWorker,
} from '@tautline/language/server';
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  createConnection,
} from 'vscode-languageserver/browser.js';
import { portOf } from './browser-port.ts';
import { clientFiles } from './client-files.ts';
import { registerOwnRequests } from './own-requests.ts';
import { sheets } from './sheets.ts';

const scope = globalThis as unknown as Worker & { readonly name: string };
// A script that was handed over as a blob knows no neighbours: the client names the other one in this
// worker's name. The editor may put words of its own before it.
const [analysis] = /blob:\S+$/.exec(scope.name) ?? [];
if (analysis === undefined) {
  throw new Error('The name of this worker does not say where the analysis script is.');
}
const connection = createConnection(new BrowserMessageReader(scope), new BrowserMessageWriter(scope));
const below = () => portOf<ToWorker, FromWorker>(new Worker(analysis));
const services = startServer(connection, {
  fileSystem: () => clientFiles(connection),
  analyst: createWorkerAnalyst(below),
  longWork: createWorkerWork(below),
  warm: true,
  sheets,
});
registerOwnRequests(connection, services);
