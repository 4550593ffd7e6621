/** Entry of the extension in a browser: the language server is a web worker. */
import { type ExtensionContext, Uri } from 'vscode';
import { LanguageClient } from 'vscode-languageclient/browser';
import { clientOptions } from './client-options.ts';
import { wire } from './wire.ts';

let client: LanguageClient | undefined;

export function activate(context: ExtensionContext): void {
  const script = Uri.joinPath(context.extensionUri, 'dist', 'browser-server.js').toString(true);
  client = new LanguageClient('tautline', 'Tautline', clientOptions(), new Worker(script));
  wire(context, client);
}

export async function deactivate(): Promise<void> {
  await client?.stop();
}
