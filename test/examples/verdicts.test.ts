import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { load, mend, run, verdictsOf } from '../../packages/cli/src/index.ts';

const folder = fileURLToPath(new URL('../../examples/', import.meta.url));
/** Ages are counted to this day, so that the verdicts do not change with the calendar. */
const day = '2026-11-25';
const names = readdirSync(folder).filter((name) => name.endsWith('.shelter'));
const flawed = names.filter((name) => name.endsWith('-flawed.shelter'));
const sound = flawed.map((name) => name.replace('-flawed', ''));

/** Check ids that the comment at the top of a flawed example promises. */
function promised(text: string): string[] {
  const ids = text
    .split('\n')
    .filter((line) => line.startsWith('//   '))
    .flatMap(
      (line) =>
        line
          .trim()
          .split(/\s{2,}/)
          .at(-1)
          ?.split(',') ?? [],
    );
  return [...new Set(ids.map((id) => id.trim()))].sort();
}

async function told(file: string): Promise<{ ids: string[]; errors: string[]; problems: string[] }> {
  const verdicts = verdictsOf(await load([folder + file]), day);
  const findings = verdicts.shelters.flatMap((verdict) => verdict.findings.map(({ finding }) => finding));
  return {
    ids: [
      ...new Set(findings.filter((finding) => finding.verdict === 'fails').map((finding) => finding.id)),
    ].sort(),
    errors: findings.filter((finding) => finding.severity === 'error').map((finding) => finding.id),
    problems: verdicts.problems.map((problem) => `${problem.uri}: ${problem.message}`),
  };
}

async function exitOf(...words: string[]): Promise<number> {
  return run(words, { out: () => undefined, err: () => undefined });
}

describe('sound examples', () => {
  it.each(sound)('%s has no error and no problem, and check exits 0', async (file) => {
    const result = await told(file);
    expect(result.problems).toEqual([]);
    expect(result.errors).toEqual([]);
    expect(await exitOf('check', folder + file, '--on', day)).toBe(0);
  });
});

describe('the place that is described whole', () => {
  const file = 'lower-terrace.shelter';

  it('is the largest example, with houses of several kinds, variants and a range, and has no error', async () => {
    const lines = (name: string): number => readFileSync(folder + name, 'utf8').split('\n').length;
    expect(Math.max(...names.map(lines))).toBe(lines(file));
    const loaded = await load([folder + file]);
    const kinds = loaded.shelters.map(({ kind }) => kind);
    expect(kinds.filter((kind) => kind === 'shelter').length).toBeGreaterThanOrEqual(5);
    expect(kinds.filter((kind) => kind === 'variant').length).toBeGreaterThanOrEqual(2);
    expect(kinds).toContain('range');
    const result = await told(file);
    expect(result.problems).toEqual([]);
    expect(result.errors).toEqual([]);
    expect(await exitOf('check', folder + file, '--on', day)).toBe(0);
  });
});

describe('flawed siblings', () => {
  it.each(flawed)('%s fails in just the checks its comment names, and check exits 1', async (file) => {
    const text = readFileSync(folder + file, 'utf8');
    expect(promised(text).length).toBeGreaterThan(0);
    const result = await told(file);
    expect(result.problems).toEqual([]);
    expect(result.ids).toEqual(promised(text));
    expect(await exitOf('check', folder + file, '--on', day)).toBe(1);
  });

  it.each(flawed)('%s has no error left once the offered fixes are applied', async (file) => {
    const path = folder + file;
    const mended = await mend(pathToFileURL(path).href, readFileSync(path, 'utf8'), 'us', day);
    expect(mended.left.map(({ finding }) => finding.id)).toEqual([]);
    expect(mended.steps.length).toBeGreaterThan(0);
    expect(mended.text).not.toBe(readFileSync(path, 'utf8'));
  });
});
