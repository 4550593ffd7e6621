/**
 * What somebody at the keyboard waits for. A client talks over stdio to the server as it ships (build it first:
 * `npm run package`), with all examples as its workspace, and types: in the largest example, which says several
 * houses, and in the largest that says one. Prints each figure beside its target. Wall-clock times: on a busy
 * machine look at the ratio.
 */
import { performance } from 'node:perf_hooks';
import {
  houses,
  housesIn,
  longer,
  median,
  type Place,
  p95,
  pause,
  placesAfter,
  row,
  start,
  type Typing,
  textOf,
  typed,
  uriOf,
} from './editor-client.ts';

const rounds = 60;
const warmUp = 15;
const asks = 120;

/** A file as the bench opens it. */
interface Opened {
  readonly uri: string;
  readonly text: string;
  readonly open: object;
}

/** With a price of its own, so that one can be typed over in the same file; what it is good for stays as it was. */
function opened(name: string): Opened {
  const text = `${textOf(name)}
prices {
  price of wire-4 46.00 per 100 m
}
`;
  const uri = uriOf(name);
  return { uri, text, open: { textDocument: { uri, languageId: 'shelter', version: 1, text } } };
}

/** Kinds of places, each with a place in every house that has one. */
const kindsIn = (text: string): readonly (readonly Place[])[] => [
  placesAfter(text, 'span', true, /^\s*footprint /, longer),
  placesAfter(text, 'spacing', true, /^\s*(bows|rafters) .*?spaced /, longer),
  placesAfter(text, 'price', false, /^\s*price of \S+ /, longer),
  placesAfter(text, 'film', false, /^\s*(?:.*; )?installed \d+-\d+-/, (_old, round) =>
    String(1 + (round % 28)).padStart(2, '0'),
  ),
  placesAfter(text, 'comment', false, /^\/\/ /, (_old, round) => `Flaws${round}`).slice(0, 1),
];

interface Times {
  readonly problems: number[];
  readonly findings: number[];
}

/** Times of each kind of keystroke, ms. */
async function typing({ uri, text, open }: Opened): Promise<{
  readonly times: ReadonlyMap<readonly Place[], Times>;
  readonly asked: Readonly<Record<'completion' | 'hover', number[]>>;
}> {
  const kinds = kindsIn(text);
  const file: Typing = { uri, version: 1 };
  const times = new Map(kinds.map((kind) => [kind, { problems: [] as number[], findings: [] as number[] }]));
  const editor = await start();
  const ready = editor.hear(performance.now(), uri, 1, 'findings');
  await editor.client.sendNotification('textDocument/didOpen', open);
  await ready;
  // The kinds take turns, and in each its places, so that all of them meet the same machine.
  for (let round = 0; round < rounds + warmUp; round += 1) {
    for (const [kind, { problems, findings }] of times) {
      const at = kind[round % kind.length];
      if (!at) continue;
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
  const span = kinds[0]?.[0];
  if (!span) throw new Error('There is nothing to type over.');
  const asked = { completion: [] as number[], hover: [] as number[] };
  for (let round = 0; round < asks; round += 1) {
    const kind = round % 2 === 0 ? 'completion' : 'hover';
    const begin = performance.now();
    // As the editor does: the question comes right behind the keystroke, and waits for the text to be read.
    await editor.client.sendNotification('textDocument/didChange', typed(file, span, round + 7));
    await editor.client.sendRequest(`textDocument/${kind}`, {
      textDocument: { uri },
      position: { line: span.line, character: kind === 'hover' ? 4 : span.from },
    });
    if (round >= 10) asked[kind].push(performance.now() - begin);
    await pause(60);
  }
  await editor.stop();
  return { times, asked };
}

/** Times until the sheet has its first drawing, ms: in a server that has been up for a while, and in one just started. */
async function drawing({ uri, open }: Opened): Promise<{ readonly warm: number[]; readonly cold: number[] }> {
  const [warm, cold]: [number[], number[]] = [[], []];
  for (const wait of [2000, 0, 2000, 0, 2000]) {
    const began = performance.now();
    const editor = await start();
    if (wait > 0) {
      // Answered when the workspace has been read; the worker warms up after that.
      await editor.client.sendRequest('tautline/preview', { uri: uriOf('site.shelter') });
      await pause(wait);
    }
    const asked = performance.now();
    await editor.client.sendNotification('textDocument/didOpen', open);
    // As a sheet that is opened does: the section of the first house.
    const answer = await editor.client.sendRequest<{
      readonly broken?: string;
      readonly shelters: readonly { readonly drawings: readonly unknown[] }[];
    }>('tautline/preview', { uri, view: 'section', one: '' });
    if ((answer.shelters[0]?.drawings.length ?? 0) === 0)
      throw new Error(`There is no drawing to be timed: ${answer.broken}`);
    if (wait > 0) warm.push(performance.now() - asked);
    else cold.push(performance.now() - began);
    await editor.stop();
  }
  return { warm, cold };
}

const ratio = ({ problems, findings }: Times): string =>
  `findings over text problems: ${(median(findings) / median(problems)).toFixed(2)} at the median, ${(p95(findings) / p95(problems)).toFixed(2)} at p95`;

function over(what: string, all: readonly Times[], target: string): void {
  const problems = all.flatMap((one) => one.problems);
  const findings = all.flatMap((one) => one.findings);
  row(`${what}: text problems`, problems, '(parse, link, validate alone)');
  row(`${what}: findings`, findings, 'target p95 50 ms');
  console.log(`${''.padEnd(34)} ${ratio({ problems, findings })}${target}`);
}

const [largest = ''] = houses;
const [ofOne = ''] = houses.filter((name) => housesIn(name) === 1);
for (const name of new Set([largest, ofOne])) {
  const file = opened(name);
  const { warm, cold } = await drawing(file);
  const { times, asked } = await typing(file);
  const count = housesIn(name);
  console.log(
    `\n${name}, ${file.text.split('\n').length} lines, ${count} house${count === 1 ? '' : 's'}; ${rounds} keystrokes of each kind`,
  );
  for (const [[at], one] of times) over(at?.kind ?? '', [one], '');
  const those = (frame: boolean): Times[] =>
    [...times].flatMap(([[at], one]) => (at?.frame === frame ? [one] : []));
  over('solves the frame', those(true), ' (target at most 1.5)');
  over('leaves the frame', those(false), ' (target at most 1.5)');
  over('all', [...times.values()], ' (target at most 1.5)');
  row('keystroke to completion', asked.completion, 'target p95 50 ms');
  row('keystroke to hover', asked.hover, 'target p95 50 ms');
  row('first drawing of a file', warm, 'target 300 ms');
  row('first drawing from a cold start', cold, '(process, workspace and drawing)');
}
