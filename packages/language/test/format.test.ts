import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { builtInCatalogue, formatText } from '../src/index.ts';
import { lexText } from '../src/text/parse.ts';
import { houseText, houseUri, load } from './house.ts';

const untidy = `import   "items.shelter" ;
let bay=4ft
/**  Plug house.
     * Second line.
   */
shelter  plug-house on terrace
{
footprint 14ft by 40ft; ;
bows spaced bay*2 of white-25 { shape elastic ; rise 7ft6in; }   // why
  cover roof with clear-150 // a
  {
   // nothing yet
  }


  require headroom>=1.7m at  .5 m from side
}`;

const tidy = `import "items.shelter"
let bay = 4 ft
/**  Plug house.
 * Second line.
 */
shelter plug-house on terrace {
  footprint 14 ft by 40 ft
  bows spaced bay * 2 of white-25 { shape elastic; rise 7 ft 6 in } // why
  cover roof with clear-150 // a
  {
    // nothing yet
  }

  require headroom >= 1.7 m at .5 m from side
}
`;

/** Tokens and comments that mean something: separators and blanks inside quantities apart. */
function meaning(text: string): string[] {
  const { tokens, hidden } = lexText(text);
  return [
    ...tokens
      .filter(({ image }) => image !== ';')
      .map(({ image, tokenType }) => `${tokenType.name} ${image.replace(/\s/g, '')}`),
    ...hidden.map(({ image }) => image.replace(/\s/g, '')),
  ];
}

/** Texts put together from pieces of specs, with blanks and breaks anywhere. */
const pieces = fc.array(
  fc.constantFrom(
    'bows',
    'spaced',
    '4ft',
    '7 ft 6in',
    '1-3/8 in',
    '-2 degC',
    '1:4',
    '2026-03-01',
    '"a  b"',
    ';',
    ' { ',
    ' } ',
    '(',
    ')',
    ' - ',
    '+',
    '*',
    '/ ',
    ' ',
    '\n',
    '\n\n\n',
    '\r\n',
    '\r',
    '// note\n',
    '/* x */',
    '/** doc\n * more\n */\n',
    '>=',
    'let ',
    '=',
    'a-b',
    '3',
    ' 1/2 ',
    '%',
    'per',
  ),
  { maxLength: 40 },
);

describe('formatting', () => {
  it('lays a text out', () => {
    expect(formatText(untidy)).toBe(tidy);
  });

  it('leaves the catalogue and the test house as they are', () => {
    for (const { text } of [...builtInCatalogue, { text: houseText }]) expect(formatText(text)).toBe(text);
  });

  it('keeps line ends of the other sort', () => {
    expect(formatText(untidy.replaceAll('\n', '\r\n'))).toBe(tidy.replaceAll('\n', '\r\n'));
  });

  it('leaves what cannot be read alone', () => {
    for (const text of ['site a {\n', 'site a }', 'a\0b', ' @ ']) expect(formatText(text)).toBe(text);
    expect(formatText('')).toBe('');
  });

  it('is idempotent and keeps every token and comment', () => {
    fc.assert(
      fc.property(pieces, (parts) => {
        const text = parts.join('');
        const once = formatText(text);
        expect(formatText(once)).toBe(once);
        expect(meaning(once)).toEqual(meaning(text));
      }),
      { numRuns: 1500 },
    );
  });

  it('keeps the spec, origins included', async () => {
    const messy = houseText
      .replaceAll('  ', '\t')
      .replaceAll(' {', '\n{')
      .replaceAll('40 ft', '40ft')
      .replace('shape elastic\n', 'shape elastic;');
    const definitions = async (text: string) => [
      ...((await load(text)).worldOf(houseUri)?.definitions ?? []),
    ];
    expect(await definitions(formatText(messy))).toEqual(await definitions(messy));
    expect(await definitions(messy)).toEqual(await definitions(houseText));
  });
});
