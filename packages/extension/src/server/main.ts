/**
 * The language server as a process of its own (desktop and remote hosts). One worker thread works out findings
 * while somebody types, so that a calculation never holds up completion; another does what takes seconds.
 */
import { join } from 'node:path';
import { idleCollection, threadPort } from '@tautline/language/node';
import { createWorkerAnalyst, createWorkerWork, startServer } from '@tautline/language/server';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node.js';
import { clientFiles } from './client-files.ts';
import { registerOwnRequests } from './own-requests.ts';
import { sheets } from './sheets.ts';

// Bundled as CommonJS: the folder of the file itself is known.
const thread = () => threadPort(join(__dirname, 'analysis.cjs'));
const connection = createConnection(ProposedFeatures.all);
const services = startServer(connection, {
  fileSystem: () => clientFiles(connection),
  analyst: createWorkerAnalyst(thread),
  longWork: createWorkerWork(thread),
  warm: true,
  sheets,
});
registerOwnRequests(connection, services);
services.analyses.onAnalysed(idleCollection());
