import {
  type ChangesAnswer,
  type ChangesQuestion,
  type CommittedQuestion,
  changesRequest,
  committedRequest,
  languageId,
} from '@tautline/language/protocol';
import { commands, type ExtensionContext, ViewColumn, type WebviewPanel, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { committed } from './git.ts';
import { askLong } from './long-question.ts';

/** No scripts and nothing fetched; the page brings its own style. */
const policy = `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`;

/** Shows what the text as it is, saved or not, changes in its shelters since the last commit. */
export function registerChanges(context: ExtensionContext, client: BaseLanguageClient): void {
  let panel: WebviewPanel | undefined;
  const show = async (): Promise<void> => {
    const document = window.activeTextEditor?.document;
    if (document?.languageId !== languageId) {
      void window.showInformationMessage('Open a .shelter file first: its changes are shown.');
      return;
    }
    const answer = await askLong<ChangesQuestion, ChangesAnswer>(
      client,
      'Comparing with the last commit',
      changesRequest,
      { uri: document.uri.toString() },
    );
    if (answer === undefined) {
      return;
    }
    if ('why' in answer) {
      void window.showWarningMessage(answer.why);
      return;
    }
    if (panel === undefined) {
      const where = { viewColumn: ViewColumn.Beside, preserveFocus: true };
      panel = window.createWebviewPanel('tautline.changes', answer.title, where, { enableFindWidget: true });
      panel.onDidDispose(() => {
        panel = undefined;
      });
    }
    panel.title = answer.title;
    panel.webview.html = answer.page.replace('<head>', `<head>${policy}`);
    panel.reveal(undefined, true);
  };
  context.subscriptions.push(
    client.onRequest(committedRequest, ({ uri }: CommittedQuestion) => committed(uri)),
    commands.registerCommand('tautline.showChanges', show),
  );
}
