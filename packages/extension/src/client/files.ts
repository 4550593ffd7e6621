import { type ExtensionContext, FileType, Uri, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import {
  type FileEntry,
  type FileQuestion,
  fileKindRequest,
  fileTextRequest,
  folderEntriesRequest,
} from './file-requests.ts';

/** A spec is a text of some pages; what is larger is not one. */
const largest = 4_000_000;

/** Gives the server the files of the workspace, wherever it lies, and nothing outside of it. */
export function registerFiles(context: ExtensionContext, client: BaseLanguageClient): void {
  context.subscriptions.push(
    client.onRequest(fileTextRequest, ({ uri }: FileQuestion) => within(uri, text, null)),
    client.onRequest(fileKindRequest, ({ uri }: FileQuestion) => within(uri, kind, null)),
    client.onRequest(folderEntriesRequest, ({ uri }: FileQuestion) => within(uri, entries, [])),
  );
}

async function within<T>(text: string, read: (uri: Uri) => Promise<T>, otherwise: T): Promise<T> {
  const uri = Uri.parse(text);
  if (workspace.getWorkspaceFolder(uri) === undefined) {
    return otherwise;
  }
  try {
    return await read(uri);
  } catch {
    // Gone or not readable: the server reports it where the file is named.
    return otherwise;
  }
}

async function text(uri: Uri): Promise<string | null> {
  const { size } = await workspace.fs.stat(uri);
  return size > largest ? null : new TextDecoder().decode(await workspace.fs.readFile(uri));
}

async function kind(uri: Uri): Promise<FileEntry['kind']> {
  return kindOf((await workspace.fs.stat(uri)).type);
}

async function entries(uri: Uri): Promise<FileEntry[]> {
  const found = await workspace.fs.readDirectory(uri);
  return found.map(([name, type]) => ({ name, kind: kindOf(type) }));
}

/** A link is not followed: it could lead out of the workspace. */
function kindOf(type: FileType): FileEntry['kind'] {
  return type === FileType.File ? 'file' : type === FileType.Directory ? 'folder' : 'other';
}
