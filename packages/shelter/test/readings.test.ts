/** Items that are found again while what they were read from says the same. */
import { describe, expect, test } from 'vitest';
import { newNotes, originOf, resolveItem, type SpecDefinition, type SpecWorld } from '../src/index.ts';
import { worldOf } from './reading.ts';

const stock = `
material plastic { family pvc; density 1400 kg/m3; modulus 2.8 GPa; bending-strength 48 MPa; shear-strength 20 MPa }
pipe thin { outside 33 mm; wall 3.4 mm; material plastic; sold 20 ft long }
pipe thick like thin { wall 5 mm }
prices { price of thick 3 per piece }
`;

/** The same definitions, object for object, but for those that are given; those of the first text take their place. */
function changed(world: SpecWorld, ...texts: readonly string[]): SpecWorld {
  const others = worldOf(...texts).definitions;
  return { ...world, definitions: new Map<string, SpecDefinition>([...world.definitions, ...others]) };
}

function thick(world: SpecWorld) {
  const notes = newNotes();
  const item = resolveItem('thick', ['pipe'], world, notes, originOf('here'));
  return { item, notes };
}

describe('an item that was read before', () => {
  const world = worldOf(stock);
  const first = thick(world);

  test('is the same object, and what was assumed and wrong is noted again', () => {
    const again = thick(changed(world, 'pipe other like thin { wall 4 mm }'));
    expect(again.item).toBe(first.item);
    expect(again.notes).toEqual(first.notes);
    expect(again.notes.assumed.length).toBeGreaterThan(0);
  });

  test.each([
    [
      'what it is like',
      'pipe thin { outside 34 mm; wall 3.4 mm; material plastic }',
      { section: { outside: 0.034 } },
    ],
    [
      'its material',
      'material plastic { family pvc; density 1500 kg/m3; modulus 2.8 GPa; bending-strength 48 MPa; shear-strength 20 MPa }',
      { material: { density: 1500 } },
    ],
    ['a price list', 'prices { price of thick 4 per piece }', { prices: [{ amount: 4 }] }],
    [
      'one price list more',
      ['', 'prices { price of thick 5 per piece }'],
      { prices: [{ amount: 3 }, { amount: 5 }] },
    ],
    ['itself', 'pipe thick like thin { wall 6 mm }', { section: { wall: 0.006 } }],
  ])('is read anew where %s says something else', (_what, text, says) => {
    const other = thick(changed(world, ...[text].flat()));
    expect(other.item).toMatchObject(says);
    expect(other.item).not.toEqual(first.item);
    expect(thick(world).item).toEqual(first.item);
  });

  test('is none where its material is gone, and again one where that is back', () => {
    const without = new Map(world.definitions);
    without.delete('plastic');
    const lost = thick({ ...world, definitions: without });
    expect(lost.item).toBe(undefined);
    expect(lost.notes.problems.map(({ id }) => id)).toEqual(['unknown-name']);
    expect(thick(world).item).toEqual(first.item);
  });
});
