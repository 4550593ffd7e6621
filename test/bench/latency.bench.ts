/**
 * What somebody at the keyboard waits for. A client talks over stdio to the server as it ships (build it
 * first: `npm run package`), opens the largest example with all examples as its workspace, and types.
 * Prints each figure beside its target. Wall-clock times: on a busy machine look at the ratio.
 */
import { performance } from 'node:perf_hooks';
import {
  houses,
  longer,
  median,
  type Place,
  p95,
  pause,
  place,
  row,
  start,
  type Typing,
  textOf,
  typed,
  uriOf,
} from './editor-client.ts';

const rounds = 60;
const warmUp = 15;
const [name = ''] = houses;
/** With a price of its own, so that one can be typed over in the same file; what it is good for stays as it was. */
const text = `${textOf(name)}
prices {
  price of wire-4 46.00 per 100 m
}
`;
const uri = uriOf(name);
const file: Typing = { uri, version: 1 };
const textDocument = { uri };
const open = { textDocument: { uri, languageId: 'shelter', version: 1, text } };
const written = text.split('\n');

const places = [
  place(text, 'span', true, /^\s*footprint /, longer),
  place(text, 'spacing', true, /^\s*(bows|rafters) .*?spaced /, longer),
  place(text, 'price', false, /^\s*price of \S+ /, longer),
  place(text, 'film', false, /^\s*installed \d+-\d+-/, (_old, round) =>
    String(1 + (round % 28)).padStart(2, '0'),
  ),
  place(text, 'comment', false, /^\/\/ /, (_old, round) => `Flaws${round}`),
];
const [span, spacing] = places;
if (!span || !spacing) throw new Error('There is nothing to type over.');

// The first drawing, in a server that has been up for two seconds and in one that was just started.
const first: number[] = [];
const fromStart: number[] = [];
for (const wait of [2000, 0, 2000, 0, 2000]) {
  const began = performance.now();
  const editor = await start();
  if (wait > 0) {
    // Answered when the workspace has been read; the worker warms up after that.
    await editor.client.sendRequest('tautline/preview', {
      uri: uriOf('site.shelter'),
    });
    await pause(wait);
  }
  const opened = performance.now();
  await editor.client.sendNotification('textDocument/didOpen', open);
  const answer = await editor.client.sendRequest<{
    readonly broken?: string;
    readonly shelters: readonly { readonly drawings: readonly unknown[] }[];
  }>('tautline/preview', { uri, view: 'section' });
  if ((answer.shelters[0]?.drawings.length ?? 0) === 0)
    throw new Error(`There is no drawing to be timed: ${answer.broken}`);
  if (wait > 0) first.push(performance.now() - opened);
  else fromStart.push(performance.now() - began);
  await editor.stop();
}

const editor = await start();
const ready = editor.hear(performance.now(), uri, 1, 'findings');
await editor.client.sendNotification('textDocument/didOpen', open);
await ready;

/** Times of a kind of keystroke, ms. */
const times = new Map(places.map((at) => [at, { problems: [] as number[], findings: [] as number[] }]));
// The kinds take turns, so that all of them meet the same machine.
for (let round = 0; round < rounds + warmUp; round += 1) {
  for (const [at, { problems, findings }] of times) {
    const begin = performance.now();
    const told = editor.hear(begin, uri, file.version + 1, 'problems', 'findings');
    await editor.client.sendNotification('textDocument/didChange', typed(file, at, round));
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
  await editor.client.sendNotification('textDocument/didChange', typed(file, span, round + 7));
  await editor.client.sendRequest(`textDocument/${kind}`, {
    textDocument,
    position: { line: span.line, character: kind === 'hover' ? 4 : span.from },
  });
  if (round >= 10) asked[kind]?.push(performance.now() - begin);
  await pause(60);
}
await editor.stop();

console.log(`${name}, ${written.length} lines; ${rounds} keystrokes of each kind`);
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
