import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
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
const spec = `
project { currency USD }
site plot { gust 20 m/s }
prices { price of pvc40-25 6.00 per 20 ft; price of pvc80-25 9.00 per 20 ft; price of socket-25 1.00 per piece }
yard { have 100 of pvc40-25 at 20 ft }
shelter beds on plot {
  footprint 13 ft by 20 ft
  bows spaced 2 ft { of pvc40-25; shape elastic; length 20 ft; joint socket-25 at 5 ft; foot stub of rebar-16 { deep 3 ft } }
  cover roof with film-uv-150 { tension 200 N/m }
}
`;
const file = () => join(folder, 'beds.shelter');
const theirs = (text: string): string => {
  const path = join(folder, 'theirs.shelter');
  writeFileSync(path, text);
  return path;
};
const list = async (text: string, ...words: string[]) => {
  const has = theirs(text);
  const code = await run(
    ['neighbour', file(), '--has', has, '--on', '2026-11-25', '--format', 'json', ...words],
    output,
  );
  const made = JSON.parse(out);
  const of = (id: string) => made.items.find((one: { item: string }) => one.item === id);
  return { code, made, of };
};

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'neighbour-'));
  writeFileSync(file(), spec);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));
beforeEach(() => {
  out = '';
  err = '';
});

describe('neighbour', () => {
  it('finds what stands in, with its fittings, from their yard and not from the own one', async () => {
    const { made, of } = await list('yard { have 40 of pvc80-25 at 20 ft; have 90 of socket-25 }');
    // 11 bows of two pieces, 5 ft and 15 ft: one whole pipe each, and they are not paid for.
    const [pipe] = of('pvc40-25').tried;
    expect(of('pvc40-25')).toMatchObject({ onHand: 'none', best: 'pvc80-25' });
    expect(pipe).toMatchObject({ item: 'pvc80-25', buy: '', fails: false });
    expect(pipe.fromHand).toMatch(/^\d+ x 20 ft$/);
    expect(of('socket-25').onHand).toBe('all');
    expect(made.together.swaps).toContainEqual({ from: 'pvc40-25', to: 'pvc80-25' });
    expect(made.together.materials.lines.some((line: { item: string }) => line.item === 'pvc40-25')).toBe(
      false,
    );
  });

  it('tells what fails with it, and does not count that as standing in', async () => {
    const { of, made, code } = await list('yard { have 40 of pvc40-40 at 20 ft }');
    const [pipe] = of('pvc40-25').tried;
    expect(pipe).toMatchObject({ item: 'pvc40-40', fails: true });
    // The couplings go along, and 1-1/2 in pipe does not bend so far.
    expect(pipe.along).toEqual([{ from: 'socket-25', to: 'socket-40' }]);
    expect(pipe.findings).toContainEqual(
      expect.objectContaining({ change: 'worse', id: 'locked-in-stress', severity: 'error' }),
    );
    expect(of('pvc40-25').best).toBeNull();
    expect([made.together, code]).toEqual([null, 0]);
  });

  it('buys the rest where they have too little', async () => {
    const { of } = await list('yard { have 3 of pvc80-25 at 20 ft }');
    expect(of('pvc40-25').tried[0].fromHand).toBe('3 x 20 ft');
    expect(of('pvc40-25').tried[0].buy).toMatch(/^\d+ x /);
  });

  it('knows items that only their file describes', async () => {
    const own = 'pipe old-line like pvc80-25 { outside 1.32 in }\nyard { have 40 of old-line at 20 ft }';
    expect((await list(own)).of('pvc40-25').tried[0]).toMatchObject({ item: 'old-line' });
  });

  it('sets the same list out as text, Markdown and a page', async () => {
    const has = theirs('yard { have 40 of pvc80-25 at 20 ft }');
    const made = async (form: string) => {
      out = '';
      await run(
        ['neighbour', file(), '--has', has, '--on', '2026-11-25', '--format', form, '--units', 'us'],
        output,
      );
      return out;
    };
    expect(await made('text')).toMatch(/pvc80-25 {2}PVC pipe 1 in, schedule 80: stands in/);
    expect(await made('markdown')).toMatch(/^\| pvc40-25 \| .* \| none \| pvc80-25 \| stands in \|/m);
    expect(await made('html')).toMatch(/<td>pvc80-25<\/td><td>stands in<\/td>/);
  });

  it('says what is missing', async () => {
    expect(await run(['neighbour', file()], output)).toBe(2);
    expect(err).toContain('--has YARD.shelter');
    expect(await run(['neighbour', file(), '--has', theirs('site bare { gust 20 m/s }')], output)).toBe(2);
    expect(err).toContain('says nothing on hand');
    err = '';
    const wrong = theirs('yard {\n  have 40 of pvc80-25 each 20 ft\n}');
    expect(await run(['neighbour', file(), '--has', wrong], output)).toBe(2);
    expect(err).toMatch(/line 2: `each` is not part of what `have` says/);
  });
});
