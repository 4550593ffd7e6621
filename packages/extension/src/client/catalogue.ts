import {
  type CatalogueAnswer,
  catalogueRequest,
  catalogueScheme,
  explainedCheck,
  explanationScheme,
} from '@tautline/language/protocol';
import { type ExtensionContext, type TextDocumentContentProvider, Uri, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';

/** Opens files of the built-in catalogue read-only, with the text the server itself reads. */
export function registerCatalogue(context: ExtensionContext, client: BaseLanguageClient): void {
  const provider: TextDocumentContentProvider = {
    async provideTextDocumentContent(uri, token) {
      // A catalogue tab that the window restores asks before the server is up.
      await client.start();
      const answer = await client.sendRequest<CatalogueAnswer | null>(
        catalogueRequest,
        { uri: uri.toString() },
        token,
      );
      return answer?.text ?? `// The catalogue has no file ${uri.path}.\n`;
    },
  };
  context.subscriptions.push(workspace.registerTextDocumentContentProvider(catalogueScheme, provider));
}

/** Opens the explanations of checks, which problems link to, as read-only pages; made when the extension is built. */
export function registerExplanations(context: ExtensionContext): void {
  const file = Uri.joinPath(context.extensionUri, 'dist', 'explanations.json');
  const provider: TextDocumentContentProvider = {
    async provideTextDocumentContent(uri) {
      const pages: Readonly<Record<string, string>> = JSON.parse(
        new TextDecoder().decode(await workspace.fs.readFile(file)),
      );
      return pages[explainedCheck(uri.toString()) ?? ''] ?? `There is no check ${uri.path}.\n`;
    },
  };
  context.subscriptions.push(workspace.registerTextDocumentContentProvider(explanationScheme, provider));
}
