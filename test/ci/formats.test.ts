/** What continuous-integration servers read: SARIF, JUnit, workflow commands, shards. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import Draft4 from 'ajv-draft-04';
import addFormats from 'ajv-formats';
import { SaxesParser } from 'saxes';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { run } from '../../packages/cli/src/index.ts';
import { shelterText, siteText } from './generated.ts';

const folder = mkdtempSync(join(tmpdir(), 'tautline-ci-'));
const day = '2026-11-25';

async function check(...words: string[]): Promise<{ code: number; out: string; err: string }> {
  let out = '';
  let err = '';
  const code = await run(['check', folder, '--on', day, ...words], {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
  });
  return { code, out, err };
}

interface Summary {
  readonly files: number;
  readonly shelters: readonly {
    readonly name: string;
    readonly findings: readonly {
      readonly id: string;
      readonly severity: string;
      readonly verdict: string;
    }[];
    readonly notChecked: readonly unknown[];
  }[];
  readonly problems: readonly { readonly severity: string }[];
}
const summaryOf = async (...words: string[]): Promise<Summary> =>
  JSON.parse((await check('--format', 'json', ...words)).out) as Summary;

let whole: Summary;

beforeAll(async () => {
  writeFileSync(join(folder, 'site.shelter'), siteText);
  for (let index = 0; index < 9; index += 1)
    writeFileSync(join(folder, `house ${index}.shelter`), shelterText(index));
  writeFileSync(
    join(folder, 'accepted.shelter'),
    shelterText(20).replace('cover', 'accept hot-slack because "<wrapped & \\"dry\\">"\n  cover'),
  );
  whole = await summaryOf();
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('SARIF', () => {
  it('is valid by the schema that OASIS publishes for 2.1.0 (rtm.5, as @microsoft/jest-sarif carries it)', async () => {
    const home = dirname(createRequire(import.meta.url).resolve('@microsoft/jest-sarif/package.json'));
    const schema = JSON.parse(readFileSync(join(home, 'lib/schemas/sarif-2.1.0-rtm.5.json'), 'utf8'));
    // Both packages are CommonJS: the class and the function are their default.
    const ajv = new (Draft4 as unknown as typeof import('ajv').default)({
      strict: false,
      allErrors: true,
      unicodeRegExp: false,
    });
    (addFormats as unknown as (to: object) => void)(ajv);
    const valid = ajv.compile(schema);
    const log = JSON.parse((await check('--format', 'sarif')).out);
    valid(log);
    expect(valid.errors ?? []).toEqual([]);
    const results = log.runs[0].results as { suppressions?: { justification: string }[] }[];
    const told = whole.shelters.flatMap(({ findings }) =>
      findings.filter(({ verdict }) => verdict !== 'passes'),
    );
    expect(results).toHaveLength(told.length + whole.problems.length);
    expect(results.flatMap(({ suppressions = [] }) => suppressions)).toContainEqual(
      expect.objectContaining({ justification: '<wrapped & "dry">' }),
    );
    // The same schema refuses a log that lies about its results.
    expect(valid({ ...log, runs: [{ ...log.runs[0], results: [{ level: 'terrible' }] }] })).toBe(false);
  });
});

describe('JUnit', () => {
  it('is well-formed XML whose counts are those of the cases, one for each finding', async () => {
    const { out } = await check('--format', 'junit');
    const elements: { name: string; attributes: Readonly<Record<string, string>> }[] = [];
    const parser = new SaxesParser();
    parser.on('opentag', ({ name, attributes }) =>
      elements.push({ name, attributes: attributes as Record<string, string> }),
    );
    parser.on('error', (error) => {
      throw error;
    });
    parser.write(out).close();
    const of = (name: string) => elements.filter((element) => element.name === name);
    const findings = whole.shelters.flatMap((shelter) => shelter.findings);
    const skipped = whole.shelters.flatMap((shelter) => shelter.notChecked);
    const total = findings.length + skipped.length + whole.problems.length;
    const errors = [...findings, ...whole.problems].filter(({ severity }) => severity === 'error').length;
    expect(of('testcase')).toHaveLength(total);
    expect(of('failure')).toHaveLength(errors);
    expect(of('skipped')).toHaveLength(skipped.length);
    expect(of('testsuites')[0]?.attributes).toMatchObject({ tests: `${total}`, failures: `${errors}` });
    expect(errors).toBeGreaterThan(0);
  });

  it('counts warnings as failures when the command does', async () => {
    const { out } = await check('--format', 'junit', '--fail-on', 'warning');
    const severe = [...whole.shelters.flatMap(({ findings }) => findings), ...whole.problems].filter(
      ({ severity }) => severity !== 'information',
    );
    expect(out.match(/<failure /g)).toHaveLength(severe.length);
  });
});

describe('shards', () => {
  it('together hold every file once', async () => {
    const parts = await Promise.all(['1/3', '2/3', '3/3'].map((shard) => summaryOf('--shard', shard)));
    const names = parts.flatMap(({ shelters }) => shelters.map(({ name }) => name));
    expect(names.sort()).toEqual(whole.shelters.map(({ name }) => name).sort());
    const sizes = parts.map(({ files }) => files);
    expect(Math.max(...sizes) - Math.min(...sizes)).toBeLessThanOrEqual(1);
  });

  it.each(['0/3', '4/3', '1', '1/0', 'a/b'])('refuses %s', async (shard) => {
    const { code, err } = await check('--shard', shard);
    expect(code).toBe(2);
    expect(err).toContain('--shard takes');
  });
});
