import type { SpecNode } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
import { builtInCatalogue, loadWorkspace } from '../src/index.ts';
import { houseText, houseUri, houseWith, load } from './house.ts';

const child = (node: SpecNode | undefined, word: string): SpecNode | undefined =>
  node?.children.find((one) => one.word === word);

async function shelterOf(text: string): Promise<SpecNode | undefined> {
  const { shelters } = await load(text);
  return shelters[0]?.world.definitions.get('plug-house');
}

/** The SI value of one quantity said as `footprint <text> by 9 m`. */
async function width(text: string): Promise<number | undefined> {
  const shelter = await shelterOf(houseText.replace('14 ft by', `${text} by`));
  const value = child(shelter, 'footprint')?.slots['width'];
  return value?.type === 'quantity' ? value.si : undefined;
}

describe('reading', () => {
  it('finds nothing wrong with the test house', async () => {
    const { problems, shelters } = await load(houseText);
    expect(problems).toEqual([]);
    expect(shelters.map(({ name, title }) => [name, title])).toEqual([
      ['plug-house', 'Plug house. Stands beside the track.'],
    ]);
  });

  it('finds nothing wrong with the built-in catalogue', async () => {
    const { problems, files } = await loadWorkspace(builtInCatalogue, undefined, { catalogue: [] });
    expect(problems).toEqual([]);
    expect(files.length).toBe(builtInCatalogue.length);
  });

  it.each([
    ['7 ft 6 in', 7.5 * 0.3048],
    ['7ft6in', 7.5 * 0.3048],
    ['3/4 in', 0.01905],
    ['1-3/8 in', 0.034925],
    ['1 3/8 in', 0.034925],
    ['420 cm', 4.2],
    ['4.2m', 4.2],
    ['(3 m + 4 ft) * 2 - 1 m', 2 * (3 + 4 * 0.3048) - 1],
    ['bay / 2', 0.6096],
    ['1.44 m2 / 1.2 m', 1.2],
  ])('reads %s', async (text, si) => {
    expect(await width(text)).toBeCloseTo(si, 12);
  });

  it('reads the same from feet and from metres', async () => {
    expect(await width('14 ft')).toBe(await width('4.2672 m'));
  });

  it('reads clauses of a line and facts of a block as the same spec', async () => {
    const inline = await shelterOf(houseText);
    const bows = child(inline, 'bows');
    expect(bows?.children.map(({ word }) => word)).toEqual(['spaced', 'of', 'foot', 'shape', 'rise']);
    const foot = child(bows, 'foot');
    expect(foot?.children.map(({ word }) => word)).toEqual(['of', 'lean']);
    const blocks = await shelterOf(
      houseText.replace(' foot stub of bar-12 lean 85 deg {', ' {\n foot stub { of bar-12; lean 85 deg }'),
    );
    const strip = (node: SpecNode | undefined): unknown =>
      node && {
        word: node.word,
        slots: Object.fromEntries(Object.entries(node.slots).map(([k, v]) => [k, { ...v, origin: '' }])),
        children: node.children.map(strip).sort((a, b) => JSON.stringify(a).localeCompare(JSON.stringify(b))),
      };
    expect(strip(child(blocks, 'bows'))).toEqual(strip(bows));
  });

  it('takes every word in the middle of a line, also words of the grammar', async () => {
    const { problems } = await load(houseWith('crop let hung 5 kg/m2').replaceAll('terrace', 'import'));
    expect(problems).toEqual([]);
  });

  it('takes a constant with the name of a fact', async () => {
    const text = houseText
      .replace('let bay', 'let length = 6 m\nlet bay')
      .replace('rise 7 ft 6 in', 'length length');
    const { problems } = await load(text);
    expect(problems).toEqual([]);
  });

  it('turns origins back into places', async () => {
    const { placeOf, shelters } = await load(houseText);
    const bows = child(shelters[0]?.world.definitions.get('plug-house'), 'bows');
    const at = (node: SpecNode | undefined): string => {
      const place = node && placeOf(node.origin);
      return place?.uri === houseUri ? houseText.slice(place.start, place.end) : '';
    };
    expect(at(bows)).toBe('bows spaced bay of white-25 foot stub of bar-12 lean 85 deg');
    expect(at(child(bows, 'foot'))).toBe('foot stub of bar-12 lean 85 deg');
    expect(at(child(bows, 'rise'))).toBe('rise 7 ft 6 in');
    const rise = child(bows, 'rise')?.slots['value']?.origin;
    const place = rise && placeOf(rise);
    expect(place && houseText.slice(place.start, place.end)).toBe('7 ft 6 in');
    expect(place?.from).toEqual({ line: 15, character: 9 });
  });

  it('keeps origins and values when only comments and blanks change', async () => {
    const spaced = houseText.replace(/(?<!\*\/)\n/g, '\n\n  // more\n').replaceAll(' by ', '   by ');
    expect(await shelterOf(spaced)).toEqual(await shelterOf(houseText));
  });
});
