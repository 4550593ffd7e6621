/** A joint is counted on with the factors of what it joins. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DURATIONS, jointShare, type MemberInput, memberResistance } from '../src/index.ts';

const pvc = {
  family: 'pvc',
  basis: 'asce7-asd',
  bendingStrength: 48.3e6,
  shearStrength: 24e6,
  modulus: 2.8e9,
  temperature: 22.8,
  duration: 'gust',
} as const satisfies MemberInput;

describe('what a joint may be counted on for', () => {
  it('is half of its short-term strength in a gust, as of the pressure pipe itself (ASTM D2837 practice)', () => {
    expect(jointShare(pvc).share).toBeCloseTo(0.5, 12);
  });

  it('is 0.5 · 27.6/48.3 of it, and a little more, under what stays for ten years', () => {
    // The hydrostatic design basis is that of 100,000 h, ten years are 87,600 h.
    const { share } = jointShare({ ...pvc, duration: 'permanent' });
    expect(share).toBeGreaterThan((0.5 * 27.6) / 48.3);
    expect(share).toBeLessThan((0.5 * 27.6) / 48.3 + 0.003);
  });

  it('is 1/1.67 of it in steel by allowable stress, 0.9 by strength, all of it with the factors of EN 1990', () => {
    const steel = { ...pvc, family: 'steel', outside: 0.0349, wall: 0.0013 } as const;
    expect(jointShare(steel).share).toBeCloseTo(1 / 1.67, 12);
    expect(jointShare({ ...steel, basis: 'asce7-strength' }).share).toBeCloseTo(0.9, 12);
    expect(jointShare({ ...steel, basis: 'eurocode' }).share).toBe(1);
  });

  it('falls with the time the load stays and with the heat, as that of the member does', () => {
    const warmth = fc.double({ min: 23, max: 60, noNaN: true });
    fc.assert(
      fc.property(warmth, warmth, fc.constantFrom('pvc', 'timber', 'bamboo'), (a, b, family) => {
        const at = (temperature: number, duration: MemberInput['duration']): number =>
          jointShare({ ...pvc, family, temperature, duration }).share;
        expect(at(Math.max(a, b), 'gust')).toBeLessThanOrEqual(at(Math.min(a, b), 'gust') + 1e-12);
        const longest = DURATIONS.map((duration) => at(a, duration));
        expect(Math.min(...longest)).toBeCloseTo(at(a, 'permanent'), 12);
        expect(Math.max(...longest)).toBeCloseTo(at(a, 'gust'), 12);
        expect(jointShare({ ...pvc, family }).share).toBeCloseTo(
          Math.min(1, memberResistance({ ...pvc, family }).bending / pvc.bendingStrength),
          12,
        );
      }),
      { numRuns: 40 },
    );
  });
});
