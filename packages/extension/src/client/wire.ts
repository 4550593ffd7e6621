import { type EvaluatedNotice, evaluatedNotification } from '@tautline/language/protocol';
import type { ExtensionContext } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { registerCalculation } from './calculation.ts';
import { registerCatalogue, registerExplanations } from './catalogue.ts';
import { registerChanges } from './changes.ts';
import { registerAssumed, registerPlaces, registerServerCommands } from './commands.ts';
import { registerExplore } from './explore.ts';
import { ExploredKept } from './explored-kept.ts';
import { registerFiles } from './files.ts';
import { Pages } from './pages.ts';
import { PreviewSheets } from './preview-sheets.ts';
import { StatusItem } from './status-item.ts';
import { registerWholeHouse } from './whole-house.ts';
import { registerWizard } from './wizard.ts';

/** Everything that is the same on a desktop, a remote host and in a browser. */
export function wire(context: ExtensionContext, client: BaseLanguageClient): void {
  const explored = new ExploredKept(context.workspaceState);
  const sheets = new PreviewSheets(context, client, explored);
  const status = new StatusItem(client);
  context.subscriptions.push(sheets, status);
  registerFiles(context, client);
  registerCatalogue(context, client);
  registerExplanations(context);
  const pages = new Pages(context);
  registerCalculation(context, client, pages);
  registerExplore(context, client, pages, explored);
  registerChanges(context, client);
  registerAssumed(context, client);
  registerPlaces(context);
  registerServerCommands(context, client);
  registerWholeHouse(context, client);
  registerWizard(context);
  context.subscriptions.push(
    client.onNotification(evaluatedNotification, (notice: EvaluatedNotice) => {
      sheets.evaluated(notice);
      status.evaluated(notice);
    }),
  );
  // Not awaited: commands and the restored drawing sheets wait for the server themselves. The client
  // reports a failed start to the user, and the status item keeps showing it.
  client.start().catch(() => undefined);
}
