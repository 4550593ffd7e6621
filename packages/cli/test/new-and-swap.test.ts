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
const day = '2026-11-25';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'shelter-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));
beforeEach(() => {
  out = '';
  err = '';
});

describe('new', () => {
  it('lists the kinds', async () => {
    expect(await run(['new'], output)).toBe(0);
    expect(out.trim().split('\n')).toHaveLength(24);
    expect(out).toMatch(/^storm-house +Storm-graded house/m);
  });

  it('writes a file that checks, and never over one that is there', async () => {
    const file = join(folder, 'plugs.shelter');
    expect(await run(['new', 'tank-roof', '--name', 'plugs', '--out', file], output)).toBe(0);
    const text = readFileSync(file, 'utf8');
    expect(text).toMatch(/^shelter plugs on /m);
    expect(await run(['check', file, '--on', day], output)).toBe(0);
    expect(await run(['new', 'bed-arch', '--out', file], output)).toBe(2);
    expect(err).toMatch(/there already/);
    expect(readFileSync(file, 'utf8')).toBe(text);
  });

  it('stands on a site of a file beside it', async () => {
    writeFileSync(join(folder, 'ground.shelter'), 'site creek-flat {\n  gust 26 m/s\n}\n');
    const file = join(folder, 'beds.shelter');
    expect(await run(['new', 'row-arch', '--site', 'creek-flat', '--out', file], output)).toBe(0);
    expect(readFileSync(file, 'utf8')).toMatch(/^import "ground.shelter"\n\n\/\*\*/);
    expect(await run(['check', file, '--on', day, '--format', 'json'], output)).not.toBe(2);
    expect(await run(['new', 'row-arch', '--site', 'nowhere', '--out', `${file}2`], output)).toBe(2);
    expect(err).toMatch(/No file in .* has a site 'nowhere'/);
  });

  it('says what it does not know', async () => {
    expect(await run(['new', 'castle'], output)).toBe(2);
    expect(err).toMatch(/no kind 'castle'/);
    expect(await run(['new', 'row-arch', '--name', 'a b'], output)).toBe(2);
  });
});

const spec = `site plot {
  gust 20 m/s
}

shelter beds on plot {
  footprint 13 ft by 20 ft
  bows spaced 2 ft { of pvc40-25; shape elastic; length 20 ft; joint socket-25 at 5 ft; foot stub of rebar-16 { deep 3 ft } }
  cover roof with film-uv-150 { tension 200 N/m }
}
`;

describe('swap', () => {
  const file = () => join(folder, 'swap.shelter');
  beforeEach(() => writeFileSync(file(), spec));

  it('takes the fittings along and tells what it does, without writing', async () => {
    await run(['swap', file(), '--from', 'pvc40-25', '--to', 'pvc40-40', '--on', day], output);
    expect(out).toContain('socket-40 goes in for socket-25');
    expect(out).toMatch(/came {2}locked-in-stress {2}fails/);
    expect(readFileSync(file(), 'utf8')).toBe(spec);
  });

  it('writes when asked, and nothing but the items', async () => {
    await run(
      ['swap', file(), '--from', 'film-uv-150', '--to', 'film-uv-200', '--write', '--on', day],
      output,
    );
    expect(readFileSync(file(), 'utf8')).toBe(spec.replace('film-uv-150', 'film-uv-200'));
  });

  it('without --to tries the nearest of the same stuff first', async () => {
    expect(await run(['swap', file(), '--from', 'pvc40-25', '--on', day], output)).toBe(0);
    const tried = [...out.matchAll(/^([\w-]+) {2}/gm)].map((match) => match[1]);
    expect(tried[0]).toBe('pvc40-25');
    expect(tried[1]).toBe('pvc80-25');
    expect(tried.slice(1).every((id) => id?.startsWith('pvc'))).toBe(true);
  });

  it('says when the item is not in the file, or not at all', async () => {
    expect(await run(['swap', file(), '--from', 'emt-27', '--to', 'emt-35', '--on', day], output)).toBe(2);
    expect(err).toMatch(/uses emt-27/);
    expect(await run(['swap', file(), '--from', 'gold', '--to', 'emt-35', '--on', day], output)).toBe(2);
    expect(err).toMatch(/no stock item 'gold'/);
  });
});
