import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { tell } from './tell.ts';

const folder = mkdtempSync(join(tmpdir(), 'tautline-due-'));

const due = (...words: string[]) => tell('due', folder, ...words);

beforeAll(() => {
  writeFileSync(
    join(folder, 'row.shelter'),
    `site here { gust 20 m/s once per 50 yr; exposure sheltered; elevation 10 m; rain 80 mm/h; soil loam; basis asce7-asd }
shelter row on here {
  footprint 6 ft by 24 ft
  inspected 2026-10-01 "strap renewed at bay 3"
  bows spaced 4 ft of pvc40-25 { shape elastic; rise 3 ft; foot stub of rebar-16 { length 4 ft; deep 2 ft } }
  cover roof with film-uv-150 { tension 150 N/m; installed 2026-03-01 }
}
`,
  );
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

it('has nothing due soon after the inspection, and says how much comes later', async () => {
  const { code, out } = await due('--on', '2026-10-02', '--within', '1');
  expect(code).toBe(0);
  expect(out).toContain('Nothing is due.');
  expect(out).toContain('2 more fall due later');
});

it('lists what is due, with its place and the last entry of the log', async () => {
  const { code, out } = await due('--on', '2026-10-02');
  expect(code).toBe(0);
  expect(out).toMatch(/2027-01-01 {2}row: go through the inspection list\n.*strap renewed at bay 3/);
  expect(out).toMatch(/row\.shelter:4\n/);
});

it('counts a variant as what it is, another way to build a shelter, unless it stands itself', async () => {
  const more = (built: string): string =>
    `import "row.shelter"\nvariant close-row of row { ${built}bows spaced 3 ft of pvc40-25 { shape elastic; rise 3 ft; foot stub of rebar-16 { length 4 ft; deep 2 ft } } }\n`;
  const file = join(folder, 'more.shelter');
  writeFileSync(file, more(''));
  try {
    const { out } = await due('--on', '2026-10-02');
    expect(out).toContain(
      'Left out: close-row, a variant, another way to build a shelter: one that stands says `built`.',
    );
    expect(out).not.toContain('close-row:');
    writeFileSync(file, more('built 2026-04-01; '));
    const built = (await due('--on', '2026-10-02')).out;
    expect(built).toContain('close-row: go through the inspection list');
    expect(built).not.toContain('Left out');
    writeFileSync(file, more(''));
    expect(JSON.parse((await due('--on', '2026-10-02', '--format', 'json')).out)).toMatchObject({
      leftOut: ['close-row'],
    });
  } finally {
    rmSync(file);
  }
});

it('ends with exit code 1 when something is overdue, in JSON too', async () => {
  const { code, out } = await due('--on', '2031-01-01', '--format', 'json');
  expect(code).toBe(1);
  const states = JSON.parse(out).duties.map(({ kind, state }: { kind: string; state: string }) => [
    kind,
    state,
  ]);
  expect(states).toEqual([
    ['inspection', 'overdue'],
    ['renewal', 'overdue'],
  ]);
});

it('refuses what is no number of months', async () => {
  const { code, err } = await due('--within', 'soon');
  expect([code, err]).toEqual([2, expect.stringContaining('--within takes')]);
});
