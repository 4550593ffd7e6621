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
