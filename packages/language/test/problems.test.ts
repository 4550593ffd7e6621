import { describe, expect, it } from 'vitest';
import { loadWorkspace } from '../src/index.ts';
import { LARGEST_TEXT } from '../src/text/lexer.ts';
import { houseText, houseUri, houseWith, itemsText, load } from './house.ts';

/** All problems of a text as `id: the words it points at: message`. */
async function problems(text: string): Promise<string[]> {
  const result = await load(text, { checks: new Set(['bow-deflection']) });
  return result.problems
    .filter(({ uri }) => uri === houseUri)
    .map(({ id, start, end, message }) => `${id}: ${text.slice(start, end)}: ${message}`);
}

const onLine = (line: string): Promise<string[]> => problems(houseWith(line));

describe('problems of a line', () => {
  it.each([
    [
      'footprnt 3 m by 4 m',
      'unknown-word: footprnt: `footprnt` says nothing here. Did you mean `footprint`?',
    ],
    [
      'rise 3 m',
      'unknown-word: rise: `rise` says nothing here. It belongs in `bows`, `rafters`, `cap` or `inflated`.',
    ],
    ['orientation 20', 'needs-unit: 20: `20` needs a unit: an angle, e.g. `20 deg`.'],
    [
      'rafters spaced 1 m of white-25 { form gable; pitch 25 deg }',
      'unknown-word: form: `form` is called `shape` here.',
    ],
    [
      'rafters spaced 1 m of white-25 form gable { pitch 25 deg }',
      'unknown-word: form: `form` is called `shape` here.',
    ],
    ['lap 8', 'unknown-word: lap: `lap` says nothing here. It belongs in `cover`.'],
    ['orientation 3 m', 'wrong-dimension: 3 m: Expected an angle, e.g. 25 deg, found a length.'],
    ['orientation 20 degrees', 'unknown-unit: degrees: `degrees` is not a unit. Did you mean `deg`?'],
    ['crop beans hung 3 kg/foo', 'unknown-unit: kg/foo: `kg/foo` is not a unit.'],
    ['orientation 20 deg + 1 m', 'calculation: 20 deg + 1 m: Expected an angle, found a length.'],
    ['orientation tilt', 'unknown-name: tilt: There is no value called `tilt`.'],
    ['orientation bay', 'wrong-dimension: bay: Expected an angle, e.g. 25 deg, found a length.'],
    ['orientation terrace', 'not-a-value: terrace: `terrace` is a site, not a value.'],
    [
      'cover ends with clear-15',
      'unknown-name: clear-15: There is no film, mesh or sheet called `clear-15`. Did you mean `clear-150`?',
    ],
    [
      'cover ends with white-25',
      'wrong-kind: white-25: `white-25` is a pipe; a film, mesh or sheet belongs here. There is `clear-150`.',
    ],
    [
      'cover ends with bay',
      'wrong-kind: bay: `bay` is a constant; a film, mesh or sheet belongs here. There is `clear-150`.',
    ],
    ['ridge rail of white-25 height of white-25', 'unexpected: of: Expected a length here, found `of`.'],
    ['sides opn', 'unknown-word: opn: `opn` is not known here. Did you mean `open`?'],
    ['footprint 3 m by 4 m', 'duplicate-fact: footprint: `footprint` is said twice here.'],
    ['cover ends', 'missing-fact: cover: `cover` has to say `with`, e.g. `with film-uv-200`.'],
    [
      'season from 2026-02-30 to 2027-01-01',
      'bad-date: 2026-02-30: `2026-02-30` is not a day of the calendar.',
    ],
    [
      'season from 2026-02-03',
      'incomplete: 2026-02-03: `season` still needs `to`, e.g. `season from 2026-11-01 to 2027-04-15`.',
    ],
    [
      'sides open open',
      'unexpected: open: `open` is not part of what `sides` says. It reads `sides <open|clad|screened>`.',
    ],
    ['note "wet', 'unclosed-text: "wet: The closing `"` of this text is missing.'],
    [
      'accept bow-deflexion because "x"',
      'unknown-check: bow-deflexion: There is no check called `bow-deflexion`. Did you mean `bow-deflection`?',
    ],
    [
      'sides open ends clad',
      'own-line: ends: `ends` is a fact of its own: start a new line before it, or put `;`.',
    ],
    ['orientation 20 deg *', 'syntax: *: Expected a value after `*`, found the end of the line.'],
    ['sides @ open', 'character: @: `@` has no meaning here.'],
  ])('%s', async (line, problem) => {
    expect(await onLine(line)).toEqual([problem]);
  });
});

