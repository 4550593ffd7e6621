/** Files that are no good specs: the command line says what is wrong, where, and goes on. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { run } from '../../packages/cli/src/index.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'shelter-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Told {
  readonly code: number;
  readonly summary: {
    files: number;
    shelters: unknown[];
    problems: {
      id: string;
      message: string;
      file: string;
      range: { start: { line: number; column: number } };
    }[];
  };
}

async function check(name: string, content: string | Uint8Array): Promise<Told> {
  const file = join(folder, name);
  writeFileSync(file, content);
  let out = '';
  const code = await run(['check', file, '--format', 'json', '--on', '2026-11-25'], {
    out: (text) => {
      out += text;
    },
    err: () => undefined,
  });
  return { code, summary: JSON.parse(out) };
}

describe('bad input', () => {
  it('an empty file is fine and has no shelter', async () => {
    const { code, summary } = await check('empty.shelter', '');
    expect(code).toBe(0);
    expect(summary).toEqual({ files: 1, shelters: [], problems: [] });
  });

  it('a half-typed line is a problem on that line', async () => {
    const { code, summary } = await check(
      'half.shelter',
      'site s {\n  gust 30 m/s\n}\nshelter a on s {\n  footprint 4 m by\n  bows spaced\n}\n',
    );
    expect(code).toBe(1);
    expect(summary.problems.map((problem) => problem.range.start.line)).toEqual(
      expect.arrayContaining([5, 6]),
    );
  });

  it('a number without a unit is found at the number, with a way to write it', async () => {
    const { code, summary } = await check('unitless.shelter', 'site s {\n  gust 30\n}\n');
    expect(code).toBe(1);
    const [problem] = summary.problems;
    expect(problem?.range.start).toEqual({ line: 2, column: 8 });
    expect(problem?.message).toMatch(/unit/);
  });

  it('a wrong dimension is named', async () => {
    const { summary } = await check('angle.shelter', 'site s {\n  gust 30 m/s\n  elevation 3 deg\n}\n');
    expect(summary.problems[0]?.message).toMatch(/length.*angle/i);
  });

  it('binary content is one problem and nothing else', async () => {
    const bytes = Uint8Array.from({ length: 4096 }, (_, k) => (k * 7919) % 256);
    const { code, summary } = await check('binary.shelter', bytes);
    expect(code).toBe(1);
    expect(summary.problems).toHaveLength(1);
    expect(summary.problems[0]?.range.start.line).toBe(1);
  });

  it('5 MB of text is one problem, at once', async () => {
    const { code, summary } = await check('large.shelter', 'bows spaced 1 m\n'.repeat(330_000));
    expect(code).toBe(1);
    expect(summary.problems).toHaveLength(1);
  });

  it('files that import each other end in a problem at the import, not in a loop', async () => {
    writeFileSync(join(folder, 'b.shelter'), 'import "a.shelter"\n');
    const { summary } = await check('a.shelter', 'import "b.shelter"\n');
    expect(summary.problems.some((problem) => problem.range.start.line === 1)).toBe(true);
  });

  it('absurd sizes end in problems or findings, never in an exception', async () => {
    for (const line of [
      'footprint 0 m by 10 m',
      'footprint 1 km by 10 m',
      'footprint -4 m by 10 m',
      'footprint 4 m by 1e9 m',
    ]) {
      const text = `site s { gust 30 m/s }\nshelter a on s {\n  ${line}\n  bows spaced 0.0001 m { of pvc40-25; rise 2 m }\n}\n`;
      const { code, summary } = await check('absurd.shelter', text);
      expect(code, line).toBe(1);
      expect(summary.problems.length, line).toBeGreaterThan(0);
    }
  });

  it('a path that is not there is said, with exit 2', async () => {
    let err = '';
    const code = await run(['check', join(folder, 'nowhere')], {
      out: () => undefined,
      err: (text) => {
        err += text;
      },
    });
    expect(code).toBe(2);
    expect(err).toMatch(/no file or folder/);
  });
});
