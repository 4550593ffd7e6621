/** The language server as a process of its own (desktop and remote hosts). */
import { startServer } from '@tautline/language';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node.js';

startServer(createConnection(ProposedFeatures.all));
