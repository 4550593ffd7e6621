import {
  type ChangesAnswer,
  type ChangesQuestion,
  type CommittedQuestion,
  changesRequest,
  committedRequest,
  languageId,
} from '@tautline/language/protocol';
import {
  commands,
  type ExtensionContext,
  Uri,
  ViewColumn,
  type WebviewPanel,
  window,
  workspace,
} from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { committed } from './git.ts';
import { askLong } from './long-question.ts';

const viewType = 'tautline.changes';
/** No scripts and nothing fetched; the page brings its own style. */
const policy = `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`;

type Page = Extract<ChangesAnswer, { page: string }>;

/** What is on show, kept with the workspace: the page runs no scripts that could keep it. */
interface Shown extends Page {
  readonly uri: string;
}

/** Shows what the text as it is, saved or not, changes in its shelters since the last commit. */
export function registerChanges(context: ExtensionContext, client: BaseLanguageClient): void {
  const { workspaceState } = context;
  let panel: WebviewPanel | undefined;
  const keep = (opened: WebviewPanel): void => {
    panel = opened;
    opened.onDidDispose(() => {
      panel = panel === opened ? undefined : panel;
      void workspaceState.update(viewType, undefined);
    });
  };
  const put = (to: WebviewPanel, uri: string, { title, page }: Page): void => {
    to.title = title;
    to.webview.html = page.replace('<head>', `<head>${policy}`);
    void workspaceState.update(viewType, { uri, title, page } satisfies Shown);
  };
  const show = async (): Promise<void> => {
    const document = window.activeTextEditor?.document;
    if (document?.languageId !== languageId) {
      void window.showInformationMessage('Open a .shelter file first: its changes are shown.');
      return;
    }
    const uri = document.uri.toString();
    const title = 'Comparing with the last commit';
    const answer = await askLong<ChangesQuestion, ChangesAnswer>(client, title, changesRequest, { uri });
    if (answer === undefined) {
      return;
    }
    if ('why' in answer) {
      void window.showWarningMessage(answer.why);
      return;
    }
    if (panel === undefined) {
      const where = { viewColumn: ViewColumn.Beside, preserveFocus: true };
      keep(window.createWebviewPanel(viewType, answer.title, where, { enableFindWidget: true }));
    }
    if (panel !== undefined) {
      put(panel, uri, answer);
      panel.reveal(undefined, true);
    }
  };
  /** The page of before, marked, until there is a new one. */
  const restore = async (opened: WebviewPanel): Promise<void> => {
    const shown = workspaceState.get<Shown>(viewType);
    if (shown === undefined) {
      opened.dispose();
      return;
    }
    const { uri, title, page } = shown;
    keep(opened);
    opened.title = title;
    opened.webview.html = marked(page, 'Compared before this window was opened; it is being compared again.');
    await client.start();
    await workspace.openTextDocument(Uri.parse(uri));
    const answer = await client.sendRequest<ChangesAnswer>(changesRequest, { uri });
    if (panel !== opened) {
      return;
    }
    if ('why' in answer) {
      opened.webview.html = marked(page, `Compared before this window was opened. ${answer.why}`);
    } else {
      put(opened, uri, answer);
    }
  };
  context.subscriptions.push(
    client.onRequest(committedRequest, ({ uri }: CommittedQuestion) => committed(uri)),
    commands.registerCommand('tautline.showChanges', show),
    window.registerWebviewPanelSerializer(viewType, {
      deserializeWebviewPanel: (opened) =>
        restore(opened).catch(() => {
          // The file is gone, or the server is: the page of before stays, and says that it is one.
        }),
    }),
  );
}

function marked(page: string, why: string): string {
  const text = why.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
  return page
    .replace('<head>', `<head>${policy}`)
    .replace('<body>', () => `<body><p role="status"><strong>Earlier.</strong> ${text}</p>`);
}
