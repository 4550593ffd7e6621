import { catalogueScheme, languageId, settingsSection } from '@tautline/language/protocol';
import { workspace } from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';
import { promptLenses } from './lenses.ts';

/**
 * Which documents the server sees: files, unsaved files, files of a virtual workspace, and the built-in
 * catalogue. Not the copies that the source-control views make of a file.
 */
export function clientOptions(client: () => BaseLanguageClient | undefined): LanguageClientOptions {
  const schemes = new Set(['file', 'untitled', catalogueScheme]);
  for (const folder of workspace.workspaceFolders ?? []) {
    schemes.add(folder.uri.scheme);
  }
  return {
    documentSelector: [...schemes].map((scheme) => ({
      language: languageId,
      scheme,
    })),
    synchronize: {
      configurationSection: settingsSection,
      fileEvents: [
        workspace.createFileSystemWatcher('**/*.shelter'),
        workspace.createFileSystemWatcher('**/*.csv'),
      ],
    },
    // A server that dies is started again, but not for ever: five deaths in three minutes stop it.
    connectionOptions: { maxRestartCount: 4 },
    middleware: { provideCodeLenses: promptLenses(client) },
    // A hover may link to a calculation, and to nothing else.
    markdown: { isTrusted: { enabledCommands: ['tautline.showCalculation'] }, supportHtml: false },
  };
}
