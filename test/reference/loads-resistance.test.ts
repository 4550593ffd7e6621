import {
  agedFastener,
  agedFilm,
  agedPvc,
  bucklingReduction,
  eulerStress,
  lifeInSoil,
  memberResistance,
  PVC_HEAT,
  plasticRatio,
  steelColumn,
  thrustAndBending,
  timberColumnFactor,
  tubeBendingRatio,
} from '@tautline/loads';
import { describe, expect, it } from 'vitest';

const KSI = 6.894757e6;
const PSI = 6894.757;

describe('AISI cold-formed steel design manual 2013, example II-8 (8 in tube, wall 0.1 in, 42 ksi)', () => {
  const ratio = tubeBendingRatio(8, 0.1, 42, 29_500);
  const modulus = 4.841;

  it('allowable moment 140 in·kip', () => {
    expect((ratio * 42 * modulus) / 1.67).toBeCloseTo(139.5, 1);
  });

  it('design moment 221 in·kip', () => {
    expect(0.95 * ratio * 42 * modulus).toBeCloseTo(221.3, 1);
  });

  it('the same through memberResistance', () => {
    const tube = {
      family: 'steel',
      bendingStrength: 42 * KSI,
      shearStrength: 24 * KSI,
      modulus: 29_500 * KSI,
      duration: 'gust',
      outside: 0.2032,
      wall: 0.00254,
    } as const;
    const asd = memberResistance({ ...tube, basis: 'asce7-asd' }).bending;
    const lrfd = memberResistance({ ...tube, basis: 'asce7-strength' }).bending;
    expect((asd / KSI) * modulus).toBeCloseTo(139.5, 1);
    expect((lrfd / KSI) * modulus).toBeCloseTo(221.3, 1);
  });
});

describe('AISC manual table 4-22, printed design stress φ F_cr in ksi', () => {
  it.each([
    [35, 10, 31.3],
    [35, 25, 30.5],
    [36, 20, 31.7],
    [42, 20, 36.9],
    [46, 24, 39.8],
    [50, 15, 44.3],
    [50, 24, 43.1],
  ])('F_y = %i ksi, KL/r = %i: %f', (yieldKsi, slenderness, printed) => {
    expect(Math.abs(0.9 * steelColumn(yieldKsi, 29_000, slenderness) - printed)).toBeLessThan(0.051);
  });

  it('F_y = 50 ksi, KL/r = 200: φ F_cr = 5.65 (from memory of the same table)', () => {
    expect(0.9 * steelColumn(50, 29_000, 200)).toBeCloseTo(5.65, 2);
  });
});

describe('EN 1993-1-1 buckling curve c (ECCS table, from memory)', () => {
  it.each([
    [0.2, 1],
    [0.5, 0.843],
    [1, 0.5399],
    [1.5, 0.3145],
    [2, 0.1962],
    [3, 0.0951],
  ])('relative slenderness %f: χ = %f', (relative, chi) => {
    expect(bucklingReduction(relative, 0.49)).toBeCloseTo(chi, 3);
  });
});

describe('closed forms', () => {
  it('plastic over elastic modulus: 16/(3π) for a rod, 4/π for a thin tube', () => {
    expect(plasticRatio(0.01, 0.005)).toBeCloseTo(16 / (3 * Math.PI), 12);
    expect(plasticRatio(1, 1e-6)).toBeCloseTo(4 / Math.PI, 5);
  });

  it('C_P of NDS 3.7.1: the Euler ratio for slender columns, 1 for short ones, 0.691 at 1 with c = 0.8', () => {
    expect(timberColumnFactor(0.01, 0.8) / 0.01).toBeCloseTo(1, 2);
    expect(timberColumnFactor(1000, 0.8)).toBeCloseTo(1, 3);
    expect(timberColumnFactor(1, 0.8)).toBeCloseTo(1.25 - Math.sqrt(1.5625 - 1.25), 12);
  });

  it('Euler: π² E at a slenderness of 1', () => {
    expect(eulerStress(2e11, 1)).toBeCloseTo(Math.PI ** 2 * 2e11, 0);
  });

  it('AISC H1-1: both branches meet at an axial share of 0.2, where M/M_c = 0.9 uses the member up', () => {
    const at = (axial: number): number =>
      thrustAndBending({ axial, bending: 0.9, family: 'steel', basis: 'asce7-asd' }).utilisation;
    expect(at(0.2)).toBeCloseTo(0.2 + (8 / 9) * 0.9, 12);
    // H1-1b at 0.2 gives 1.0: together the two lines are the published kink, both 1.0 at M/M_c = 0.9.
    expect(at(0.2)).toBeCloseTo(1, 12);
    expect(at(0.1999999)).toBeCloseTo(1, 6);
  });
});

describe('PVC pressure pipe tables', () => {
  it.each([
    [73, 1],
    [80, 0.88],
    [90, 0.75],
    [100, 0.62],
    [110, 0.51],
    [120, 0.4],
    [130, 0.31],
    [140, 0.22],
  ])('temperature factor at %i °F is %f (published by pipe makers)', (fahrenheit, factor) => {
    const celsius = ((fahrenheit - 32) * 5) / 9;
    const row = PVC_HEAT.find(([t]) => Math.abs(t - celsius) < 0.06);
    expect(row?.[1]).toBe(factor);
  });

  it.each([
    [73.04, 2000],
    [90, 1500],
    [100, 1240],
    [120, 800],
    [140, 440],
  ])(
    'stress that may stay at %f °F is %i psi (hydrostatic design stress, published)',
    (fahrenheit, stress) => {
      const resistance = memberResistance({
        family: 'pvc',
        basis: 'asce7-asd',
        bendingStrength: 48.3e6,
        shearStrength: 25e6,
        modulus: 2.76e9,
        duration: 'permanent',
        temperature: ((fahrenheit - 32) * 5) / 9,
      });
      expect(Math.abs(resistance.bending / PSI / stress - 1)).toBeLessThan(0.01);
    },
  );
});

describe('what age leaves', () => {
  const year = 365.25 * 86_400;

  it('bamboo in the soil lasts 1 to 3 years untreated (Janssen, Building with Bamboo, published)', () => {
    const life = lifeInSoil('bamboo', false)! / year;
    expect(life).toBeGreaterThanOrEqual(1);
    expect(life).toBeLessThanOrEqual(3);
  });

  it('polyester webbing has 70 % left from its first year to its third (WSTDA tests of web slings, published summary)', () => {
    const left = (years: number): number => agedFastener('polyester', years * year, 8 * year).share;
    for (const years of [1, 2, 3]) expect(left(years)).toBeCloseTo(0.7, 12);
    expect(left(0)).toBe(1);
  });

  it('nylon webbing has lost 50 to 60 % after 36 months (the same), which is a life of 3 years', () => {
    const { share } = agedFastener('nylon', 3 * year, 3 * year);
    expect(share).toBeLessThanOrEqual(0.5);
    expect(share).toBeGreaterThanOrEqual(0.4);
  });

  it('film keeps half of its stretch at the end of its life (EN 13206, from memory)', () => {
    expect(agedFilm(4 * year, 4 * year).share).toBeCloseTo(0.5, 12);
  });

  it('PVC keeps tensile strength and modulus through two years of sun (Uni-Bell UNI-TR-5, published)', () => {
    expect(agedPvc(2 * year).share).toBe(1);
  });
});
