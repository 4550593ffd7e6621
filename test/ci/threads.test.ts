/** Work in threads gives what work in one thread gives, and can be stopped. */
import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildBundle, bundled, tautlinePath } from './bundle.ts';
import { shelterText, siteText } from './generated.ts';

const folder = mkdtempSync(join(tmpdir(), 'tautline-threads-'));

beforeAll(() => {
  buildBundle();
  writeFileSync(join(folder, 'site.shelter'), siteText);
  for (let index = 0; index < 30; index += 1)
    writeFileSync(join(folder, `house-${index}.shelter`), shelterText(index));
  writeFileSync(
    join(folder, 'varied.shelter'),
    shelterText(1)
      .replace('house-1', 'varied')
      .replace(
        '  cover',
        '  vary bows spaced from 20 in to 60 in by 1 in\n  vary foot deep from 2 ft to 3 ft by 1 in\n  cover',
      ),
  );
}, 60_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('check', () => {
  it('says the same in two threads as in one', async () => {
    const one = await bundled(
      ['check', '.', '--format', 'json', '--on', '2026-11-25', '--threads', '1'],
      folder,
    );
    const two = await bundled(
      ['check', '.', '--format', 'json', '--on', '2026-11-25', '--threads', '2'],
      folder,
    );
    expect(two.out).toBe(one.out);
    expect(JSON.parse(two.out).shelters).toHaveLength(31);
    expect([one.code, two.code]).toEqual([1, 1]);
  }, 120_000);
});

describe('review', () => {
  it('says the same in two threads as in one', async () => {
    const [before, after] = [join(folder, 'before'), join(folder, 'after')];
    for (const side of [before, after]) {
      mkdirSync(side);
      writeFileSync(join(side, 'site.shelter'), siteText);
      for (let index = 0; index < 4; index += 1)
        writeFileSync(
          join(side, `house-${index}.shelter`),
          shelterText(index).replace('tension 150', side === before ? 'tension 150' : 'tension 180'),
        );
    }
    const words = ['review', before, after, '--format', 'json', '--on', '2026-11-25', '--threads'];
    const [one, two] = [await bundled([...words, '1'], folder), await bundled([...words, '2'], folder)];
    expect(two).toEqual(one);
    expect(JSON.parse(two.out).headline).toBe('Of 4 shelters: 4 changed.');
  }, 120_000);
});

/** Runs the bundled command and interrupts it after a while, in seconds; no code where it had not begun to listen. */
function interrupted(words: readonly string[], after: number): Promise<{ code: number | null; out: string }> {
  const child = spawn(process.execPath, [tautlinePath, ...words], { cwd: folder });
  let out = '';
  child.stdout.on('data', (text) => {
    out += text;
  });
  const timer = setTimeout(() => child.kill('SIGINT'), 1000 * after);
  return new Promise((resolve) =>
    child.on('close', (code) => {
      clearTimeout(timer);
      resolve({ code, out });
    }),
  );
}

describe('explore', () => {
  it('stops at an interrupt, and shows what is done', async () => {
    let ended = await interrupted(['explore', 'varied.shelter', '--format', 'json'], 3);
    // A slow machine may take longer until the command listens.
    for (const after of [8, 20])
      if (ended.code === null)
        ended = await interrupted(['explore', 'varied.shelter', '--format', 'json'], after);
    const explored = JSON.parse(ended.out);
    expect(explored.stopped).toBe(true);
    expect(explored.variants.length).toBeLessThan(41 * 13);
    expect(ended.code).toBe(2);
  }, 120_000);
});
