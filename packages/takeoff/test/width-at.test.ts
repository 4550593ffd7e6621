/** How wide a roof is where a tie goes through it. */
import { gableLine, singleSlopeLine } from '@tautline/shelter';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { widthAt } from '../src/lines/split.ts';

const span = fc.double({ min: 1, max: 20, noNaN: true });
const slope = fc.double({ min: 0.05, max: 1.2, noNaN: true });

describe('the width of a roof', () => {
  it('is the span at the eaves of any gable', () => {
    fc.assert(
      fc.property(span, slope, fc.integer({ min: 0, max: 20 }), (wide, steep, camber) => {
        expect(widthAt(gableLine(wide, (wide / 2) * steep, (camber / 1000) * wide), 0)).toBeCloseTo(wide, 6);
      }),
    );
  });

  it('is half the span half way up straight rafters, and none over the ridge or of one slope', () => {
    fc.assert(
      fc.property(span, slope, (wide, steep) => {
        const rise = (wide / 2) * steep;
        expect(widthAt(gableLine(wide, rise, 0), rise / 2)).toBeCloseTo(wide / 2, 6);
        expect(widthAt(gableLine(wide, rise, 0), rise * 1.01)).toBe(undefined);
        expect(widthAt(singleSlopeLine(wide, rise, 0), rise / 2)).toBe(undefined);
      }),
    );
  });
});
