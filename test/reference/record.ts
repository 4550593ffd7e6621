/**
 * Keeps what the reference tests compare, so that a table of it can be made: for each numeric comparison the
 * test's name (which names the source), what was expected, what was got. Only when RECORD_REFERENCE is set.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { afterAll, chai, expect } from 'vitest';

export interface Comparison {
  readonly test: string;
  readonly how: string;
  readonly expected: number;
  readonly got: number;
}

const compared: Comparison[] = [];
const watched = [
  'toBeCloseTo',
  'toBe',
  'toBeLessThan',
  'toBeGreaterThan',
  'toBeLessThanOrEqual',
  'toBeGreaterThanOrEqual',
];

if (process.env['RECORD_REFERENCE'] !== undefined) {
  chai.use((_chai, utils) => {
    for (const name of watched) {
      utils.overwriteMethod(
        chai.Assertion.prototype,
        name,
        (original: (...words: unknown[]) => unknown) =>
          function (this: object, ...words: unknown[]) {
            const got: unknown = utils.flag(this, 'object');
            const expected = words[0];
            const { currentTestName, testPath } = expect.getState();
            const isReference = testPath?.includes('/test/reference/') === true;
            if (
              isReference &&
              typeof got === 'number' &&
              typeof expected === 'number' &&
              Number.isFinite(got)
            ) {
              compared.push({ test: currentTestName ?? '', how: name, expected, got });
            }
            return original.apply(this, words);
          },
      );
    }
  });

  afterAll(() => {
    const { testPath } = expect.getState();
    if (compared.length === 0 || testPath === undefined) return;
    const folder = join(process.cwd(), 'out', 'reference');
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, `${basename(testPath, '.test.ts')}.json`), JSON.stringify(compared));
  });
}
