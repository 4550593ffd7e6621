/** What a person reads who slips: no stack trace, what is wrong, and what would do. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { tell } from './tell.ts';

let folder = '';
let file = '';

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
    const { code, err } = await tell(...words);
    expect(err).toMatch(message);
    expect([code, err.includes('    at ')]).toEqual([2, false]);
  });

  it('says why a file cannot be written', async () => {
    const into = join(folder, 'nowhere', 'list.txt');
    expect(await tell('materials', file, '--out', into)).toMatchObject({
      code: 2,
      err: `'${into}' cannot be used: the folder is not there.\n`,
    });
    expect((await tell('sheets', file, '--out', file)).err).toMatch(/a file of that name is in the way/);
  });

  it('tells once what a run-together line hides, names what there is, and judges nothing', async () => {
    const slipped = join(folder, 'slipped.shelter');
    writeFileSync(
      slipped,
      [
        'site s { gust 20 m/s }',
        'shelter beds on s {',
        '  footprint 4 m by 6 m',
        '  bows spaced 1 m { of pvc40-25; shape elastic rise 2 m }',
        '  cover roof with film-uv-150 { fastened by wishes }',
        '}',
        '',
      ].join('\n'),
    );
    const { code, out } = await tell('check', slipped);
    expect(code).toBe(1);
    expect(out.match(/\[[a-z-]+\]$/gm)).toEqual(['[own-line]', '[unknown-name]']);
    expect(out).toMatch(/no fastening called `wishes`\. There is `[a-z0-9-]+`, .* and \d+ more\./);
    expect(out).toMatch(/beds {2}\(.*\)\n {2}Not worked out: its text has to be put right first\.\n/);
  });

  it('says of what no change mends which gust it bears', async () => {
    const windy = join(folder, 'windy.shelter');
    writeFileSync(
      windy,
      [
        'site s { gust 60 m/s }',
        'shelter beds on s {',
        '  footprint 1.2 m by 2.4 m',
        '  posts sides of lumber-2x2 spaced 1.2 m {',
        '    height 0.5 m',
        '    foot stub of rebar-12 { length 1 m; deep 0.6 m }',
        '    rail of lumber-2x2',
        '  }',
        '  rafters spaced 0.6 m of lumber-2x2 { shape gable; pitch 20 deg; joint plate-ply at peak }',
        '  cover roof with corrugated-pc { fastened by roof-screw every 0.3 m }',
        '}',
        '',
      ].join('\n'),
    );
    const { out } = await tell('fix', windy);
    const line = out.split('\n').find((text) => text.startsWith('pull-out: no single change'));
    const bears = /it bears a gust of ([\d.]+) m\/s; the site has 60 m\/s\.$/.exec(line ?? '');
    expect(Number(bears?.[1])).toBeGreaterThan(2);
    expect(Number(bears?.[1])).toBeLessThan(59);
  });

  it('says that a folder holds no specs', async () => {
    const empty = join(folder, 'empty');
    expect(await tell('check', empty)).toMatchObject({
      code: 0,
      err: expect.stringContaining('no .shelter'),
    });
    expect(await tell('sheets', empty, '--out', join(folder, 'out'))).toMatchObject({ code: 2 });
  });

  it('says that a review wants a repository', async () => {
    const { code, err } = await tell('review', 'HEAD', '--repository', folder);
    expect([code, err]).toEqual([2, expect.stringContaining('is in no git repository')]);
  });

  it.each(['new', 'check', 'stock', 'neighbour', 'review'])(
    '%s --help shows the call and what it does',
    async (name) => {
      const { code, out } = await tell(name, '--help');
      expect([code, out.split('\n')[0]]).toEqual([
        0,
        expect.stringMatching(new RegExp(`^tautline ${name} `)),
      ]);
    },
  );
});
