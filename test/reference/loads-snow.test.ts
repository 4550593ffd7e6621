import {
  coldSlipperyFactor,
  combinations,
  driftHeight,
  rainLoad,
  snowActions,
  snowWeight,
} from '@tautline/loads';
import { describe, expect, it } from 'vitest';

const PSF = 47.8803;

describe('ASCE 7-16 chapters 7 and 8 (from memory except where said)', () => {
  it('figure 7.6-1: fetch 100 ft, ground snow 40 psf give a drift of about 3.8 ft', () => {
    expect(driftHeight(30.48, 40 * PSF) / 0.3048).toBeCloseTo(3.8, 1);
  });

  it('eq. 7.7-1: 40 psf of ground snow weighs 19.2 pcf, never over 30 pcf', () => {
    expect(snowWeight(40 * PSF) / 157.087).toBeCloseTo(19.2, 1);
    expect(snowWeight(1e6) / 157.087).toBeCloseTo(30, 0);
  });

  it('figure 7.4-1c, slippery: 1 to 15°, (70 - θ)/55 after, 0 from 70° (public restatement of the figure)', () => {
    expect(coldSlipperyFactor(15)).toBe(1);
    expect(coldSlipperyFactor(42.5)).toBeCloseTo(27.5 / 55, 10);
    expect(coldSlipperyFactor(75)).toBe(0);
  });

  it('eq. 8.3-1: R = 5.2 psf for an inch of water (several public restatements)', () => {
    expect(rainLoad(0.0254, 0).load / PSF).toBeCloseTo(5.2, 2);
  });

  it('flat roof snow 0.7 · 1.0 · 1.2 · 0.8 · 30 psf = 20.2 psf', () => {
    const actions = snowActions(
      { basis: 'asce7-asd', groundSnow: 30 * PSF, exposure: 'open', lowHazard: true },
      { form: 'gable', span: 6, rise: 0.5 },
    );
    expect((actions.cases[0]?.zones[0]?.loadFrom ?? 0) / PSF).toBeCloseTo(20.16, 2);
  });
});

describe('ASCE 7 7.3.4, least snow on low roofs (a public worked example of ASCE 7-16, and a discussion of two towns)', () => {
  it.each([
    ['Lancaster, 30 psf on a slope of 1 in 20', 30, 20],
    ['Duluth, 60 psf', 60, 20],
    ['Cape Girardeau, 15 psf', 15, 15],
  ])('%s: %i psf give at least %i psf', (_, ground, least) => {
    const { cases } = snowActions(
      { basis: 'asce7-asd', groundSnow: ground * PSF, exposure: 'open', lowHazard: false },
      { form: 'gable', span: 6, rise: 0.15 },
    );
    const low = cases.find(({ id }) => id === 'least');
    expect((low?.zones[0]?.loadFrom ?? 0) / PSF).toBeCloseTo(least, 1);
  });
});

describe('ASCE 7 7.6.1, unbalanced snow on gables (public restatement with its formulas in psf and ft)', () => {
  const foot = 0.3048;
  const drifted = (eaveToRidge: number, degrees: number) =>
    snowActions(
      { basis: 'asce7-asd', groundSnow: 40 * PSF, exposure: 'open', lowHazard: false },
      {
        form: 'gable',
        span: 2 * eaveToRidge * foot,
        rise: eaveToRidge * foot * Math.tan((degrees * Math.PI) / 180),
      },
    ).cases.find(({ id }) => id === 'unbalanced');

  it('up to 20 ft from eave to ridge: I_s p_g = 40 psf on the leeward slope, none on the other', () => {
    const zones = drifted(15, 20)?.zones ?? [];
    expect(zones).toHaveLength(1);
    expect(zones[0]?.from).toBe(0.5);
    expect((zones[0]?.loadFrom ?? 0) / PSF).toBeCloseTo(40, 9);
  });

  it('30 ft at 20°: h_d = 2.05 ft, surcharge 23.8 psf over 9.07 ft, 0.3 p_s to windward', () => {
    const [windward, surcharged, leeward] = drifted(30, 20)?.zones ?? [];
    const height = 0.43 * Math.cbrt(30) * (40 + 10) ** 0.25 - 1.5;
    expect(height).toBeCloseTo(2.053, 3);
    expect(Math.abs(driftHeight(30 * foot, 40 * PSF) / foot - height)).toBeLessThan(0.001);
    expect(Math.abs(((surcharged?.loadFrom ?? 0) - (leeward?.loadFrom ?? 0)) / PSF - 23.78)).toBeLessThan(
      0.1,
    );
    expect(Math.abs((((surcharged?.to ?? 0) - 0.5) * 60) / 9.074 - 1)).toBeLessThan(0.002);
    expect((windward?.loadFrom ?? 0) / (leeward?.loadFrom ?? 1)).toBeCloseTo(0.3, 12);
  });

  it.each([2, 31])('%f° is outside 1/2 on 12 to 7 on 12: none', (degrees) => {
    expect(drifted(15, degrees)).toBeUndefined();
  });
});

describe('combinations (looked up: see loads-published)', () => {
  it('ASCE 7-16 2.3.1 (5) 0.9 D + 1.0 W and 2.4.1 (7) 0.6 D + 0.6 W', () => {
    const strength = combinations('asce7-strength', true).find((item) => item.id === 'lrfd-5');
    const allowable = combinations('asce7-asd', true).find((item) => item.id === 'asd-7');
    expect(strength?.factors).toMatchObject({ dead: 0.9, wind: 1, crop: 0 });
    expect(allowable?.factors).toMatchObject({ dead: 0.6, wind: 0.6, crop: 0 });
  });

  it('EN 1990 6.10: 1.35 and 1.5, in class RC1 times 0.9', () => {
    const usual = combinations('eurocode', false).find((item) => item.id === 'en-wind');
    const low = combinations('eurocode', true).find((item) => item.id === 'en-wind');
    expect(usual?.factors).toMatchObject({ dead: 1.35, wind: 1.5, snow: 0.75 });
    expect(low?.factors.dead).toBeCloseTo(1.215, 10);
    expect(low?.factors.wind).toBeCloseTo(1.35, 10);
  });
});
