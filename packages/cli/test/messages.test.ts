/** What a person reads who slips: no stack trace, what is wrong, and what would do. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { run } from '../src/index.ts';

let folder = '';
let file = '';
const told = async (...words: string[]): Promise<{ code: number; out: string; err: string }> => {
  let [out, err] = ['', ''];
  const code = await run(words, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
  });
  return { code, out, err };
};

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'messages-'));
  mkdirSync(join(folder, 'empty'));
  file = join(folder, 'beds.shelter');
  writeFileSync(
    file,
    'site s { gust 20 m/s }\nshelter beds on s { footprint 12 ft by 20 ft; bows spaced 4 ft { of pvc40-25; shape elastic; length 20 ft } }\n',
  );
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the command line', () => {
  it.each([
    [['frobnicate'], /^There is no command 'frobnicate'\. There are new, check, .*due.*tautline help/],
    [['check', 'x', '--frob'], /^tautline check has no option --frob\. It has --format, /],
    [['check', 'x', '--format'], /^--format.* wants a value after it\. tautline check --help/],
    [['check', 'x', '--all=yes'], /^--all takes no value\./],
    [['check', 'C:\\farm\\beds.shelter'], /forward slashes/],
    [['due', '.', '--on', '2026-02-30'], /--on takes a date like 2027-03-01; it got '2026-02-30'/],
    [['explain', '--gusts'], /^Say which file/],
  ])('%j', async (words, message) => {
    const { code, err } = await told(...words);
    expect(err).toMatch(message);
    expect([code, err.includes('    at ')]).toEqual([2, false]);
  });

  it('says why a file cannot be written', async () => {
    const into = join(folder, 'nowhere', 'list.txt');
    expect(await told('materials', file, '--out', into)).toMatchObject({
      code: 2,
      err: `'${into}' cannot be used: the folder is not there.\n`,
    });
    expect((await told('sheets', file, '--out', file)).err).toMatch(/a file of that name is in the way/);
  });

  it('says that a folder holds no specs', async () => {
    const empty = join(folder, 'empty');
    expect(await told('check', empty)).toMatchObject({
      code: 0,
      err: expect.stringContaining('no .shelter'),
    });
    expect(await told('sheets', empty, '--out', join(folder, 'out'))).toMatchObject({ code: 2 });
  });

  it('says that a review wants a repository', async () => {
    const { code, err } = await told('review', 'HEAD', '--repository', folder);
    expect([code, err]).toEqual([2, expect.stringContaining('is in no git repository')]);
  });

  it.each(['new', 'check', 'stock', 'neighbour', 'review'])(
    '%s --help shows the call and what it does',
    async (name) => {
      const { code, out } = await told(name, '--help');
      expect([code, out.split('\n')[0]]).toEqual([
        0,
        expect.stringMatching(new RegExp(`^tautline ${name} `)),
      ]);
    },
  );
});
