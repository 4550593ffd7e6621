import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ScatterPoint, scatterChart, toSvg } from '../src/index.ts';
import { overlappingTexts } from './overlapping-texts.ts';
import { xmlProblems } from './well-formed.ts';

const points: readonly ScatterPoint[] = [
  { part: 'variant/1', name: '1', label: 'variant 1, 400, 20 m/s', x: 400, y: 20, mark: 'fails' },
  { part: 'variant/2', name: '2', label: 'variant 2, 520, 31 m/s', x: 520, y: 31, mark: 'front' },
  { part: 'variant/3', name: '3', label: 'variant 3, 640, 30 m/s', x: 640, y: 30, mark: 'holds' },
  { part: 'variant/4', name: '4', label: 'variant 4, 700, 38 m/s', x: 700, y: 38, mark: 'front' },
];
const chartOf = (some: readonly ScatterPoint[], system: 'metric' | 'us' = 'metric') =>
  scatterChart(
    {
      title: 'Variants',
      description: 'Cost against gust.',
      x: { label: 'cost', kind: 'money', unit: 1 },
      y: { label: 'gust', kind: 'speed', unit: system === 'us' ? 0.44704 : 1 },
      points: some,
    },
    { system },
  );

describe('chart of choices', () => {
  it('puts dearer to the right and stronger up, and joins what no other beats', () => {
    const { shapes } = chartOf(points);
    const centre = (part: string) =>
      shapes.flatMap((one) => (one.kind === 'circle' && one.part === part ? [one.centre] : []))[0];
    expect(centre('variant/4')?.x).toBeGreaterThan(centre('variant/2')?.x ?? Number.NaN);
    expect(centre('variant/4')?.y).toBeLessThan(centre('variant/2')?.y ?? Number.NaN);
    const front = shapes.find(({ part }) => part === 'front');
    expect(front?.kind === 'polyline' && front.points).toEqual([centre('variant/2'), centre('variant/4')]);
  });
  it('tells marks apart by shape, with a key, numbers and units on the scales', () => {
    const svg = toSvg(chartOf(points, 'us'), 'paper');
    expect(xmlProblems(svg)).toEqual([]);
    for (const words of ['no other beats it', 'nothing fails', 'something fails'])
      expect(svg).toContain(words);
    expect(svg).toMatch(/\d+ mph/);
    expect(
      chartOf(points)
        .shapes.filter(({ part }) => part === 'variant/1')
        .map(({ kind }) => kind),
    ).toContain('path');
  });
  it('keeps every mark on the sheet and names apart, whatever the numbers', () => {
    const one = fc.record({
      x: fc.double({ min: 0, max: 1e5, noNaN: true }),
      y: fc.double({ min: 0, max: 90, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(one, { minLength: 1, maxLength: 12 }), (places) => {
        const drawing = chartOf(
          places.map((place, index) => ({
            ...place,
            part: `variant/${index}`,
            name: String(index),
            label: '',
            mark: 'holds',
          })),
        );
        expect(overlappingTexts(drawing)).toEqual([]);
        for (const shape of drawing.shapes)
          if (shape.kind === 'circle') {
            expect(shape.centre.x).toBeGreaterThanOrEqual(0);
            expect(shape.centre.x).toBeLessThanOrEqual(drawing.width);
            expect(shape.centre.y).toBeGreaterThanOrEqual(0);
            expect(shape.centre.y).toBeLessThanOrEqual(drawing.height);
          }
      }),
      {
        numRuns: 40,
        examples: [
          [
            [
              { x: 0, y: 5e-324 },
              { x: 0, y: 0 },
            ],
          ],
        ],
      },
    );
  });
  it('refuses what cannot be drawn', () => {
    expect(() => chartOf([])).toThrow(RangeError);
    expect(() => chartOf([{ ...(points[0] as ScatterPoint), y: Number.NaN }])).toThrow(RangeError);
  });
});
