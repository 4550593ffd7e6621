/** Members as published worked examples take them, from section and loads to the verdict; each names its source. */
import {
  BAMBOO_DURATION,
  boltBearing,
  columnStress,
  eulerStress,
  type MemberInput,
  memberResistance,
  steelColumn,
  thrustAndBending,
  timberInstability,
  woodBearing,
} from '@tautline/loads';
import { thrustAmplification } from '@tautline/mechanics';
import { describe, expect, it } from 'vitest';

const KSI = 6.894757e6;
const inch = 0.0254;

describe('AISC Design Examples, example E.11: pipe column 10 in standard, A53 grade B (35 ksi), 30 ft, area 11.5 in2, r = 3.68 in; complete', () => {
  const slenderness = (30 * 12) / 3.68;
  const stress = steelColumn(35, 29_000, slenderness);
  it('L_c/r = 97.8, F_e = 29.9 ksi, F_n = 21.4 ksi', () => {
    expect(slenderness).toBeCloseTo(97.8, 1);
    expect(eulerStress(29_000, slenderness)).toBeCloseTo(29.9, 1);
    expect(stress).toBeCloseTo(21.4, 1);
  });
  it('available 222 kips (LRFD) and 148 kips (ASD) for 210 and 140 kips', () => {
    // It goes on with stresses and capacities rounded to three digits.
    expect(Math.abs(0.9 * stress * 11.5 - 222)).toBeLessThan(1);
    expect(Math.abs((stress * 11.5) / 1.67 - 148)).toBeLessThan(1);
    expect(0.9 * stress * 11.5).toBeGreaterThan(1.2 * 35 + 1.6 * 105);
  });
});

describe('AISC Design Examples, example H.1B: W14x99, 50 ksi, 14 ft, thrust with bending both ways; complete', () => {
  const slenderness = (14 * 12) / 3.71;
  const stress = steelColumn(50, 29_000, slenderness);
  it('L_c/r = 45.3, F_e = 140 ksi, F_n = 43.0 ksi, P_c = 1,130 and 750 kips', () => {
    expect(slenderness).toBeCloseTo(45.3, 1);
    // 139.6 here: the example rounds it up.
    expect(Math.abs(eulerStress(29_000, slenderness) - 140)).toBeLessThan(0.6);
    expect(stress).toBeCloseTo(43, 1);
    expect(Math.abs(0.9 * stress * 29.1 - 1130)).toBeLessThan(5);
    expect(Math.abs((stress * 29.1) / 1.67 - 750)).toBeLessThan(1);
  });
  it.each([
    ['LRFD', 400 / (0.9 * stress * 29.1), 250 / 642 + 80 / 311, 0.929],
    ['ASD', (267 * 1.67) / (stress * 29.1), 167 / 427 + 53.3 / 207, 0.931],
  ])('%s: eq. H1-1a', (_, axial, bending, printed) => {
    const { utilisation } = thrustAndBending({ axial, bending, family: 'steel', basis: 'asce7-asd' });
    expect(Math.abs(utilisation - printed)).toBeLessThan(0.003);
  });
});

describe('AISC 360 F11.1, rounds: M_n = F_y Z, at most 1.6 F_y S (public restatement of eq. F11-2)', () => {
  it('a rod has 1.6 F_y S, for its Z is 1.70 S', () => {
    const rod = {
      family: 'steel',
      basis: 'asce7-asd',
      duration: 'gust',
      bendingStrength: 60 * KSI,
      shearStrength: 36 * KSI,
      modulus: 29_000 * KSI,
    } as const;
    expect((memberResistance(rod).bending * 1.67) / (60 * KSI)).toBeCloseTo(1.6, 12);
    expect(
      (memberResistance({ ...rod, basis: 'asce7-strength' }).bending / 0.9) * (1 / (60 * KSI)),
    ).toBeCloseTo(1.6, 12);
  });
});

const wood: MemberInput = {
  family: 'timber',
  basis: 'asce7-asd',
  duration: 'season',
  bendingStrength: 20e6,
  shearStrength: 4e6,
  modulus: 10e9,
};

describe('AISI S100 table J3.3.1-1, C of a bolt bearing on thin steel (tests of a public calculation, written against the standard)', () => {
  it.each([
    [5, 3],
    [12, 2.8],
    [22, 1.8],
    [30, 1.8],
  ])('d/t = %i: C = %f', (ratio, factor) => {
    const wall = 0.001;
    const { force } = boltBearing(ratio * wall, wall, 400e6, 'asce7-asd');
    expect((force * 2.5) / (ratio * wall * wall * 400e6)).toBeCloseTo(factor, 9);
  });
});

describe('EN 1993-1-1 table 5.2, round tubes: plastic up to d/t = 70 ε², elastic up to 90 ε² (two public calculations)', () => {
  const ratioAt = (slender: number): number =>
    memberResistance({
      family: 'steel',
      basis: 'eurocode',
      duration: 'gust',
      bendingStrength: 235e6,
      shearStrength: 136e6,
      modulus: 210e9,
      outside: 0.05,
      wall: 0.05 / slender,
    }).bending / 235e6;
  it.each([
    [69, 1.2],
    [71, 1],
    [89, 1],
  ])('d/t = %i: more than %f of the elastic bending and less than 1.3', (slender, least) => {
    expect(ratioAt(slender)).toBeGreaterThanOrEqual(least);
    expect(ratioAt(slender)).toBeLessThan(1.3);
  });
  it('d/t = 71 and 89: the elastic bending alone; 91: less', () => {
    expect(ratioAt(71)).toBeCloseTo(1, 12);
    expect(ratioAt(89)).toBeCloseTo(1, 12);
    expect(ratioAt(91)).toBeLessThan(1);
  });
});

