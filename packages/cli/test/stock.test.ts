import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { run } from '../src/index.ts';

let folder = '';
let out = '';
let err = '';
const output = {
  out: (text: string) => {
    out += text;
  },
  err: (text: string) => {
    err += text;
  },
};
const on = ['--on', '2026-11-25'];

const yard = `
project { currency USD }
site plot { gust 22 m/s; soil loam }
prices { price of pvc40-25 6.00 per 20 ft; price of rebar-12 8.00 per 20 ft }
yard {
  have 12 of pvc40-25 at 20 ft
  have 1 of rebar-12 at 20 ft
  have 5 of pipe-strap
  have 2 of emt-27 at 10 ft
}
`;
/** Five bows of a whole pipe each, ten stubs of 4 ft. */
const arch = (name: string, more = '') => `
shelter ${name} on plot {
  footprint 12 ft by 20 ft
  bows spaced 5 ft { of pvc40-25; shape elastic; length 20 ft; foot stub of rebar-12 { length 4 ft; deep 2 ft } }
  ${more}
}
`;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'stock-'));
  writeFileSync(join(folder, 'yard.shelter'), yard);
  writeFileSync(join(folder, 'one.shelter'), `import "yard.shelter"\n${arch('one')}`);
  writeFileSync(
    join(folder, 'two.shelter'),
    `import "yard.shelter"\n${arch('two')}\nvariant longer of two { footprint 12 ft by 40 ft }\n${arch('old', 'built 2024-03-01')}`,
  );
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));
beforeEach(() => {
  out = '';
  err = '';
});

const asJson = async (...words: string[]) => {
  expect(await run(['stock', folder, '--format', 'json', ...on, ...words], output)).toBe(0);
  return JSON.parse(out);
};

describe('stock', () => {
  it('cuts all shelters from one yard, which is counted once, and tells what is left', async () => {
    const all = await asJson();
    expect(all.counted).toEqual(['one', 'two']);
    // Ten bows from the twelve pipes on hand; twenty stubs of 4 ft, four to a bar: one on hand, four to buy.
    const line = (item: string) => all.materials.lines.find((entry: { item: string }) => entry.item === item);
    expect([line('pvc40-25').cost, line('rebar-12').cost]).toEqual([0, 4 * 8]);
    const left = (item: string) => all.left.find((entry: { item: string }) => entry.item === item);
    expect(left('pvc40-25').untouched).toEqual([{ length: 6.096, count: 2 }]);
    expect(left('emt-27').untouched).toEqual([{ length: 3.048, count: 2 }]);
    expect(left('pipe-strap').pieces).toBe(5);
    expect(left('rebar-12').untouched).toEqual([]);
  });

  it('leaves out what stands and other ways to build, and says so', async () => {
    expect(await run(['stock', folder, ...on, '--units', 'us'], output)).toBe(0);
    expect(out).toContain('Counted: one, two.');
    expect(out).toMatch(/Left out: old \(.*two\.shelter\), it stands since 2024-03-01/);
    expect(out).toMatch(/Left out: longer .* a variant/);
    expect(out).toContain('on hand 12 x 20 ft; taken 10 x 20 ft; left 2 x 20 ft');
    expect(out).toContain('needed by none of them');
  });

  it('counts what stands and what is named when asked', async () => {
    expect((await asJson('--built')).counted).toEqual(['one', 'two', 'old']);
    out = '';
    expect((await asJson('--shelter', 'one, longer')).counted).toEqual(['one', 'longer']);
    expect(await run(['stock', folder, '--shelter', 'three'], output)).toBe(2);
    expect(err).toContain("no shelter or range 'three'");
  });

  it('writes the same list as Markdown, page and CSV', async () => {
    for (const [form, mark] of [
      ['markdown', '| pvc40-25 | PVC pipe 1 in, schedule 40 |'],
      ['html', '<td>pvc40-25</td>'],
      ['csv', ',pvc40-25,'],
    ] as const) {
      const file = join(folder, `list.${form}`);
      expect(await run(['stock', folder, ...on, '--format', form, '--out', file], output)).toBe(0);
      expect(readFileSync(file, 'utf8'), form).toContain(mark);
    }
    expect(readFileSync(join(folder, 'list.html'), 'utf8')).not.toMatch(/<script|https?:/);
  });

  it('does not add two currencies, nor two items of one name', async () => {
    const other = join(folder, 'other');
    const files = [join(folder, 'one.shelter'), `${other}.shelter`];
    const site = 'site field { gust 22 m/s; soil loam }\n';
    writeFileSync(
      files[1]!,
      `${site}project { currency EUR }\n${arch('far').replace('on plot', 'on field')}`,
    );
    expect(await run(['stock', ...files], output)).toBe(2);
    expect(err).toContain('EUR and USD');
    const own = `pipe pvc40-25 { outside 1.3 in; wall 0.1 in; material pvc; sold 20 ft long }\n`;
    writeFileSync(files[1]!, `${site}${own}${arch('far').replace('on plot', 'on field')}`);
    err = '';
    expect(await run(['stock', ...files], output)).toBe(2);
    expect(err).toMatch(/each describe an item 'pvc40-25'/);
    rmSync(files[1]!);
  });
});
