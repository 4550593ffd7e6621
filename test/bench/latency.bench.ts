/**
 * What somebody at the keyboard waits for. A client talks over stdio to the server as it ships (build it
 * first: `npm run package`), opens the largest example with all examples as its workspace, and types.
 * Prints each figure beside its target. Wall-clock times: on a busy machine look at the ratio.
 */
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

const rounds = 60;
const warmUp = 15;
const examples = join(process.cwd(), 'examples');
/** The shipped server, or the bundle that the environment names. */
const server =
  process.env['TAUTLINE_SERVER'] ?? join(process.cwd(), 'packages', 'extension', 'dist', 'server.cjs');
if (!existsSync(server)) throw new Error('There is no built server: run `npm run package` first.');

const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));
const sorted = (values: readonly number[]): number[] => [...values].sort((a, b) => a - b);
const median = (values: readonly number[]): number => sorted(values)[values.length >> 1] ?? Number.NaN;
const p95 = (values: readonly number[]): number =>
  sorted(values)[Math.ceil(values.length * 0.95) - 1] ?? Number.NaN;

/** Problems of a line that was not understood. */
const misread = ['unexpected', 'incomplete', 'missing-fact', 'syntax', 'unreadable', 'unclosed'];

/** A server process and the editor's side of the talk. */
async function start() {
  const child = spawn(process.execPath, [server, '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
  const client = createProtocolConnection(
    new StreamMessageReader(child.stdout),
    new StreamMessageWriter(child.stdin),
    { error: console.error, warn: () => {}, info: () => {}, log: () => {} },
  );
  let heard: ((method: string) => void) | undefined;
  let newest = 0;
  interface Problems {
    readonly diagnostics: readonly { readonly code?: unknown; readonly message: string }[];
  }
  client.onNotification('textDocument/publishDiagnostics', ({ diagnostics }: Problems) => {
    // A text that cannot be read is answered sooner than one that can: what is timed must be whole.
    const wrong = diagnostics.find(({ code }) => misread.includes(String(code)));
    if (wrong && heard) throw new Error(`The text that is typed cannot be read: ${wrong.message}`);
    heard?.('problems');
  });
  client.onNotification('tautline/evaluated', ({ version }: { readonly version: number }) => {
    if (version >= newest) heard?.('findings');
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
    /** Milliseconds until the server has told each of these, once, of this version of the text or a later one. */
    hear: (from: number, ofVersion: number, ...kinds: readonly string[]): Promise<readonly number[]> =>
      new Promise((resolve) => {
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

const files = readdirSync(examples).filter((name) => name.endsWith('.shelter'));
const textOf = (name: string): string => readFileSync(join(examples, name), 'utf8');
const lines = (name: string): number => textOf(name).split('\n').length;
/** The largest that says a shelter: price lists and sites have no findings. */
const [name = ''] = files
  .filter((one) => /^\s*footprint /m.test(textOf(one)))
  .sort((a, b) => lines(b) - lines(a));
/** With a price of its own, so that one can be typed over in the same file; what it is good for stays as it was. */
const text = `${textOf(name)}
prices {
  price of wire-4 46.00 per 100 m
}
`;
const uri = pathToFileURL(join(examples, name)).toString();
const textDocument = { uri };
const open = { textDocument: { uri, languageId: 'shelter', version: 1, text } };
const written = text.split('\n');

/** A number of the text that is typed over again and again. */
interface Place {
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

function place(
  kind: string,
  frame: boolean,
  before: RegExp,
  next: (old: string, round: number) => string,
): Place {
  const line = written.findIndex((one) => before.test(one));
  const from = before.exec(written[line] ?? '')?.[0].length ?? 0;
  const old = /^[\w.-]+?(?=\s|$)/.exec((written[line] ?? '').slice(from))?.[0] ?? '';
  if (line < 0 || old === '') throw new Error(`${name} has no ${kind} to be typed over.`);
  return { kind, frame, line, from, next: (round) => next(old, round), length: old.length };
}
const longer = (old: string, round: number): string => (Number(old) + (1 + (round % 40)) * 0.001).toFixed(3);
const places = [
  place('span', true, /^\s*footprint /, longer),
  place('spacing', true, /^\s*(bows|rafters) .*?spaced /, longer),
  place('price', false, /^\s*price of \S+ /, longer),
  place('film', false, /^\s*installed \d+-\d+-/, (_old, round) => String(1 + (round % 28)).padStart(2, '0')),
  place('comment', false, /^\/\/ /, (_old, round) => `Flaws${round}`),
];
const [span, spacing] = places;
if (!span || !spacing) throw new Error('There is nothing to type over.');
let version = 1;

/** Types over a place, as the editor tells it: only what changed. */
function typed(at: Place, round: number): object {
  const next = at.next(round);
  const { line, from } = at;
  const range = { start: { line, character: from }, end: { line, character: from + at.length } };
  at.length = next.length;
  version += 1;
  return { textDocument: { uri, version }, contentChanges: [{ range, text: next }] };
}

// The first drawing, in a server that has been up for two seconds and in one that was just started.
const first: number[] = [];
const fromStart: number[] = [];
for (const wait of [2000, 0, 2000, 0, 2000]) {
  const began = performance.now();
  const editor = await start();
  if (wait > 0) {
    // Answered when the workspace has been read; the worker warms up after that.
    await editor.client.sendRequest('tautline/preview', {
      uri: pathToFileURL(join(examples, 'site.shelter')).toString(),
    });
    await pause(wait);
  }
  const opened = performance.now();
  await editor.client.sendNotification('textDocument/didOpen', open);
  const answer = await editor.client.sendRequest<{
    readonly broken?: string;
    readonly shelters: readonly { readonly drawings: readonly unknown[] }[];
  }>('tautline/preview', { uri });
  if ((answer.shelters[0]?.drawings.length ?? 0) === 0)
    throw new Error(`There is no drawing to be timed: ${answer.broken}`);
  if (wait > 0) first.push(performance.now() - opened);
  else fromStart.push(performance.now() - began);
  await editor.stop();
}

const editor = await start();
const ready = editor.hear(performance.now(), 1, 'findings');
await editor.client.sendNotification('textDocument/didOpen', open);
await ready;

/** Times of a kind of keystroke, ms. */
const times = new Map(places.map((at) => [at, { problems: [] as number[], findings: [] as number[] }]));
// The kinds take turns, so that all of them meet the same machine.
for (let round = 0; round < rounds + warmUp; round += 1) {
  for (const [at, { problems, findings }] of times) {
    const begin = performance.now();
    const told = editor.hear(begin, version + 1, 'problems', 'findings');
    await editor.client.sendNotification('textDocument/didChange', typed(at, round));
    const [problem = Number.NaN, finding = Number.NaN] = await told;
    if (round >= warmUp) {
      problems.push(problem);
      findings.push(finding);
    }
    await pause(40);
  }
}

const asked: Record<string, number[]> = { completion: [], hover: [] };
for (let round = 0; round < 2 * rounds; round += 1) {
  const kind = round % 2 === 0 ? 'completion' : 'hover';
  const begin = performance.now();
  // As the editor does: the question comes right behind the keystroke, and waits for the text to be read.
  await editor.client.sendNotification('textDocument/didChange', typed(span, round + 7));
  await editor.client.sendRequest(`textDocument/${kind}`, {
    textDocument,
    position: { line: span.line, character: kind === 'hover' ? 4 : span.from },
  });
  if (round >= 10) asked[kind]?.push(performance.now() - begin);
  await pause(60);
}
await editor.stop();

const row = (what: string, values: readonly number[], target: string): void =>
  console.log(
    `${what.padEnd(34)} median ${median(values).toFixed(1).padStart(7)} ms   p95 ${p95(values).toFixed(1).padStart(7)} ms   ${target}`,
  );
console.log(
  `${name}, ${written.length} lines, among ${files.length} files; ${rounds} keystrokes of each kind`,
);
const ratio = (problems: readonly number[], findings: readonly number[]): string =>
  `findings over text problems: ${(median(findings) / median(problems)).toFixed(2)} at the median, ${(p95(findings) / p95(problems)).toFixed(2)} at p95`;
const over = (what: string, of: readonly Place[], target: string): void => {
  const problems = of.flatMap((at) => times.get(at)?.problems ?? []);
  const findings = of.flatMap((at) => times.get(at)?.findings ?? []);
  row(`${what}: text problems`, problems, '(parse, link, validate alone)');
  row(`${what}: findings`, findings, 'target p95 50 ms');
  console.log(`${''.padEnd(34)} ${ratio(problems, findings)}${target}`);
};
for (const at of places) over(at.kind, [at], '');
over(
  'solves the frame',
  places.filter(({ frame }) => frame),
  ' (target at most 1.5)',
);
over(
  'leaves the frame',
  places.filter(({ frame }) => !frame),
  ' (target at most 1.5)',
);
over('all', places, '');
row('keystroke to completion', asked['completion'] ?? [], 'target p95 50 ms');
row('keystroke to hover', asked['hover'] ?? [], 'target p95 50 ms');
row('first drawing of a file', first, 'target 300 ms');
row('first drawing from a cold start', fromStart, '(process, workspace and drawing)');
