/** Each way of giving way prints the factors it was worked out with. */
import { describe, expect, it } from 'vitest';
import { type MemberInput, memberResistance, type Step } from '../src/index.ts';

const MPa = 1e6;
const wood: MemberInput = {
  family: 'timber',
  basis: 'asce7-asd',
  bendingStrength: 16 * MPa,
  shearStrength: 3.2 * MPa,
  modulus: 8e9,
  duration: 'gust',
};
const of = ([step]: readonly Step[], symbol: string): number | undefined =>
  step?.inputs.find((input) => input.symbol === symbol)?.value;

describe('ways of giving way', () => {
  it('wet wood: C_M 0.85 in bending, 0.97 in shear, 0.8 in thrust, 1 in tension, 0.9 of the modulus (NDS Supplement table 4A, from memory)', () => {
    const wet = memberResistance({ ...wood, wet: true });
    expect(of(wet.steps, 'C_M')).toBe(0.85);
    expect(of(wet.shearSteps, 'C_M')).toBe(0.97);
    expect(of(wet.compressionSteps, 'C_M')).toBe(0.8);
    expect(of(wet.tensionSteps, 'C_M')).toBe(1);
    expect(wet.modulus / 8e9).toBeCloseTo(0.9, 12);
    expect(wet.shearSteps[0]?.value).toBeCloseTo(((3.2 * MPa) / 2.1) * 1.6 * 0.97, 3);
  });

  it.each([
    [14, 7.2],
    [16, 8.5],
    [18, 10],
    [24, 14.5],
    [30, 19],
  ])('EN 338:2016 class C%i pulls %f N/mm² (from memory), to 0.2', (bent, pulled) => {
    const { tension } = memberResistance({ ...wood, basis: 'eurocode', bendingStrength: bent * MPa });
    expect(Math.abs((tension / MPa) * (1.3 / 1.1) - pulled)).toBeLessThan(0.2);
  });

  it('steel tube: 1.25 of the tube in bending only, shear straight over 1.67', () => {
    const tube = memberResistance({
      ...wood,
      family: 'steel',
      bendingStrength: 240 * MPa,
      shearStrength: 120 * MPa,
      modulus: 200e9,
      outside: 0.0349,
      wall: 0.00165,
    });
    expect(of(tube.steps, 'F_c/F_y')).toBe(1.25);
    expect(of(tube.shearSteps, 'F_c/F_y')).toBeUndefined();
    expect(tube.shearSteps[0]?.value).toBeCloseTo((120 * MPa) / 1.67, 3);
    expect(of(tube.compressionSteps, 'Ω')).toBe(1.8);
  });

  it('bamboo: the shear step prints the factor of 4 it was divided by (ISO 22156 6.4)', () => {
    const culm = memberResistance({ ...wood, family: 'bamboo' });
    expect(of(culm.steps, 'FS_m')).toBe(2);
    expect(of(culm.shearSteps, 'FS_m')).toBe(4);
    expect(culm.shearSteps[0]?.value).toBeCloseTo((3.2 * MPa * 0.9 * 0.85) / 4, 3);
  });
});
