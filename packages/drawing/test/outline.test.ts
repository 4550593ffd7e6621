import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { band, hatch, offsetLine, pointAlong } from '../src/scene/outline.ts';
import { type Point, point } from '../src/scene/shapes.ts';
import { spread } from '../src/views/pipe-bar.ts';

const area = (points: readonly Point[]): number =>
  Math.abs(
    points.reduce((sum, p, i) => {
      const q = points[(i + 1) % points.length]!;
      return sum + p.x * q.y - q.x * p.y;
    }, 0) / 2,
  );

describe('outlines', () => {
  it('a band along a quarter circle has area radius x angle x depth', () => {
    const points = Array.from({ length: 400 }, (_, i) => {
      const turn = (i / 399) * (Math.PI / 2);
      return point(2 * Math.cos(turn), 2 * Math.sin(turn));
    });
    expect(area(band(points, 0.1))).toBeCloseTo(2 * (Math.PI / 2) * 0.1, 4);
  });
  it('an offset keeps its distance through points that coincide', () => {
    const moved = offsetLine([point(0, 0), point(1, 0), point(1, 1e-9), point(1, 0), point(2, 0)], 0.5);
    for (const p of moved) expect(p.y).toBeCloseTo(0.5, 6);
  });
  it('a mitred corner stays parallel on both sides', () => {
    const [, corner] = offsetLine([point(0, 0), point(1, 0), point(1, 1)], 0.1);
    expect(corner!.x).toBeCloseTo(0.9, 9);
    expect(corner!.y).toBeCloseTo(0.1, 9);
  });
  it('hatch strokes cover length x spacing = area', () => {
    const square = [point(0, 0), point(100, 0), point(100, 60), point(0, 60)];
    for (const degrees of [0, 30, 45, 90, -50]) {
      const total = hatch(square, degrees, 0.5).reduce(
        (sum, [a, b]) => sum + Math.hypot(b!.x - a!.x, b!.y - a!.y),
        0,
      );
      expect((total * 0.5) / 6000).toBeCloseTo(1, 1.7);
    }
  });
  it('a place along a line is found and clamped', () => {
    const bent = [point(0, 0), point(3, 0), point(3, 4)];
    expect(pointAlong(bent, 5).at).toEqual(point(3, 2));
    expect(pointAlong(bent, 99).at).toEqual(point(3, 4));
    expect(pointAlong(bent, -1).at).toEqual(point(0, 0));
  });
  it('spread marks keep order and gap, and stay put where there is room', () => {
    expect(spread([0, 100, 200], 20)).toEqual([0, 100, 200]);
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 500, noNaN: true }), { minLength: 2, maxLength: 12 }),
        (marks) => {
          const out = spread(
            [...marks].sort((a, b) => a - b),
            20,
          );
          for (let i = 1; i < out.length; i++)
            expect(out[i]! - out[i - 1]!).toBeGreaterThanOrEqual(20 - 1e-6);
        },
      ),
    );
  });
});
