/** How long a load stays, and what the standards let wood, bamboo and plastic have for it. */
import { memberResistance, plasticDuration, shortestOf } from '@tautline/loads';
import { describe, expect, it } from 'vitest';

const pine = {
  family: 'timber',
  bendingStrength: 21e6,
  shearStrength: 3e6,
  modulus: 9e9,
} as const;

describe('NDS 2018 table 2.3.2 (opened in a public copy), allowable stress over that of ten years', () => {
  const bending = (duration: Parameters<typeof shortestOf>[0][number]): number =>
    memberResistance({ ...pine, basis: 'asce7-asd', duration }).bending / (21e6 / 2.1);
  it.each([
    ['permanent', 'dead load', 0.9],
    ['season', 'occupancy live load, ten years', 1],
    ['weeks', 'snow, two months', 1.15],
    ['days', 'construction load, seven days', 1.25],
    ['person', 'construction load, seven days', 1.25],
    ['gust', 'wind, ten minutes', 1.6],
  ] as const)('%s: %s, C_D = %f', (duration, _load, factor) => {
    expect(bending(duration)).toBeCloseTo(factor, 12);
  });
});

describe('NDS table N.3 (from memory), time effect factor of the strength format with K_F φ = 2.54 · 0.85', () => {
  it.each([
    ['permanent', '1.4 D', 0.6],
    ['season', '1.2 D + 1.6 L, L stored', 0.7],
    ['weeks', '1.2 D + 1.6 S', 0.8],
    ['days', '1.2 D + 1.6 R', 0.8],
    ['person', '1.2 D + 1.6 L_r', 0.8],
    ['gust', '1.2 D + W', 1],
  ] as const)('%s: %s, λ = %f', (duration, _load, factor) => {
    const { bending } = memberResistance({ ...pine, basis: 'asce7-strength', duration });
    expect(bending / ((21e6 / 2.1) * 2.54 * 0.85)).toBeCloseTo(factor, 12);
  });
});

describe('EN 1995-1-1 table 3.1 (from memory), k_mod of solid timber', () => {
  it.each([
    ['permanent', 0.6, 0.5],
    ['season', 0.7, 0.55],
    ['weeks', 0.8, 0.65],
    ['days', 0.9, 0.7],
    ['person', 0.9, 0.7],
    ['gust', 1.1, 0.9],
  ] as const)('%s: %f in service classes 1 and 2, %f in class 3', (duration, dry, wet) => {
    const kmod = (rained: boolean): number =>
      (1.3 * memberResistance({ ...pine, basis: 'eurocode', duration, wet: rained }).bending) / 21e6;
    expect(kmod(false)).toBeCloseTo(dry, 12);
    expect(kmod(true)).toBeCloseTo(wet, 12);
  });
});

describe('PVC by hours, between 7,000 psi at 0.1 h and the 4,000 psi of 100,000 h (ASTM D2837, from memory)', () => {
  it.each([
    [0.1, 1],
    [8, 0.837],
    [168, 0.74],
    [1440, 0.678],
    [4380, 0.648],
    [100_000, 0.5714],
  ])('%f h: %f of the short-term strength', (hours, share) => {
    // 48.3 and 27.6 N/mm² are the two ends rounded.
    expect(Math.abs(plasticDuration(hours) - share)).toBeLessThan(0.002);
  });
});

describe('a combination', () => {
  it('is there as long as its shortest-acting load', () => {
    expect(shortestOf(['permanent', 'season', 'weeks'])).toBe('weeks');
    expect(shortestOf(['permanent', 'weeks', 'gust'])).toBe('gust');
    expect(shortestOf(['person', 'season'])).toBe('person');
    expect(shortestOf([])).toBe('permanent');
  });
});
