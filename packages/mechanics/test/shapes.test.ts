import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arcOf, bentLine, clampedBow, heldBow, leggedArc, pinnedBow } from '../src/index.ts';

const any = fc.oneof(
  fc.double({ min: 0.01, max: 20, noNaN: true }),
  fc.constantFrom(0, -1, Number.NaN, Number.POSITIVE_INFINITY, 1e-12, 1e12),
);
const given2 = fc.record({
  span: fc.option(any, { nil: undefined }),
  rise: fc.option(any, { nil: undefined }),
  length: fc.option(any, { nil: undefined }),
});

/** Every number in an answer, nested ones included. */
const numbers = (value: unknown): number[] =>
  typeof value === 'number'
    ? [value]
    : value && typeof value === 'object'
      ? Object.values(value).flatMap(numbers)
      : [];

const sound = (answer: { ok: boolean }) => !answer.ok || numbers(answer).every(Number.isFinite);

describe('shapes', () => {
  it('whatever is asked, the answer is finite or a reason (property)', () => {
    fc.assert(
      fc.property(
        given2,
        (given) => sound(pinnedBow(given)) && sound(arcOf(given)) && sound(leggedArc(given, 0.4)),
      ),
      { numRuns: 400 },
    );
  });

  it('clamped and held bows too (property)', () => {
    const length = fc.double({ min: 0.5, max: 9, noNaN: true });
    fc.assert(
      fc.property(
        length,
        length,
        length,
        fc.double({ min: -1, max: 3.1, noNaN: true }),
        (span, long, height, lean) =>
          [
            clampedBow({ span, length: long }, lean),
            clampedBow({ span, rise: height }, lean),
            heldBow({ span, length: long }, height),
          ].every(sound),
      ),
      { numRuns: 25 },
    );
  });

  it('refuses what cannot be', () => {
    for (const given of [
      { span: 6, length: 6 },
      { span: 7, length: 6 },
      { rise: 3, length: 6 },
      { span: 4 },
      { span: 4, rise: 1, length: 5 },
      { span: -1, length: 3 },
    ])
      expect(pinnedBow(given).ok, JSON.stringify(given)).toBe(false);
  });

  it('a pinned bow keeps its length, whichever two are given (property)', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 0.999, noNaN: true }), (ratio) => {
        const bow = pinnedBow({ span: ratio, length: 1, points: 201 });
        if (!bow.ok) return false;
        let along = 0;
        for (let k = 1; k <= 200; k++) {
          const [a, b] = [bow.line[k - 1]!, bow.line[k]!];
          // a chord of an arc: chord·(half angle)/sin(half angle)
          const half = (a.angle - b.angle) / 2;
          along += (Math.hypot(b.x - a.x, b.y - a.y) * half) / Math.sin(half || 1e-300);
        }
        const back = pinnedBow({ span: ratio, rise: bow.rise });
        return Math.abs(along - 1) < 1e-6 && back.ok && Math.abs(back.length - 1) < 1e-7;
      }),
    );
  });

  it('shooting finds the pinned elastica again: feet clamped at its own lean carry no moment', () => {
    const pinnedOne = pinnedBow({ span: 4.2, length: 6.1 });
    if (!pinnedOne.ok) throw new Error(pinnedOne.reason);
    const again = clampedBow({ span: 4.2, length: 6.1 }, pinnedOne.endAngle);
    if (!again.ok) throw new Error(again.reason);
    expect(again.endMomentOverEI).toBeCloseTo(0, 7);
    expect(again.rise).toBeCloseTo(pinnedOne.rise, 8);
    expect(again.thrustOverEI).toBeCloseTo(pinnedOne.thrustOverEI, 7);
  });

  it('feet that lean apart as a circular arc does make a circular arc, two leans included', () => {
    const arc = arcOf({ span: 4, length: 5.5 });
    if (!arc.ok) throw new Error(arc.reason);
    for (const lean of [arc.halfAngle, { start: arc.halfAngle, end: arc.halfAngle + 1e-9 }]) {
      const bow = clampedBow({ span: 4, length: 5.5 }, lean);
      if (!bow.ok) throw new Error(bow.reason);
      expect(bow.maxCurvature).toBeCloseTo(1 / arc.radius, 6);
      expect(bow.thrustOverEI).toBeCloseTo(0, 6);
    }
  });

  it('a crown held down is pushed up by the bow, held up it needs a push', () => {
    const free = pinnedBow({ span: 4, length: 6 });
    if (!free.ok) throw new Error(free.reason);
    const low = heldBow({ span: 4, length: 6 }, free.rise - 0.05);
    const high = heldBow({ span: 4, length: 6 }, free.rise + 0.05);
    if (!low.ok || !high.ok) throw new Error('refused');
    expect(low.contactForceOverEI).toBeLessThan(0);
    expect(high.contactForceOverEI).toBeGreaterThan(0);
  });

  it('bends and straights: a hoop of two legs and a half circle closes on its span and marks its bend', () => {
    const hoop = bentLine(
      [
        { kind: 'straight', length: 1 },
        { kind: 'arc', radius: 2, angle: Math.PI },
        { kind: 'straight', length: 1 },
      ],
      Math.PI / 2,
      0.25,
    );
    const last = hoop.line.at(-1)!;
    expect(last.x).toBeCloseTo(4, 12);
    expect(last.y).toBeCloseTo(0, 12);
    expect(hoop.length).toBeCloseTo(2 + 2 * Math.PI, 12);
    expect(hoop.marks).toEqual([{ from: 1, to: 1 + 2 * Math.PI, radius: 2, angle: Math.PI }]);
    const legged = leggedArc({ span: 4, rise: 3 }, 1);
    if (!legged.ok) throw new Error(legged.reason);
    expect(legged.radius).toBeCloseTo(2, 9);
    expect(legged.length).toBeCloseTo(hoop.length, 9);
  });
});
