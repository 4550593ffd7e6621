import type { Cap, Foot, Inflated, Shelter } from '@tautline/shelter';
import { originOf } from '@tautline/shelter';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toSvg, views } from '../src/index.ts';
import { arcOver, stations } from './fixtures/curves.ts';
import { film } from './fixtures/items.ts';
import { shelters, smallArch } from './fixtures/shelters.ts';
import { overlappingTexts } from './overlapping-texts.ts';
import { xmlProblems } from './well-formed.ts';

/** The same house with another length and spacing, its posts on every second frame. */
function relaid(shelter: Shelter, spacing: number, bays: number): Shelter {
  const length = spacing * bays;
  const places = stations(length, spacing);
  const posts = (row: Shelter['sidePosts']) =>
    row && { ...row, spacing: spacing * 2, stations: places.filter((_, i) => i % 2 === 0) };
  const { ridge, sidePosts, ...rest } = shelter;
  const side = posts(sidePosts);
  return {
    ...rest,
    length,
    roof: { ...shelter.roof, spacing, stations: places },
    ...(side ? { sidePosts: side } : {}),
    ...(ridge ? { ridge: ridge.posts ? { ...ridge, posts: posts(ridge.posts)! } : ridge } : {}),
  };
}

function problems(shelter: Shelter): readonly string[] {
  return Object.values(views).flatMap((view) => {
    const drawing = view(shelter, { system: 'us' });
    return drawing
      ? [...overlappingTexts(drawing), ...xmlProblems(toSvg(drawing, 'paper'))].map(
          (problem) => `${drawing.view}: ${problem}`,
        )
      : [];
  });
}

describe('drawings of houses of other sizes', () => {
  it('stay legible from two bays to fifty', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...shelters.map(({ name }) => name)),
        fc.double({ min: 0.45, max: 2.4, noNaN: true }),
        fc.integer({ min: 2, max: 50 }),
        (name, spacing, bays) => {
          const shelter = shelters.find((one) => one.name === name)!;
          expect(problems(relaid(shelter, spacing, bays))).toEqual([]);
        },
      ),
      { numRuns: 25 },
    );
  }, 60_000);
});

describe('roofs without bows', () => {
  const origin = originOf('fixture');
  const line = arcOver(2.4, 0.5, 0, 0.3);
  const shared = {
    id: 'roof',
    origin,
    spacing: 1.2,
    stations: stations(6, 1.2),
    span: 2.4,
    rise: 0.5,
    springing: 0.3,
    line,
  };
  const resting: Foot = { id: 'cap/foot', origin, kind: 'bearing', driven: 0, fixity: 'pinned' };
  const cap: Cap = { ...shared, type: 'cap', sheet: film, foot: resting };
  const inflated: Inflated = { ...shared, type: 'inflated', pressure: 60, hang: 0.2, answered: 600 };
  const { ridge: _ridge, ...bare } = smallArch;
  for (const roof of [cap, inflated])
    it(`draw a ${roof.type} roof in every view but the bend template`, () => {
      const shelter: Shelter = { ...bare, roof, covers: [], length: 6 };
      expect(problems(shelter)).toEqual([]);
      expect(views['bend-template'](shelter, { system: 'metric' })).toBeUndefined();
      expect(views.section(shelter, { system: 'metric' }).shapes.some(({ part }) => part === 'roof')).toBe(
        true,
      );
    });
});