describe('NDS table 2.3.3, C_t of bending (public restatement)', () => {
  it.each([
    [110, false, 0.8],
    [110, true, 0.7],
    [140, false, 0.7],
    [140, true, 0.5],
  ])('%i °F, wet %s: %f', (fahrenheit, wet, factor) => {
    const at = (temperature: number): number => memberResistance({ ...wood, wet, temperature }).bending;
    expect(at(((fahrenheit - 32) * 5) / 9) / at(20)).toBeCloseTo(factor, 12);
  });
});

describe('NDS 3.9.2, 4x4 post of Douglas fir, 96 in, bent by 3,000 in lb, a public worked example; complete', () => {
  const [area, modulus, crushing, bent, least] = [12.25, 7.15, 1150, 1350, 580_000];
  it.each([
    [3000, 245, 0.55],
    [6000, 490, 1.55],
  ])('under %i lb: f_c = %i psi, together %f', (thrust, pressed, printed) => {
    const euler = (0.822 * least) / (96 / 3.5) ** 2;
    expect(Math.abs(euler - 634)).toBeLessThan(1);
    expect(thrust / area).toBeCloseTo(pressed, 0);
    expect(Math.abs(3000 / modulus - 420)).toBeLessThan(0.5);
    // What the frame's second-order analysis does to the bending, the example does by 1/(1 - f_c/F_cE).
    const { utilisation, clause } = thrustAndBending({
      axial: thrust / area / crushing,
      bending: (3000 / modulus / bent) * thrustAmplification(thrust / area, euler),
      family: 'timber',
      basis: 'asce7-asd',
    });
    expect(Math.abs(clause - printed)).toBeLessThan(0.01);
    // The share used is on the same side of 1, and is what the loads would have to grow by, inverted.
    expect(utilisation > 1).toBe(printed > 1);
  });
});

describe('NDS 3.10.4, C_b = (l + 3/8 in)/l (public course notes on bearing at supports; worked figures of two public libraries)', () => {
  it.each([
    [3, 1.125],
    [3.5, 1.107],
    [6, 1],
  ])('%f in long: %f', (long, factor) => {
    const { force } = woodBearing(1e6, long * inch, 0.1, false, 'asce7-asd');
    expect(force / (1e6 * long * inch * 0.1)).toBeCloseTo(factor, 3);
  });
});

describe('ISO 22156:2021, bamboo (public calculation after clauses 6.4 and 9.3)', () => {
  it('C_DF of service class 2: 0.55 long, 0.65 transient, 0.85 instant', () => {
    expect(BAMBOO_DURATION.permanent[0]).toBe(0.55);
    expect(BAMBOO_DURATION.weeks[0]).toBe(0.65);
    expect(BAMBOO_DURATION.gust[0]).toBe(0.85);
  });

  const culm: MemberInput = { ...wood, family: 'bamboo', duration: 'gust', bendingStrength: 34.6e6 };

  it('a gust on one culm without help: f_m = 34.6 · 0.90 · 0.85 / 2, shear over 4', () => {
    const limit = memberResistance(culm);
    expect(limit.bending / 1e6).toBeCloseTo((34.6 * 0.9 * 0.85) / 2, 9);
    expect(limit.shear / 1e6).toBeCloseTo((4 * 0.9 * 0.85) / 4, 9);
  });

  it('compression from the 20 N/mm² of Bambusa blumeana (Salzer and others, BioResources 13(1), 2018)', () => {
    expect(memberResistance(culm).compression / 1e6).toBeCloseTo((20 * 0.9 * 0.85) / 2, 9);
  });

  it('crushing and Euler load joined with c = 0.80: where half the Euler load (C_bow 0.5 of a culm bowed by 1 in 100) is the same, 0.691 of each, times C_R C_DF / FS_m', () => {
    const { compression, crushing } = memberResistance(culm);
    const slenderness = Math.PI * Math.sqrt((0.5 * 10e9) / crushing);
    const { stress } = columnStress({
      family: 'bamboo',
      basis: 'asce7-asd',
      slenderness,
      modulus: 10e9,
      shortColumn: compression,
      crushing,
    });
    expect(stress / (0.691 * 20e6)).toBeCloseTo((0.9 * 0.85) / 2, 3);
  });
});

describe('EN 1995-1-1 6.3.2, k_c of solid timber (formulas in several public calculations; numbers by hand)', () => {
  it.each([
    // C24: f_c,0,k = 21, E_0,05 = 7400 N/mm²; slenderness; relative slenderness and k_c by hand
    [20, 0.339, 0.991],
    [60, 1.017, 0.676],
    [100, 1.696, 0.305],
  ])('C24, λ = %i: λ_rel = %f, k_c = %f', (slender, relative, factor) => {
    const got = (slender / Math.PI) * Math.sqrt(21 / 7400);
    expect(got).toBeCloseTo(relative, 3);
    expect(timberInstability(got)).toBeCloseTo(factor, 3);
  });

  it('through a column: C24 of 11,000 N/mm² at λ = 60', () => {
    const { stress } = columnStress({
      family: 'timber',
      basis: 'eurocode',
      slenderness: 60,
      modulus: 11e9,
      shortColumn: 10e6,
      crushing: 21e6,
    });
    expect(stress / 10e6).toBeCloseTo(0.676, 2);
  });
});
