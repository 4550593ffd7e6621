/** What `check --format json` prints is what its published schema says. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { run } from '../../packages/cli/src/index.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const schema = JSON.parse(readFileSync(`${root}packages/cli/schema/check.schema.json`, 'utf8')) as object;
const validate = new Ajv2020({ allErrors: true, strict: true }).compile(schema);

async function printed(...asked: string[]): Promise<unknown> {
  let out = '';
  await run(['check', ...asked, '--format', 'json', '--on', '2026-11-25'], {
    out: (text) => {
      out += text;
    },
    err: () => undefined,
  });
  return JSON.parse(out);
}

describe('schema of check --format json', () => {
  it.each(['bed-arch', 'bed-arch-flawed', 'screen-house-flawed', 'green-pole', 'seedling-cap', 'row-arch'])(
    'holds for %s',
    async (name) => {
      const summary = await printed(`${root}examples/${name}.shelter`, '--timings');
      expect(validate(summary), JSON.stringify(validate.errors, null, 1)).toBe(true);
    },
  );

  it('refuses what the command never prints', () => {
    expect(validate({ files: 1, shelters: [], problems: [], more: 1 })).toBe(false);
    expect(validate({ files: -1, shelters: [], problems: [] })).toBe(false);
  });
});
