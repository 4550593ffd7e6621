/** What the extension's server answers beyond the language's own. */
import type { ServerServices } from '@tautline/language/server';
import type { Connection } from 'vscode-languageserver';
import { registerChanges } from './changes-request.ts';
import { registerDetails } from './detail-request.ts';
import { registerExplore } from './explore-request.ts';

export function registerOwnRequests(connection: Connection, services: ServerServices): void {
  registerDetails(connection, services);
  registerExplore(connection, services);
  registerChanges(connection, services);
}
