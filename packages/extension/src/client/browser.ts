/** Entry of the extension in a browser: the language server is a web worker. */
import { type ExtensionContext, Uri, workspace } from 'vscode';
import { LanguageClient } from 'vscode-languageclient/browser';
import { clientOptions } from './client-options.ts';
import { wire } from './wire.ts';

let client: LanguageClient | undefined;

export async function activate(context: ExtensionContext): Promise<void> {
  const [server, analysis] = await Promise.all([
    scriptOf(context, 'browser-server.js'),
    scriptOf(context, 'browser-analysis.js'),
  ]);
  // The server starts the analysis script itself, and learns from its own name where that is.
  const worker = new Worker(server, { name: analysis });
  client = new LanguageClient(
    'tautline',
    'Tautline',
    clientOptions(() => client),
    worker,
  );
  wire(context, client);
}

export async function deactivate(): Promise<void> {
  await client?.stop();
}

/** Read and handed over as a blob: a worker may not be started from an extension that lies on a remote host. */
async function scriptOf(context: ExtensionContext, name: string): Promise<string> {
  const script = await workspace.fs.readFile(Uri.joinPath(context.extensionUri, 'dist', name));
  return URL.createObjectURL(new Blob([new Uint8Array(script)], { type: 'text/javascript' }));
}
