import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
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
const spec = `
project { currency JPY }
site plot { gust 26 m/s; soil loam }
prices {
  from "invented list"
  asked 2026-03-10
  price of pvc40-25 620 per 20 ft
  price of film-uv-150 20 per ft2
}
yard { have 3 of pvc40-25 at 20 ft }
/** One arch over a bed. */
shelter arch on plot {
  footprint 12 ft by 20 ft
  bows spaced 5 ft { of pvc40-25; shape elastic; length 20 ft; foot stub of rebar-12 { length 4 ft; deep 2 ft } }
  cover roof with film-uv-150 { fastened by board-1x3; tension 200 N/m; roll 24 ft }
}
`;
let file = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'book-'));
  file = join(folder, 'arch.shelter');
  writeFileSync(file, spec);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));
beforeEach(() => {
  out = '';
  err = '';
});
afterEach(() => vi.unstubAllEnvs());

describe('materials', () => {
  it('tells prices in the currency of the project, what is on hand, what costs most and what has no price', async () => {
    expect(await run(['materials', file, '--units', 'metric'], output)).toBe(0);
    // Five bows, three of them on hand: 2 x 620. The film: a whole roll of 24 by 100 ft, 48,000.
    expect(out).toContain('JPY 1240\n');
    expect(out).toContain('on hand 3 x 6.096 m');
    expect(out).toContain('JPY 48000');
    expect(out).toContain('1 roll of 7.32 m x 30.5 m');
    expect(out).toMatch(/Most of it is for: Clear film/);
    expect(out).toContain('Prices: invented list, asked 2026-03-10.');
    expect(out).toMatch(/No price for: .*Rebar/);
    expect(out).toMatch(/Renewing what wears out costs JPY 12000 a year/);
  });

  it('takes prices from a CSV file before those of the spec, and a life of the frame', async () => {
    const csv = join(folder, 'yard.csv');
    writeFileSync(csv, 'item,price,per\npvc40-25,1000,20 ft\n');
    expect(await run(['materials', file, '--prices', csv, '--frame-life', '10'], output)).toBe(0);
    expect(out).toContain('JPY 2000\n');
    expect(out).toContain('spread over the life of the frame: JPY 12200 a year');
  });

  it('says line and fault of a price list that cannot be read, and of a life that is none', async () => {
    const csv = join(folder, 'bad.csv');
    writeFileSync(csv, 'item,price,per\npvc40-25,dear,20 ft\n');
    expect(await run(['materials', file, '--prices', csv], output)).toBe(2);
    expect(err).toContain(`${csv}:2  The price of pvc40-25 must be a plain number`);
    expect(await run(['materials', file, '--prices', join(folder, 'none.csv')], output)).toBe(2);
    expect(await run(['materials', file, '--frame-life', 'long'], output)).toBe(2);
    expect(err).toContain('--frame-life takes a number of years');
  });
});

describe('book', () => {
  it('writes the book and everything that goes with it, the same each time', async () => {
    const [one, two] = [join(folder, 'one'), join(folder, 'two')];
    for (const where of [one, two])
      expect(await run(['book', file, '--out', where, '--on', '2026-11-25'], output)).toBe(0);
    const names = readdirSync(one).sort();
    expect(names).toEqual(
      [
        ...['book.html', 'calendar.ics', 'house.glb', 'materials.csv', 'materials.json', 'materials.xlsx'],
        ...['plan.svg', 'section.dxf', 'section.svg', 'setting-out.dxf', 'setting-out.svg', 'side.svg'],
      ].sort(),
    );
    for (const name of names)
      expect(readFileSync(join(one, name)).equals(readFileSync(join(two, name))), name).toBe(true);
    expect(readFileSync(join(one, 'book.html'), 'utf8')).toContain('JPY 49240');
  });

  it('says so where there is no browser to print with', async () => {
    vi.stubEnv('PATH', '');
    vi.stubEnv('TAUTLINE_BROWSER', '');
    const where = join(folder, 'paper');
    expect(await run(['book', file, '--out', where, '--on', '2026-11-25', '--pdf'], output)).toBe(0);
    expect(out).toContain('No PDF: there is no Chromium on this machine');
    expect(readdirSync(where)).not.toContain('book.pdf');
  });

  it('cannot run without a folder, or on a day that is none', async () => {
    expect(await run(['book', file], output)).toBe(2);
    expect(err).toContain('--out DIR');
    expect(await run(['book', file, '--out', folder, '--on', 'soon'], output)).toBe(2);
  });
});