describe('problems of a file', () => {
  it('says nothing of an empty file', async () => {
    expect(await problems('')).toEqual([]);
    expect(await problems('\n // nothing yet\n')).toEqual([]);
  });

  it('reports a missing fact at the name', async () => {
    expect(await problems('site bare { soil loam }')).toEqual([
      'missing-fact: bare: `site` has to say `gust`, e.g. `gust 42 m/s once per 50 yr`.',
    ]);
  });

  it('reports a forgotten brace at its block and reads what follows', async () => {
    const open = houseText.replace('  soil loam\n}', '  soil loam\n');
    expect(await problems(open)).toEqual(['unclosed: {: This block is not closed: a `}` is missing.']);
  });

  it('reports a brace too many and reads what follows', async () => {
    const extra = houseText.replace('  soil loam\n}', '  soil loam\n}\n}');
    expect(await problems(extra)).toEqual(['stray-brace: }: This `}` closes nothing.']);
  });

  it('reports circles of constants, likeness and imports without hanging', async () => {
    expect(await problems('let a = b * 2\nlet b = a')).toEqual(
      ['circular: b: `b` is worked out from itself.', 'circular: a: `a` is worked out from itself.'].map(
        (text) => expect.stringContaining(text.slice(0, 10)),
      ),
    );
    expect(await problems('pipe a like b {}\npipe b like a {}')).toEqual([
      'circular: b: `a` is like itself, by way of what it is like.',
      'circular: a: `b` is like itself, by way of what it is like.',
    ]);
    const texts: Record<string, string> = {
      'file:///w/a.shelter': 'import "b.shelter"',
      'file:///w/b.shelter': 'import "sub/c.shelter"',
      'file:///w/sub/c.shelter': 'import "../a.shelter"',
    };
    const around = await loadWorkspace(
      [{ uri: 'file:///w/a.shelter', text: texts['file:///w/a.shelter'] ?? '' }],
      (uri) => texts[uri],
      { catalogue: [], roots: ['file:///w'] },
    );
    expect(around.problems.map(({ uri, message }) => [uri, message])).toEqual(
      Object.keys(texts).map((uri) => [uri, 'These files import each other in a circle.']),
    );
  });

  it.each([
    ['"none.shelter"', 'There is no readable file `none.shelter`.'],
    ['"../other.shelter"', 'The import leads out of the workspace. Only files inside it can be imported.'],
    [
      '"a/../../other.shelter"',
      'The import leads out of the workspace. Only files inside it can be imported.',
    ],
    ['"../../../../etc/x.shelter"', 'The import leads out of the workspace.'],
    [
      '"/etc/x.shelter"',
      'An import names a file of this workspace by its path from this file, e.g. "prices/yard.shelter".',
    ],
    [
      '"file:///etc/x.shelter"',
      'An import names a file of this workspace by its path from this file, e.g. "prices/yard.shelter".',
    ],
    ['"a\\\\b.shelter"', 'Write the path with `/`, not with a backslash.'],
    ['"prices.csv"', 'Only files that end in `.shelter` can be imported.'],
    ['""', 'The path of the file to import is missing.'],
  ])('import %s', async (path, message) => {
    const asked: string[] = [];
    const text = `import ${path}`;
    const result = await loadWorkspace([{ uri: houseUri, text }], (uri) => void asked.push(uri), {
      catalogue: [],
    });
    expect(
      result.problems.map((problem) => [problem.id, problem.message, text.slice(problem.start, problem.end)]),
    ).toEqual([['import', message, path]]);
    expect(asked.every((uri) => uri.startsWith('file:///gully/'))).toBe(true);
  });

  it('refuses what is no text with one problem and reads nothing of it', async () => {
    for (const text of [
      `site a { gust 3 m/s }\0${houseText}`,
      '\u0001\u0002\u0003\u0004\u0005\u0006\u0007\u0008\u0001 bows',
      houseText + ' '.repeat(LARGEST_TEXT),
      '{'.repeat(100_000),
      `let a = ${'('.repeat(50_000)}1`,
      `let a = ${'1 + '.repeat(50_000)}1`,
    ]) {
      const { problems: found, shelters } = await load(text);
      expect(found.map(({ id }) => id)).toEqual(['unreadable']);
      expect(shelters).toEqual([]);
    }
  });

  it('reports names given twice, here and in imported files', async () => {
    expect(await problems(`${itemsText}pipe white-25 like white-25 {}`)).toContainEqual(
      'duplicate-name: white-25: `white-25` is already defined above. Give this one another name.',
    );
    expect(await problems('import "items.shelter"\nlet white-25 = 3 m')).toEqual([
      'duplicate-name: white-25: `white-25` is already defined in a file it imports. Give this one another name.',
    ]);
  });
});
