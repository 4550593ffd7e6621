/** An editor for the benches: talks over stdio to the server as it ships (build it first: `npm run package`). */
import { spawn } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { fileURLToPath, pathToFileURL } from 'node:url';
import {
  createProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node.js';

export const examples = join(process.cwd(), 'examples');
/** The shipped server, or the bundle that the environment names. */
const server =
  process.env['TAUTLINE_SERVER'] ?? join(process.cwd(), 'packages', 'extension', 'dist', 'server.cjs');
if (!existsSync(server)) throw new Error('There is no built server: run `npm run package` first.');

export const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));
const sorted = (values: readonly number[]): number[] => [...values].sort((a, b) => a - b);
export const median = (values: readonly number[]): number => sorted(values)[values.length >> 1] ?? Number.NaN;
export const p95 = (values: readonly number[]): number =>
  sorted(values)[Math.ceil(values.length * 0.95) - 1] ?? Number.NaN;

/** Problems of a line that was not understood. */
const misread = ['unexpected', 'incomplete', 'missing-fact', 'syntax', 'unreadable', 'unclosed'];

/** A server process and the editor's side of the talk. */
export async function start() {
  const child = spawn(process.execPath, [server, '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
  const client = createProtocolConnection(
    new StreamMessageReader(child.stdout),
    new StreamMessageWriter(child.stdin),
    { error: console.error, warn: () => {}, info: () => {}, log: () => {} },
  );
  let heard: ((method: string) => void) | undefined;
  let newest = 0;
  let where = '';
  interface Problems {
    readonly uri: string;
    readonly diagnostics: readonly { readonly code?: unknown; readonly message: string }[];
  }
  interface Notice {
    readonly uri: string;
    readonly version: number;
  }
  client.onNotification('textDocument/publishDiagnostics', ({ uri, diagnostics }: Problems) => {
    if (uri !== where) return;
    // A text that cannot be read is answered sooner than one that can: what is timed must be whole.
    const wrong = diagnostics.find(({ code }) => misread.includes(String(code)));
    if (wrong && heard) throw new Error(`The text that is typed cannot be read: ${wrong.message}`);
    heard?.('problems');
  });
  client.onNotification('tautline/evaluated', ({ uri, version }: Notice) => {
    if (uri === where && version >= newest) heard?.('findings');
  });
  const at = (uri: string): string => fileURLToPath(uri);
  const kind = (path: string): string => (statSync(path).isFile() ? 'file' : 'folder');
  client.onRequest('tautline/file/text', ({ uri }: { uri: string }) =>
    existsSync(at(uri)) ? readFileSync(at(uri), 'utf8') : null,
  );
  client.onRequest('tautline/file/kind', ({ uri }: { uri: string }) =>
    existsSync(at(uri)) ? kind(at(uri)) : null,
  );
  client.onRequest('tautline/file/entries', ({ uri }: { uri: string }) =>
    readdirSync(at(uri)).map((name) => ({ name, kind: kind(join(at(uri), name)) })),
  );
  client.listen();
  const root = pathToFileURL(examples).toString();
  await client.sendRequest('initialize', {
    processId: process.pid,
    rootUri: root,
    workspaceFolders: [{ uri: root, name: 'examples' }],
    capabilities: {},
  });
  await client.sendNotification('initialized', {});
  return {
    client,
    /** Milliseconds until the server has told each of these, once, of this version of a text or a later one. */
    hear: (
      from: number,
      uri: string,
      ofVersion: number,
      ...kinds: readonly string[]
    ): Promise<readonly number[]> =>
      new Promise((resolve) => {
        where = uri;
        newest = ofVersion;
        const times = new Map<string, number>();
        heard = (method) => {
          if (!times.has(method)) times.set(method, performance.now() - from);
          if (kinds.every((one) => times.has(one))) {
            heard = undefined;
            resolve(kinds.map((one) => times.get(one) ?? Number.NaN));
          }
        };
      }),
    stop: async () => {
      await client.sendRequest('shutdown');
      await client.sendNotification('exit');
      client.dispose();
    },
  };
}

export const textOf = (name: string): string => readFileSync(join(examples, name), 'utf8');
export const uriOf = (name: string): string => pathToFileURL(join(examples, name)).toString();

/** Files that say a shelter, the longest first: price lists and sites have no findings. */
export const houses = readdirSync(examples)
  .filter((name) => name.endsWith('.shelter') && /^\s*footprint /m.test(textOf(name)))
  .sort((a, b) => textOf(b).split('\n').length - textOf(a).split('\n').length);

/** How many houses a file says from the ground up; its variants are not counted. */
export const housesIn = (name: string): number => textOf(name).match(/^\s*footprint /gm)?.length ?? 0;

/** A number of the text that is typed over again and again. */
export interface Place {
  readonly kind: string;
  /** Whether the frame has to be solved anew for it. */
  readonly frame: boolean;
  readonly line: number;
  readonly from: number;
  /** What is typed in a round. */
  readonly next: (round: number) => string;
  /** Length of what stands there now. */
  length: number;
}

/** Behind every match of `before` at the start of a line. */
export function placesAfter(
  text: string,
  kind: string,
  frame: boolean,
  before: RegExp,
  next: (old: string, round: number) => string,
): readonly Place[] {
  const places = text.split('\n').flatMap((written, line): Place[] => {
    const from = before.exec(written)?.[0].length;
    if (from === undefined) return [];
    const old = /^[\w.-]+?(?=\s|$)/.exec(written.slice(from))?.[0];
    return old ? [{ kind, frame, line, from, next: (round) => next(old, round), length: old.length }] : [];
  });
  if (places.length === 0) throw new Error(`There is no ${kind} to be typed over.`);
  return places;
}

/** The first of them. */
export function place(...where: Parameters<typeof placesAfter>): Place {
  const [first] = placesAfter(...where);
  if (!first) throw new Error('There is nothing to type over.');
  return first;
}

/** Another number each time, a little larger than what was written. */
export const longer = (old: string, round: number): string =>
  (Number(old) + (1 + (round % 40)) * 0.001).toFixed(3);

/** A file that is typed in. */
export interface Typing {
  readonly uri: string;
  version: number;
}

/** Types over a place, as the editor tells it: only what changed. */
export function typed(file: Typing, at: Place, round: number): object {
  const next = at.next(round);
  const { line, from } = at;
  const range = { start: { line, character: from }, end: { line, character: from + at.length } };
  at.length = next.length;
  file.version += 1;
  return { textDocument: { uri: file.uri, version: file.version }, contentChanges: [{ range, text: next }] };
}

export const row = (what: string, values: readonly number[], target: string): void =>
  console.log(
    `${what.padEnd(34)} median ${median(values).toFixed(1).padStart(7)} ms   p95 ${p95(values).toFixed(1).padStart(7)} ms   ${target}`,
  );
