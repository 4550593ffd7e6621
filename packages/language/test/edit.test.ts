import { parseQuantity } from '@tautline/quantity';
import { originOf, type SpecEdit, type SpecNode, type SpecValue } from '@tautline/shelter';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applySpecEdits, changed, quantityText } from '../src/index.ts';
import { houseText, houseUri, load } from './house.ts';

const origin = originOf('');
const length = (si: number): SpecValue => ({ type: 'quantity', si, kind: 'length', origin });
const item = (id: string): SpecValue => ({ type: 'item', id, origin });
const word = (text: string): SpecValue => ({ type: 'word', word: text, origin });

async function house(text = houseText): Promise<SpecNode> {
  return (await load(text)).worldOf(houseUri)?.definitions.get('plug-house') as SpecNode;
}

function find(node: SpecNode, path: string): SpecNode {
  let at = node;
  for (const step of path.split('/')) at = at.children.find((child) => child.word === step) as SpecNode;
  return at;
}

/** The house after edits, as the lines that changed. */
async function diff(edits: (shelter: SpecNode) => readonly SpecEdit[], text = houseText): Promise<string[]> {
  const result = applySpecEdits(text, edits(await house(text)), 'metric');
  if (!result.ok) return [result.reason];
  const after = changed(text, result.changes);
  expect((await load(after)).problems).toEqual([]);
  const before = new Set(text.split('\n'));
  return after.split('\n').filter((line) => !before.has(line));
}

describe('edits of the spec as edits of the text', () => {
  it.each<[string, (shelter: SpecNode) => readonly SpecEdit[], string[]]>([
    [
      'changes a clause',
      (s) => [{ type: 'set', block: find(s, 'bows').origin, word: 'spaced', slots: { value: length(0.9) } }],
      ['  bows spaced 0.9 m of white-25 foot stub of bar-12 lean 85 deg {'],
    ],
    [
      'keeps the units that were there',
      (s) => [
        { type: 'set', block: find(s, 'bows').origin, word: 'rise', slots: { value: length(7 * 0.3048) } },
      ],
      ['    rise 7 ft'],
    ],
    [
      'changes one of two values',
      (s) => [{ type: 'replace', node: find(s, 'footprint').origin, slots: { length: length(9.144) } }],
      ['  footprint 14 ft by 30 ft // measured twice'],
    ],
    [
      'adds a fact to a block of lines',
      (s) => [{ type: 'set', block: find(s, 'bows').origin, word: 'span', slots: { value: length(4) } }],
      ['    span 4 m'],
    ],
    [
      'adds a fact to a block of one line',
      (s) => [{ type: 'set', block: find(s, 'cover').origin, word: 'lap', slots: { value: length(0.2) } }],
      ['  cover roof with clear-150 { tension 150 N/m; installed 2026-03-01; lap 0.2 m }'],
    ],
    [
      'gives a line a block',
      (s) => [{ type: 'set', block: find(s, 'crop').origin, word: 'height', slots: { value: length(2) } }],
      ['  crop tomatoes hung 15 kg/m2 { height 2 m }'],
    ],
    [
      'adds to a clause',
      (s) => [
        { type: 'set', block: find(s, 'bows/foot').origin, word: 'deep', slots: { value: length(0.6) } },
      ],
      ['  bows spaced bay of white-25 foot stub of bar-12 lean 85 deg deep 0.6 m {'],
    ],
    [
      'changes a clause of a clause',
      (s) => [
        { type: 'set', block: find(s, 'bows/foot').origin, word: 'of', slots: { item: item('white-25') } },
      ],
      ['  bows spaced bay of white-25 foot stub of white-25 lean 85 deg {'],
    ],
    [
      'adds a whole block',
      (s) => [
        {
          type: 'add',
          block: s.origin,
          node: {
            word: 'ridge',
            slots: { form: word('rail') },
            children: [
              { word: 'of', slots: { item: item('white-25') }, children: [], origin },
              { word: 'height', slots: { value: length(2.5) }, children: [], origin },
            ],
            origin,
          },
        },
      ],
      ['  ridge rail { of white-25; height 2.5 m }'],
    ],
    [
      'writes an optional part that was not there',
      (s) => [
        {
          type: 'set',
          block: s.origin,
          word: 'accept',
          slots: { check: word('bow-deflection'), reason: { type: 'text', text: 'say "so"', origin } },
        },
      ],
      ['  accept bow-deflection because "say \\"so\\""'],
    ],
    [
      'makes several changes at once',
      (s) => [
        { type: 'set', block: find(s, 'bows').origin, word: 'spaced', slots: { value: length(0.9) } },
        { type: 'set', block: find(s, 'bows').origin, word: 'span', slots: { value: length(4) } },
        { type: 'set', block: find(s, 'bows').origin, word: 'length', slots: { value: length(6) } },
      ],
      ['  bows spaced 0.9 m of white-25 foot stub of bar-12 lean 85 deg {', '    span 4 m', '    length 6 m'],
    ],
    [
      'refuses what cannot be said',
      (s) => [{ type: 'set', block: find(s, 'crop').origin, word: 'rise', slots: { value: length(2) } }],
      ['`rise` cannot be said of `crop`'],
    ],
    [
      'refuses a place that is gone',
      () => [{ type: 'remove', node: originOf(`${houseUri}#3.99`) }],
      ['the line is no longer there'],
    ],
  ])('%s', async (_title, edits, lines) => {
    expect(await diff(edits)).toEqual(lines);
  });

  it('takes out lines, clauses and facts of one line', async () => {
    const shelter = await house();
    const after = async (path: string): Promise<string> => {
      const result = applySpecEdits(
        houseText,
        [{ type: 'remove', node: find(shelter, path).origin }],
        'metric',
      );
      return result.ok ? changed(houseText, result.changes) : result.reason;
    };
    expect(await after('crop')).toBe(houseText.replace('  crop tomatoes hung 15 kg/m2\n', ''));
    expect(await after('bows/foot')).toBe(houseText.replace(' foot stub of bar-12 lean 85 deg', ''));
    expect(await after('cover/tension')).toBe(houseText.replace('tension 150 N/m; ', ''));
    expect(await after('cover/installed')).toBe(houseText.replace('; installed 2026-03-01', ''));
    expect(await after('footprint')).toBe(houseText.replace('  footprint 14 ft by 40 ft ', '   '));
  });

  it('writes any value so that it reads back as the very same number', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-4, max: 1e4, noNaN: true }),
        fc.constantFrom('metric', 'us'),
        fc.constantFrom('length', 'angle', 'line-load', 'speed', 'ratio'),
        (value, system, kind) => {
          const text = quantityText(value, kind, system as 'metric' | 'us');
          const read = parseQuantity(text);
          expect(read.ok && Math.abs(read.si - value) / value).toBeLessThan(1e-15);
        },
      ),
      { numRuns: 300 },
    );
  });
});
