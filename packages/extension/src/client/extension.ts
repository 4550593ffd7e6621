/** Entry of the extension on a desktop or a remote host: the language server is a process of its own. */
import { type ExtensionContext, Uri } from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { clientOptions } from './client-options.ts';
import { registerTasks } from './tasks.ts';
import { wire } from './wire.ts';

let client: LanguageClient | undefined;

export function activate(context: ExtensionContext): void {
  const module = Uri.joinPath(context.extensionUri, 'dist', 'server.cjs').fsPath;
  client = new LanguageClient(
    'tautline',
    'Tautline',
    {
      run: { module, transport: TransportKind.ipc },
      debug: {
        module,
        transport: TransportKind.ipc,
        options: { execArgv: ['--nolazy', '--inspect=6019'] },
      },
    },
    clientOptions(() => client),
  );
  registerTasks(context);
  wire(context, client);
}

export async function deactivate(): Promise<void> {
  await client?.stop();
}
