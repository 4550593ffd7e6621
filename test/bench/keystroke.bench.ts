/**
 * What the engineering adds to a keystroke. A client types into a spec of 200 lines over a real connection;
 * the server answers first with what is wrong in the text (parse, link, validate, no engineering), then with
 * the findings. Prints both medians and their ratio; target at most 3. Everything runs in one process here: for
 * the server as it ships see latency.bench.ts.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { startEditor } from '../../packages/language/test/editor.ts';

const rounds = 40;
const warmUp = 10;
const root = process.cwd();
const read = (name: string): string => readFileSync(join(root, 'examples', name), 'utf8');

/** The example with its site and stock items of its own in front, 200 lines in all. */
function longSpec(spacing: number): string {
  const house = read('bed-arch.shelter')
    .replace(/^import .*$/gm, '')
    .replace(/bows spaced [^{]*\{/, `bows spaced ${spacing} mm {`);
  let text = `${read('site.shelter')}\n${house}`;
  for (let item = 0; text.split('\n').length < 196; item++) {
    text = `/** Pipe of our own ${item}. Source: from memory. */\npipe own-${item} like pvc40-25 {\n  wall 3.4 mm\n}\n${text}`;
  }
  return text;
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
const p95 = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length * 0.95)] ?? Number.NaN;

const editor = await startEditor();
const uri = 'file:///gully/long.shelter';
await editor.open(uri, longSpec(760));
await editor.evaluated();

const language: number[] = [];
const findings: number[] = [];
for (let round = 0; round < rounds + warmUp; round++) {
  let firstAnswer = 0;
  const heard = editor.client.onNotification('textDocument/publishDiagnostics', () => {
    if (firstAnswer === 0) firstAnswer = performance.now();
  });
  const text = longSpec(700 + round);
  const start = performance.now();
  const evaluated = editor.evaluated();
  await editor.change(uri, text);
  await evaluated;
  const end = performance.now();
  heard.dispose();
  if (round >= warmUp) {
    language.push(firstAnswer - start);
    findings.push(end - start);
  }
}
await editor.close();

console.log(`spec of ${longSpec(700).split('\n').length} lines, ${rounds} keystrokes`);
console.log(`text problems  median ${median(language).toFixed(1)} ms  p95 ${p95(language).toFixed(1)} ms`);
console.log(`findings       median ${median(findings).toFixed(1)} ms  p95 ${p95(findings).toFixed(1)} ms`);
console.log(`ratio          ${(median(findings) / median(language)).toFixed(2)}  (target at most 3)`);
