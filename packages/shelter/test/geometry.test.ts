import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  bowShape,
  type CurvePoint,
  circularLine,
  coldBentLine,
  crownOf,
  gableLine,
  heightAt,
  lengthOf,
  pointedLine,
  pointOn,
  sharpestOf,
  singleSlopeLine,
  stationsAlong,
} from '../src/index.ts';

const spans = fc.double({ min: 0.5, max: 20, noNaN: true });

/** Length of the polygon through the points: a little under the length of the curve. */
function polygon(line: readonly CurvePoint[]): number {
  return line.slice(1).reduce((sum, b, n) => sum + Math.hypot(b.x - line[n]!.x, b.y - line[n]!.y), 0);
}

function soundLine(line: readonly CurvePoint[], span: number): void {
  const last = line.at(-1)!;
  expect(last.x).toBeCloseTo(span, 6);
  expect(last.y).toBeCloseTo(0, 6);
  for (const [n, point] of line.entries()) {
    for (const value of [point.s, point.x, point.y, point.angle, point.curvature])
      expect(value).toSatisfy(Number.isFinite);
    if (n > 0) expect(point.s).toBeGreaterThanOrEqual(line[n - 1]!.s);
    // Mirror image about the middle.
    const twin = line[line.length - 1 - n]!;
    expect(point.x + twin.x).toBeCloseTo(span, 5);
    expect(point.y).toBeCloseTo(twin.y, 5);
  }
  expect(polygon(line)).toBeLessThanOrEqual(lengthOf(line) * (1 + 1e-9));
  expect(polygon(line)).toBeGreaterThan(lengthOf(line) * 0.995);
}

