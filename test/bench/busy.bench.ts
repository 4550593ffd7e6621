/**
 * What somebody at the keyboard waits for while more is under way: the whole house of another file, and in a house
 * with a promise about storms the order of failure, which comes after the other findings. Prints ratios.
 */
import { performance } from 'node:perf_hooks';
import { CancellationTokenSource } from 'vscode-languageserver/node.js';
import {
  houses,
  housesIn,
  longer,
  median,
  type Place,
  pause,
  place,
  row,
  start,
  type Typing,
  textOf,
  typed,
  uriOf,
} from './editor-client.ts';

const blocks = 8;
const inBlock = 10;
const [name = '', beside = ''] = houses.filter((one) => !one.startsWith('storm') && housesIn(one) === 1);
const editor = await start();

async function opened(one: string): Promise<{ readonly file: Typing; readonly spacing: Place }> {
  const text = textOf(one);
  const file = { uri: uriOf(one), version: 1 };
  const told = editor.hear(performance.now(), file.uri, 1, 'findings');
  const textDocument = { uri: file.uri, languageId: 'shelter', version: 1, text };
  await editor.client.sendNotification('textDocument/didOpen', { textDocument });
  await told;
  return { file, spacing: place(text, 'spacing', true, /^\s*(bows|rafters) .*?spaced /, longer) };
}

/** Times from keystroke to findings, ms. */
async function block(at: { readonly file: Typing; readonly spacing: Place }, into: number[]): Promise<void> {
  for (let round = 0; round < inBlock; round += 1) {
    const begin = performance.now();
    const told = editor.hear(begin, at.file.uri, at.file.version + 1, 'problems', 'findings');
    await editor.client.sendNotification('textDocument/didChange', typed(at.file, at.spacing, into.length));
    const [, findings = Number.NaN] = await told;
    into.push(findings);
    await pause(40);
  }
}

const [house, other, storm] = [await opened(name), await opened(beside), await opened('storm-house.shelter')];
const alone: number[] = [];
const during: number[] = [];
const stormy: number[] = [];
// Once over to warm up; then in turns, so that all meet the same machine.
for (let turn = 0; turn <= blocks; turn += 1) {
  if (turn === 1) for (const times of [alone, during, stormy]) times.length = 0;
  await block(house, alone);
  const stop = new CancellationTokenSource();
  let over = false;
  const full = (async () => {
    while (!over)
      await editor.client
        .sendRequest('tautline/wholeHouse', { uri: other.file.uri }, stop.token)
        .catch(() => undefined);
  })();
  await pause(300);
  await block(house, during);
  over = true;
  stop.cancel();
  await full;
  await block(storm, stormy);
}
await editor.stop();

const ratio = (times: readonly number[]): string =>
  `${(median(times) / median(alone)).toFixed(2)} of that at the median`;
row(`${name}: findings`, alone, 'nothing else under way');
row('the same during a full tier', during, `${ratio(during)}: the whole house of ${beside}`);
row('storm-house: findings', stormy, `${ratio(stormy)}, its order of failure comes after them`);
