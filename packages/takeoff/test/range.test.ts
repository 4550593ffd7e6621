import type { Range } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
import { rangeTakeoff, takeoff } from '../src/index.ts';
import { bows, origin, pvc, shelter } from './fixture.ts';

const one = shelter({ roof: bows({}) });
const rangeOf = (count: number, more: Partial<Range> = {}): Range => ({
  name: 'rows',
  origin,
  places: Array.from({ length: count }, (_, k) => ({
    id: 'stand-1',
    origin,
    shelter: one,
    x: k * (one.width + 1),
  })),
  gap: 1,
  width: count * one.width + count - 1,
  acceptances: [],
  assumed: [],
  unmodelled: [],
  ...more,
});

describe('a range', () => {
  it('takes as much of everything as its shelters together', () => {
    const single = new Map(takeoff(one).lines.map((line) => [line.id, line]));
    const all = rangeTakeoff(rangeOf(4)).lines;
    expect(all.length).toBe(single.size);
    for (const line of all) {
      const alone = single.get(line.id)!;
      expect(line.total).toBeCloseTo(4 * alone.total, 9);
      const pieces = (of: typeof line) => of.pieces?.reduce((sum, { count }) => sum + count, 0);
      expect(pieces(line)).toBe(alone.pieces === undefined ? undefined : 4 * pieces(alone)!);
    }
  });

  it('is tied across each gap along the whole length, each tie reaching over both frames', () => {
    const spacing = one.length / 4;
    const tied = rangeTakeoff(rangeOf(3, { tie: { member: pvc, spacing, origin } })).lines;
    const ties = tied.flatMap((line) => line.pieces ?? []).filter(({ note }) => note === 'tie to the next');
    // Two gaps, five ties in each; 1 m of gap and 0.15 m at both ends.
    expect(ties).toEqual([expect.objectContaining({ count: 10 })]);
    expect(ties[0]!.length).toBeCloseTo(1.3, 12);
  });

  it('of one shelter is that shelter', () => {
    expect(rangeTakeoff(rangeOf(1)).lines).toEqual(takeoff(one).lines);
  });
});
