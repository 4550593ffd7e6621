import { describe, expect, test } from 'vitest';
import {
  applyEdits,
  factNode,
  itemValue,
  numberIn,
  originOf,
  quantityValue,
  type SpecEdit,
  sameSpec,
  specNode,
  unmatchedEdits,
  varied,
} from '../src/index.ts';
import { readSpec, worldOf } from './reading.ts';

const text = `
shelter a on s {
  footprint 4 m by 10 m
  bows spaced 1 m of pvc { shape elastic; joint x at 1 m; joint x at 2 m }
}
site s { gust 40 m/s }
`;
const here = originOf('fix');

describe('edits of a spec', () => {
  const { definitions } = worldOf(text);
  const bows = factNode(definitions.get('a'), 'bows')!;
  const edited = (edit: SpecEdit) => applyEdits(definitions, [edit]);

  test('set changes the fact of a block, and leaves all else the very same object', () => {
    const after = edited({
      type: 'set',
      block: bows.origin,
      word: 'spaced',
      slots: { value: quantityValue(0.6, 'length', here) },
    });
    expect(numberIn(factNode(factNode(after.get('a'), 'bows'), 'spaced'))).toBe(0.6);
    expect(after.get('s')).toBe(definitions.get('s'));
    expect(numberIn(factNode(bows, 'spaced'))).toBe(1);
    expect(after.get('a')?.name).toBe('a');
  });

  test('set adds the fact when the block lacks it', () => {
    const after = edited({
      type: 'set',
      block: bows.origin,
      word: 'rise',
      slots: { value: quantityValue(2, 'length', here) },
    });
    expect(numberIn(factNode(factNode(after.get('a'), 'bows'), 'rise'))).toBe(2);
  });

  test('replace changes exactly one of several facts with the same word', () => {
    const second = bows.children.filter((child) => child.word === 'joint')[1]!;
    const after = edited({
      type: 'replace',
      node: second.origin,
      slots: { at: quantityValue(3, 'length', here) },
    });
    const joints = factNode(after.get('a'), 'bows')!.children.filter((child) => child.word === 'joint');
    expect(joints.map((joint) => numberIn(joint, 'at'))).toEqual([1, 3]);
    expect(joints[1]!.slots['item']).toMatchObject({ id: 'x' });
  });

  test('add and remove', () => {
    const foot = specNode('foot', here, {}, []);
    const added = edited({ type: 'add', block: bows.origin, node: foot });
    expect(factNode(factNode(added.get('a'), 'bows'), 'foot')).toBe(foot);
    const removed = applyEdits(added, [{ type: 'remove', node: bows.origin }]);
    expect(factNode(removed.get('a'), 'bows')).toBeUndefined();
    const gone = applyEdits(definitions, [{ type: 'remove', node: definitions.get('s')!.origin }]);
    expect([...gone.keys()]).toEqual(['a']);
  });

  test('an edit that reaches nothing changes nothing and can be told', () => {
    const lost: SpecEdit = { type: 'remove', node: originOf('nowhere') };
    const found: SpecEdit = { type: 'remove', node: bows.origin };
    expect(applyEdits(definitions, [lost]).get('a')).toBe(definitions.get('a'));
    expect(unmatchedEdits(definitions, [lost, found])).toEqual([lost]);
    expect(applyEdits(definitions, [])).toBe(definitions);
  });
});

describe('two specs', () => {
  test('are the same wherever they are written, and differ by any value', () => {
    const [a] = readSpec(text, 'one');
    const [b] = readSpec(`\n\n${text}`, 'two');
    const [c] = readSpec(text.replace('10 m', '11 m'), 'three');
    const [d] = readSpec(text.replace('of pvc', 'of other'), 'four');
    expect(sameSpec(a!, b!)).toBe(true);
    expect(sameSpec(a!, c!)).toBe(false);
    expect(sameSpec(a!, d!)).toBe(false);
  });

  test('a clause said in the line and in the block end as the same', () => {
    const [a] = readSpec('shelter a on s { bows spaced 1 m of pvc }');
    const [b] = readSpec('shelter a on s {\n bows {\n spaced 1 m\n of pvc\n }\n }');
    expect(sameSpec(a!, b!)).toBe(true);
  });
});

describe('a variant', () => {
  const base = readSpec(`${text}`)[0]!;
  const variant = readSpec('variant b of a { bows of steel { rise 2 m }\n cover roof with f }')[0]!;
  const after = varied(base, variant);

  test('says its own facts over those of its shelter', () => {
    const bows = factNode(after, 'bows')!;
    expect(factNode(bows, 'of')!.slots['item']).toMatchObject(plain(itemValue('steel', here)));
    expect(numberIn(factNode(bows, 'spaced'))).toBe(1);
    expect(numberIn(factNode(bows, 'rise'))).toBe(2);
    expect(factNode(after, 'cover')).toBeDefined();
    expect(numberIn(factNode(after, 'footprint'), 'length')).toBe(10);
    expect(after.name).toBe('b');
  });
});

function plain(value: object): object {
  const { origin: _origin, ...rest } = value as { origin?: unknown };
  return rest;
}
