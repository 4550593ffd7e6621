import type { Inflated } from '@tautline/shelter';
import { originOf } from '@tautline/shelter';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { innerArc, loadOnPlan, onOuterFilm, outerArc, pullOfFan } from '../src/film/blown-film.ts';

const roof = (span: number, rise: number, hang: number, pressure = 60): Inflated => ({
  id: 'inflated',
  type: 'inflated',
  origin: originOf('test'),
  pressure,
  span,
  rise,
  hang,
  answered: 600,
  springing: 2,
  spacing: 1,
  stations: [0, 1],
  line: [],
});

const shapes = fc.record({
  span: fc.double({ min: 1, max: 12, noNaN: true }),
  share: fc.double({ min: 0.03, max: 0.45, noNaN: true }),
});

describe('blown-up films at their rails', () => {
  it('pull with p S² / 8 f where they are flat (cable under an even load, general mechanics)', () => {
    const flat = roof(4, 0.04, 0.04);
    expect(pullOfFan(flat) / ((2 * 60 * 16) / (8 * 0.04))).toBeCloseTo(1, 3);
  });

  it('turn an even suction into T = p R along the film: lift p S / 2, pull p R cos α (membrane)', () => {
    fc.assert(
      fc.property(shapes, fc.double({ min: 1, max: 2000, noNaN: true }), ({ span, share }, suction) => {
        const one = roof(span, share * span, span / 10);
        const { radius, slope } = outerArc(one);
        const { left, right } = onOuterFilm(one, () => -suction);
        expect(left.y / ((suction * span) / 2)).toBeCloseTo(1, 6);
        expect(right.y / ((suction * span) / 2)).toBeCloseTo(1, 6);
        expect(left.x / (suction * radius * Math.cos(slope))).toBeCloseTo(1, 6);
        expect(left.x + right.x).toBeCloseTo(0, 6);
        expect(Math.hypot(left.x, left.y) / (suction * radius)).toBeCloseTo(1, 6);
      }),
    );
  });

  it('stay in balance with any wind: the two rails take all of it, and none of its turning is left', () => {
    fc.assert(
      fc.property(
        shapes,
        fc.array(fc.double({ min: -500, max: 500, noNaN: true }), { minLength: 3, maxLength: 3 }),
        ({ span, share }, zones) => {
          const one = roof(span, share * span, span / 10);
          const at = (from: number, to: number): number =>
            zones[Math.min(2, Math.floor((3 * (from + to)) / 2))]!;
          const { left, right } = onOuterFilm(one, at);
          // Every pressure on a circle points to its middle, a depth below the rails: no moment about it.
          const { radius, slope } = outerArc(one);
          const depth = radius * Math.cos(slope);
          const turning = (span / 2) * (right.y - left.y) - depth * (left.x + right.x);
          const size = Math.abs(left.y) + Math.abs(right.y) + Math.abs(left.x) + Math.abs(right.x) + 1;
          expect(Math.abs(turning) / (size * span)).toBeLessThan(1e-9);
        },
      ),
    );
  });

  it('let snow relieve the pull by s S² / 8 f, a one-sided load leaning on its own side', () => {
    const one = roof(4, 0.5, 0.5);
    const even = loadOnPlan(one, () => 100);
    expect(even.left.x).toBeCloseTo(-(100 * 16) / (8 * 0.5), 9);
    expect(even.left.y).toBeCloseTo(-200, 9);
    const half = loadOnPlan(one, (share) => (share < 0.5 ? 100 : 0));
    expect(half.left.y).toBeCloseTo(-150, 9);
    expect(half.right.y).toBeCloseTo(-50, 9);
  });

  it('bulge alike when they rise and hang alike', () => {
    const one = roof(4, 0.6, 0.6);
    expect(innerArc(one)).toEqual(outerArc(one));
  });
});
