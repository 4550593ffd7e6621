/** A language server and a client, talking over real streams in one process. */
import { PassThrough } from 'node:stream';
import {
  type Connection,
  createConnection,
  createProtocolConnection,
  type Diagnostic,
  type InitializeResult,
  type ProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
  type TextEdit,
} from 'vscode-languageserver/node.js';
import { createInProcessAnalyst } from '../src/analyst/analyst.ts';
import { createInPlaceWork } from '../src/analyst/long-work.ts';
import { languageJobs } from '../src/analyst/whole-house.ts';
import { startServer } from '../src/server-door.ts';
import type { ServerOptions, ServerServices } from '../src/services/lsp-module.ts';
import type { Sheets } from '../src/services/sheet-of.ts';

export interface Editor {
  readonly client: ProtocolConnection;
  readonly capabilities: InitializeResult['capabilities'];
  open(uri: string, text: string): Promise<void>;
  change(uri: string, text: string): Promise<void>;
  /** The diagnostics of a file as last told, once one of them (or their absence) satisfies. */
  diagnostics(uri: string, until: (list: readonly Diagnostic[]) => boolean): Promise<readonly Diagnostic[]>;
  ask<T>(method: string, params: object): Promise<T>;
  /** Changes a file and waits for the results of what it says then; notices of what it said before are passed over. */
  settled(uri: string, text: string): Promise<void>;
  /** Waits for the next notice of results. */
  evaluated(): Promise<{ readonly uri: string; readonly version: number; readonly summary: string }>;
  close(): Promise<void>;
}

const silent = { error: () => {}, warn: () => {}, info: () => {}, log: () => {} };

export async function startEditor(
  options: Partial<ServerOptions> & { sheets?: Sheets } = {},
  root = 'file:///gully',
  more: (connection: Connection, services: ServerServices) => void = () => undefined,
): Promise<Editor> {
  const up = new PassThrough();
  const down = new PassThrough();
  const server = createConnection(new StreamMessageReader(up), new StreamMessageWriter(down));
  const services = startServer(server, {
    analyst: createInProcessAnalyst(),
    longWork: createInPlaceWork(languageJobs),
    today: () => '2026-06-01',
    ...options,
  });
  more(server, services);
  const client = createProtocolConnection(new StreamMessageReader(down), new StreamMessageWriter(up), silent);
  const told = new Map<string, readonly Diagnostic[]>();
  const waiting = new Set<() => void>();
  const notices: ((notice: { uri: string; version: number; summary: string }) => void)[] = [];
  client.onNotification('textDocument/publishDiagnostics', ({ uri, diagnostics }) => {
    told.set(uri, diagnostics);
    for (const check of waiting) check();
  });
  client.onNotification('tautline/evaluated', (notice) => {
    for (const listener of notices.splice(0)) listener(notice);
  });
  client.listen();
  const { capabilities } = await client.sendRequest<InitializeResult>('initialize', {
    processId: null,
    rootUri: root,
    workspaceFolders: [{ uri: root, name: 'gully' }],
    capabilities: {},
  });
  await client.sendNotification('initialized', {});
  const versions = new Map<string, number>();
  const change = (uri: string, text: string): Promise<void> => {
    const version = (versions.get(uri) ?? 1) + 1;
    versions.set(uri, version);
    return client.sendNotification('textDocument/didChange', {
      textDocument: { uri, version },
      contentChanges: [{ text }],
    });
  };
  const evaluated: Editor['evaluated'] = () => new Promise((resolve) => notices.push(resolve));
  return {
    client,
    capabilities,
    open: (uri, text) => {
      versions.set(uri, 1);
      return client.sendNotification('textDocument/didOpen', {
        textDocument: { uri, languageId: 'shelter', version: 1, text },
      });
    },
    change,
    settled: async (uri, text) => {
      let notice = evaluated();
      await change(uri, text);
      const version = versions.get(uri) ?? 1;
      for (let told = await notice; told.uri !== uri || told.version < version; told = await notice)
        notice = evaluated();
    },
    diagnostics: (uri, until) =>
      new Promise((resolve) => {
        const check = (): void => {
          const list = told.get(uri);
          if (!list || !until(list)) return;
          waiting.delete(check);
          resolve(list);
        };
        waiting.add(check);
        check();
      }),
    ask: (method, params) => client.sendRequest(method, params),
    evaluated,
    close: async () => {
      await client.sendRequest('shutdown');
      services.analyses.dispose();
      client.dispose();
      server.dispose();
      up.destroy();
      down.destroy();
    },
  };
}

/** Text with `|` where the cursor is. */
export function withCursor(marked: string): { text: string; position: { line: number; character: number } } {
  const at = marked.indexOf('|');
  const before = marked.slice(0, at).split('\n');
  return {
    text: marked.slice(0, at) + marked.slice(at + 1),
    position: { line: before.length - 1, character: before.at(-1)?.length ?? 0 },
  };
}

export function applied(text: string, edits: readonly TextEdit[]): string {
  const lines = text.split('\n');
  const offset = ({ line, character }: { line: number; character: number }): number =>
    lines.slice(0, line).reduce((sum, one) => sum + one.length + 1, 0) + character;
  return [...edits]
    .sort((a, b) => offset(b.range.start) - offset(a.range.start))
    .reduce(
      (result, { range, newText }) =>
        result.slice(0, offset(range.start)) + newText + result.slice(offset(range.end)),
      text,
    );
}
