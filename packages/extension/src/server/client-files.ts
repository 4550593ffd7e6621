import type { FileSystemNode, FileSystemProvider, URI } from 'langium';
import type { Connection } from 'vscode-languageserver';
import {
  type FileEntry,
  fileKindRequest,
  fileTextRequest,
  folderEntriesRequest,
} from '../client/file-requests.ts';

/**
 * Files as the editor sees them: on disk, on a remote host or in a virtual folder. The server asks the
 * client, which gives out only what lies in the folders of the workspace. Nothing can be read at once.
 */
export function clientFiles(connection: Connection): FileSystemProvider {
  const ask = <T>(request: string, uri: URI): Promise<T> =>
    connection.sendRequest<T>(request, { uri: uri.toString() });
  const kindOf = (uri: URI) => ask<FileEntry['kind'] | null>(fileKindRequest, uri);
  const readFile = async (uri: URI): Promise<string> => {
    const text = await ask<string | null>(fileTextRequest, uri);
    if (text === null) {
      throw new Error(`${uri.toString()} cannot be read`);
    }
    return text;
  };
  const atOnce = (): never => {
    throw new Error('files of the editor cannot be read at once');
  };
  return {
    readFile,
    readBinary: async (uri) => new TextEncoder().encode(await readFile(uri)),
    exists: async (uri) => (await kindOf(uri)) !== null,
    stat: async (uri) => {
      const kind = await kindOf(uri);
      if (kind === null) {
        throw new Error(`there is no ${uri.toString()}`);
      }
      return nodeOf(uri, kind);
    },
    readDirectory: async (uri) => {
      const entries = await ask<readonly FileEntry[]>(folderEntriesRequest, uri);
      const folder = uri.path.endsWith('/') ? uri.path : `${uri.path}/`;
      return entries.map(({ name, kind }) => nodeOf(uri.with({ path: `${folder}${name}` }), kind));
    },
    readFileSync: atOnce,
    readBinarySync: atOnce,
    existsSync: () => false,
    statSync: atOnce,
    readDirectorySync: () => [],
  };
}

function nodeOf(uri: URI, kind: FileEntry['kind']): FileSystemNode {
  return { uri, isFile: kind === 'file', isDirectory: kind === 'folder' };
}
