import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { load, verdictsOf } from '../src/index.ts';
import { tell } from './tell.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'shelter-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function judged(beds: string, range: string) {
  writeFileSync(join(folder, 'beds.shelter'), beds);
  const file = join(folder, 'range.shelter');
  writeFileSync(file, `import "beds.shelter"\n${range}`);
  const { shelters, problems } = verdictsOf(await load([file]), '2026-11-25', { gusts: false });
  return { names: shelters.map(({ loaded }) => loaded.name), shelters, problems };
}

const bed = `site plot {
  gust 20 m/s
}
shelter bed on plot {
  footprint 2 m by 6 m
  bows spaced 1 m { of pvc40-15; shape elastic; length 2.3 m; foot stub of rebar-10 { deep 0.3 m } }
  cover roof with film-uv-150 { tension 150 N/m }
}
`;

it('judges each shelter of a range once, also when it stands in another file', async () => {
  const { names, shelters, problems } = await judged(
    bed,
    'range rows {\n  stand 3 of bed\n  stand 2 of bed\n  gap 1 m\n}\n',
  );
  expect(problems).toEqual([]);
  expect(names).toEqual(['bed']);
  expect(shelters[0]?.findings.length).toBeGreaterThan(5);
});

it('tells what is wrong with the range itself', async () => {
  const { problems } = await judged(bed, 'range rows {\n  stand 3 of bed\n  gap 900 m\n}\n');
  expect(problems.map(({ message }) => message)).toEqual([expect.stringMatching(/gap/i)]);
});

it('counts and draws a whole range by its name', async () => {
  writeFileSync(join(folder, 'beds.shelter'), `${bed}range rows {\n  stand 3 of bed\n  gap 1 m\n}\n`);
  const file = join(folder, 'beds.shelter');
  // Seven bows of 2.3 m in each bed.
  expect((await tell('materials', file, '--shelter', 'rows')).out).toContain('schedule 40: 48.3 m');
  const drawn = (view: string) =>
    tell('draw', file, '--shelter', 'rows', '--view', view, '--out', join(folder, 'r.svg'));
  expect(await drawn('plan')).toMatchObject({
    code: 0,
    out: expect.stringMatching(/^Drew the plan of rows/),
  });
  expect(await drawn('side')).toMatchObject({ code: 2, err: expect.stringMatching(/from above/) });
  expect(await tell('materials', file, '--shelter', 'other')).toMatchObject({
    code: 2,
    err: expect.stringMatching(/it has bed, rows/),
  });
});

it('has a sheet of its own beside those of its shelters', async () => {
  const file = join(folder, 'beds.shelter');
  writeFileSync(file, `${bed}range rows {\n  stand 3 of bed\n  gap 1 m\n}\n`);
  const out = join(folder, 'sheets');
  expect(await tell('sheets', file, '--out', out)).toMatchObject({ code: 0 });
  const page = readFileSync(join(out, 'index.html'), 'utf8');
  expect(page).toMatch(/<section id="bed"[\s\S]*<section id="rows"/);
  expect(page).toContain('<a href="#rows">');
  expect(readFileSync(join(out, 'rows-plan.svg'), 'utf8')).toContain('3  bed');
  expect(readFileSync(join(out, 'rows-materials.txt'), 'utf8')).toContain('schedule 40: 48.3 m');
});
