import { format } from '@tautline/quantity';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type DimensionShape, views } from '../src/index.ts';
import { outlinesOverlap } from '../src/scene/bounds.ts';
import { dimensionParts, stackDimensions } from '../src/scene/dimension.ts';
import { textCorners } from '../src/scene/lettering.ts';
import { point } from '../src/scene/shapes.ts';
import { exactLength } from '../src/views/exact.ts';
import { coldBent, emtGable, shelters, smallArch, timberGable } from './fixtures/shelters.ts';

const dimensionsOf = (shapes: readonly { readonly kind: string }[]): readonly DimensionShape[] =>
  shapes.filter((shape): shape is DimensionShape => shape.kind === 'dimension');

const values = (shapes: readonly { readonly kind: string }[]): Record<string, number> =>
  Object.fromEntries(dimensionsOf(shapes).map(({ name, value }) => [name, value]));

describe('dimensions', () => {
  for (const shelter of shelters)
    for (const system of ['metric', 'us'] as const)
      for (const name of ['section', 'plan', 'side', 'setting-out'] as const)
        it(`of the ${name} of ${shelter.name} measure what they say, ${system}`, () => {
          const drawing = views[name](shelter, { system });
          const all = dimensionsOf(drawing.shapes);
          expect(all.length).toBeGreaterThan(1);
          for (const shape of all) {
            const length = Math.hypot(shape.to.x - shape.from.x, shape.to.y - shape.from.y);
            expect(length / (drawing.scale ?? 1), shape.text).toBeCloseTo(shape.value, 3);
            const text =
              name === 'setting-out'
                ? exactLength(shape.value, system)
                : format(shape.value, 'length', system);
            expect(shape.text).toContain(text);
            expect(shape.text).toContain(shape.name);
          }
        });

  it('of sections carry the values of the model', () => {
    expect(values(views.section(smallArch, { system: 'metric' }).shapes)).toMatchObject({
      width: 2.4,
      height: 1.6,
      'first row': 0.35,
      'ridge post': 1.494,
    });
    expect(values(views.section(coldBent, { system: 'metric' }).shapes)).toMatchObject({
      leg: 1.2,
      deep: 0.6,
    });
    expect(values(views.section(emtGable, { system: 'metric' }).shapes)).toMatchObject({
      springing: 2,
      rise: 1,
      height: 3,
      post: 2,
      deep: 0.5,
      'side cover': 2,
    });
    expect(values(views.side(timberGable, { system: 'metric' }).shapes)).toMatchObject({
      length: 6,
      bay: 0.75,
      posts: 1.5,
    });
  });

  it('give the headroom under a straight rafter by its slope', () => {
    // Underside of a rafter of half depth d on a slope a: y = eave + x tan a - d / cos a.
    const slope = Math.atan2(1, 1.8);
    const expected = 2 + 0.4 * Math.tan(slope) - 0.0295 / 2 / Math.cos(slope);
    expect(values(views.section(emtGable, { system: 'metric' }).shapes).headroom).toBeCloseTo(expected, 6);
  });

  it('never run into one another when stacked on one side', () => {
    const item = fc.record({
      a: fc.double({ min: 0, max: 600, noNaN: true }),
      length: fc.double({ min: 1, max: 400, noNaN: true }),
      text: fc.string({ minLength: 1, maxLength: 24 }),
    });
    fc.assert(
      fc.property(
        fc.array(item, { minLength: 1, maxLength: 9 }),
        fc.constantFrom('below', 'left'),
        (items, side) => {
          const stacked = stackDimensions(
            side as 'below' | 'left',
            0,
            items.map(({ a, length, text }) => ({
              part: 'x',
              name: '',
              value: length,
              text,
              from: side === 'below' ? point(a, 0) : point(0, a),
              to: side === 'below' ? point(a + length, 0) : point(0, a + length),
            })),
          );
          const boxes = stacked.flatMap((shape) =>
            dimensionParts(shape).flatMap((part) => (part.kind === 'text' ? [textCorners(part)] : [])),
          );
          for (const [i, box] of boxes.entries())
            for (const other of boxes.slice(i + 1)) expect(outlinesOverlap(box, other)).toBe(false);
        },
      ),
      { numRuns: 200 },
    );
  });
});