describe('round bows', () => {
  test('a half circle is pi times half its span long, its curvature one over half the span', () => {
    const line = circularLine(6, 3);
    expect(lengthOf(line)).toBeCloseTo(3 * Math.PI, 10);
    expect(sharpestOf(line).curvature).toBeCloseTo(1 / 3, 12);
    expect(line[0]!.angle).toBeCloseTo(Math.PI / 2, 12);
  });

  test('arcs of any span and rise stand on both feet and reach their rise', () => {
    fc.assert(
      fc.property(spans, fc.double({ min: 0.05, max: 1.5, noNaN: true }), (span, share) => {
        const line = circularLine(span, share * span);
        soundLine(line, span);
        expect(crownOf(line).y).toBeCloseTo(share * span, 9);
      }),
      { numRuns: 60 },
    );
  });

  test('cold-bent bows run upright, bend tangentially and reach their rise', () => {
    fc.assert(
      fc.property(
        spans,
        fc.double({ min: 0.05, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 2, noNaN: true }),
        (span, share, leg) => {
          const bent = coldBentLine(span, leg + (share * span) / 2, leg)!;
          soundLine(bent.line, span);
          expect(bent.line[0]!.angle).toBe(Math.PI / 2);
          expect(crownOf(bent.line).y).toBeCloseTo(leg + (share * span) / 2, 9);
          expect(bent.cornerRadius).toBeLessThanOrEqual(bent.crownRadius * (1 + 1e-9));
          for (const [n, point] of bent.line.entries()) {
            if (n > 0) expect(Math.abs(point.angle - bent.line[n - 1]!.angle)).toBeLessThan(0.12);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  test('a cold-bent bow over legs that leave half its span is a half circle on legs', () => {
    const bent = coldBentLine(4, 3, 1)!;
    expect(bent.cornerRadius).toBe(2);
    expect(lengthOf(bent.line)).toBeCloseTo(2 + 2 * Math.PI, 10);
    expect(coldBentLine(4, 3.5, 1)).toBeUndefined();
    expect(coldBentLine(4, 1, 1)).toBeUndefined();
  });

  test('pointed bows have a real ridge, upright feet when tall', () => {
    const tall = pointedLine(4, 3);
    soundLine(tall, 4);
    const peak = tall.findIndex((point, n) => n > 0 && point.s === tall[n - 1]!.s);
    expect(tall[peak - 1]!.angle).toBeGreaterThan(0.1);
    expect(tall[peak]!.angle).toBeCloseTo(-tall[peak - 1]!.angle, 10);
    // 60 degrees of slope or more leaves room for upright feet.
    expect(pointedLine(2, 1.8)[0]!.angle).toBeCloseTo(Math.PI / 2, 10);
  });

  test('a bow of given length is as long as asked', () => {
    for (const shape of ['arc', 'cold-bent', 'pointed', 'elastic'] as const) {
      const bow = bowShape({ shape, span: 4, length: 6 });
      expect(bow.ok && bow.length).toBeCloseTo(6, 6);
      const again = bow.ok ? bowShape({ shape, span: 4, rise: bow.rise }) : bow;
      expect(again.ok && again.length, shape).toBeCloseTo(6, 4);
    }
  });

  test('an elastic bow clamped at the lean of a free one is the free one', () => {
    const free = bowShape({ shape: 'elastic', span: 3.6, length: 6 });
    const held = bowShape({
      shape: 'elastic',
      span: 3.6,
      length: 6,
      lean: free.ok ? free.line[0]!.angle : 0,
    });
    expect(free.ok && held.ok && held.rise).toBeCloseTo(free.ok ? free.rise : 0, 5);
  });

  test('upright stubs lift the shoulders and lower the crown of a bow that would lean in', () => {
    const free = bowShape({ shape: 'elastic', span: 3.6, length: 6 });
    const upright = bowShape({ shape: 'elastic', span: 3.6, length: 6, lean: Math.PI / 2 });
    if (!free.ok || !upright.ok) throw new Error('both can be formed');
    expect(upright.rise).toBeLessThan(free.rise);
    expect(heightAt(upright.line, 0.2)!).toBeGreaterThan(heightAt(free.line, 0.2)!);
  });

  test('what cannot be bent is refused in words', () => {
    expect(bowShape({ shape: 'elastic', span: 4, length: 3.9 }).ok).toBe(false);
    expect(bowShape({ shape: 'arc', span: 4, length: 4 }).ok).toBe(false);
    expect(bowShape({ shape: 'arc', span: 4 }).ok).toBe(false);
    expect(bowShape({ shape: 'cold-bent', span: 4, rise: 2, leg: 2 }).ok).toBe(false);
    expect(bowShape({ shape: 'cold-bent', span: 4, length: 20, leg: 1 }).ok).toBe(false);
  });
});

describe('rafters', () => {
  test('straight ones are as long as Pythagoras says', () => {
    expect(lengthOf(gableLine(6, 4, 0))).toBeCloseTo(10, 12);
    expect(lengthOf(singleSlopeLine(4, 3, 0))).toBeCloseTo(5, 12);
    soundLine(gableLine(6, 4, 0), 6);
  });

  test('camber lifts the middle of the rafter square off its chord and leaves its ends', () => {
    const line = gableLine(6, 4, 0.05);
    soundLine(line, 6);
    const middle = pointOn(line, lengthOf(line) / 4);
    expect(Math.hypot(middle.x - 1.5, middle.y - 2)).toBeCloseTo(0.05, 6);
    expect(crownOf(line)).toMatchObject({ x: expect.closeTo(3, 9), y: expect.closeTo(4, 9) });
  });
});

describe('reading a line', () => {
  test('a point on an arc lies on its circle', () => {
    const line = circularLine(6, 3);
    for (const s of [0, 0.37, 2.2, 4.7, 9]) {
      const point = pointOn(line, s);
      expect(Math.hypot(point.x - 3, point.y)).toBeCloseTo(3, 9);
      expect(point.angle).toBeCloseTo(Math.PI / 2 - s / 3, 9);
    }
  });

  test('height across a half circle', () => {
    const line = circularLine(6, 3);
    expect(heightAt(line, 1)!).toBeCloseTo(Math.sqrt(9 - 4), 2);
    expect(heightAt(line, -0.1)).toBeUndefined();
    expect(heightAt(line, 6.1)).toBeUndefined();
  });

  test('beside the foot of a bulging bow the part overhead counts', () => {
    const line = circularLine(4, 3.5);
    expect(heightAt(line, 0)!).toBeGreaterThan(1);
  });
});

describe('stations', () => {
  test('stand at both ends and every spacing, the last bay shorter', () => {
    expect(stationsAlong(10, 3)).toEqual([0, 3, 6, 9, 10]);
    expect(stationsAlong(12.192, 1.2192)).toHaveLength(11);
    expect(stationsAlong(2, 3)).toEqual([0, 2]);
  });

  test('are refused when there would be none or thousands', () => {
    for (const [length, spacing] of [
      [10, 0],
      [10, -1],
      [0, 1],
      [10, 1e-4],
      [Number.NaN, 1],
    ] as const)
      expect(stationsAlong(length, spacing)).toBeUndefined();
  });

  test('never stand further apart than asked', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 200, noNaN: true }),
        fc.double({ min: 0.2, max: 10, noNaN: true }),
        (length, spacing) => {
          const stations = stationsAlong(length, spacing)!;
          expect(stations[0]).toBe(0);
          expect(stations.at(-1)).toBe(length);
          stations.slice(1).forEach((z, n) => {
            expect(z - stations[n]!).toBeGreaterThan(0);
            expect(z - stations[n]!).toBeLessThan(spacing + 0.006);
          });
        },
      ),
    );
  });
});
