import { WATER } from '@tautline/mechanics';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fullTrough, troughWith } from '../src/index.ts';

describe('water in a hanging film', () => {
  it('fills a parabola of two thirds of span times sag', () => {
    expect(fullTrough(3, 0.3)).toBeCloseTo(0.6, 12);
    const full = troughWith(3, 0.3, 99);
    expect([full.area, full.width, full.depth]).toEqual([0.6, 3, 0.3].map((v) => expect.closeTo(v, 12)));
  });

  it('pulls across with M / d, M the moment of its load on a beam (integrated by strips)', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 8, noNaN: true }),
        fc.double({ min: 0.05, max: 0.3, noNaN: true }),
        fc.double({ min: 0.02, max: 1, noNaN: true }),
        (span, share, filled) => {
          const sag = share * span;
          const { area, width, depth, across, down } = troughWith(span, sag, filled * fullTrough(span, sag));
          const strips = 2000;
          let weight = 0;
          let moment = 0;
          for (let k = 0; k < strips; k++) {
            const x = ((k + 0.5) / strips) * (width / 2);
            const load = WATER * depth * (1 - (2 * x) / width) * (1 + (2 * x) / width) * (width / 2 / strips);
            weight += load;
            moment += load * x;
          }
          expect(weight / down).toBeCloseTo(1, 5);
          expect((2 * weight) / (WATER * area)).toBeCloseTo(1, 5);
          expect((weight * (span / 2) - moment) / sag / across).toBeCloseTo(1, 5);
        },
      ),
    );
  });
});
