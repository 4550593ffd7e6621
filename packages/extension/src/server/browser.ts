/** The language server as a web worker (editor in a browser). */
import { startServer } from '@tautline/language';
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  createConnection,
} from 'vscode-languageserver/browser.js';

const scope = globalThis as unknown as Worker;
startServer(createConnection(new BrowserMessageReader(scope), new BrowserMessageWriter(scope)));
