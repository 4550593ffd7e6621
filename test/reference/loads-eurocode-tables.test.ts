/**
 * Tables of EN 1991-1-3 and EN 1991-1-4 as public restatements print them. The expected values are typed from
 * there; the place is named in the title.
 */
import {
  canopyCoefficients,
  enCylindricalFactor,
  enReturnFactor,
  highSideSlope,
  peakVelocityPressure,
  snowActions,
  wallCoefficients,
  windActions,
  windwardSlope,
} from '@tautline/loads';
import { describe, expect, it } from 'vitest';

describe('EN 1991-1-4 table 7.1, walls (three public restatements, one of the Finnish and one of the Danish edition)', () => {
  it.each([
    [0.25, 0.7, -0.3],
    [1, 0.8, -0.5],
    [5, 0.8, -0.7],
  ])('h/d = %f: D %f, E %f', (ratio, windward, leeward) => {
    expect(wallCoefficients(ratio).windward).toBeCloseTo(windward, 12);
    expect(wallCoefficients(ratio).leeward).toBeCloseTo(leeward, 12);
  });
});

describe('EN 1991-1-4 table 7.3a, single slopes (public restatement of the Danish edition)', () => {
  it.each([
    // pitch; G and H met on the low eave, suction and pressure; G and H met on the high eave
    [5, [-1.2, 0], [-0.6, 0], -1.3, -0.8],
    [15, [-0.8, 0.2], [-0.3, 0.2], -1.3, -0.9],
    [30, [-0.5, 0.7], [-0.2, 0.4], -0.8, -0.8],
    [45, [0, 0.7], [0, 0.6], -0.5, -0.7],
    [60, [0.7, 0.7], [0.7, 0.7], -0.5, -0.5],
    [75, [0.8, 0.8], [0.8, 0.8], -0.5, -0.5],
  ] as const)('%i°', (pitch, g, h, highG, highH) => {
    for (const [at, set] of [
      [0, 'low'],
      [1, 'high'],
    ] as const) {
      expect(windwardSlope(pitch, set).edge).toBeCloseTo(g[at], 12);
      expect(windwardSlope(pitch, set).rest).toBeCloseTo(h[at], 12);
    }
    expect(highSideSlope(pitch).edge).toBeCloseTo(highG, 12);
    expect(highSideSlope(pitch).rest).toBeCloseTo(highH, 12);
  });
});

describe('EN 1991-1-4 table 7.6, c_f of monopitch canopies (two public restatements)', () => {
  it.each([
    [0, 0.2, -0.5, -1.3],
    [5, 0.4, -0.7, -1.4],
    [10, 0.5, -0.9, -1.4],
    [15, 0.7, -1.1, -1.4],
    [20, 0.8, -1.3, -1.4],
    [25, 1, -1.6, -1.4],
    [30, 1.2, -1.8, -1.4],
  ])('%i°: greatest %f, least empty %f, least blocked %f', (pitch, max, empty, blocked) => {
    expect(canopyCoefficients('mono', pitch, 0).max).toBeCloseTo(max, 12);
    expect(canopyCoefficients('mono', pitch, 0).min).toBeCloseTo(empty, 12);
    expect(canopyCoefficients('mono', pitch, 1).min).toBeCloseTo(blocked, 12);
  });
});

describe('EN 1991-1-4 table 7.7, c_f of duopitch canopies (public restatement of the same table 14 of SANS 10160-3)', () => {
  it.each([
    [5, 0.3, -0.6, -1.3],
    [10, 0.4, -0.7, -1.3],
    [15, 0.4, -0.8, -1.3],
    [20, 0.6, -0.9, -1.3],
    [25, 0.7, -1, -1.3],
    [30, 0.9, -1, -1.3],
  ])('%i°: greatest %f, least empty %f, least blocked %f', (pitch, max, empty, blocked) => {
    expect(canopyCoefficients('duo', pitch, 0).max).toBeCloseTo(max, 12);
    expect(canopyCoefficients('duo', pitch, 0).min).toBeCloseTo(empty, 12);
    expect(canopyCoefficients('duo', pitch, 1).min).toBeCloseTo(blocked, 12);
  });
});

describe('EN 1991-1-4 eq. 4.2 and 4.8, verification problem of a public finite element library', () => {
  it('canopy at 3.5 m, category III, 26 m/s, 100 years: 183.377 Pa at c_f = 0.314', () => {
    // A trough of 5.71 degrees: c_f between the 0.3 and 0.4 that table 7.7 has for 5 and 10 degrees.
    const pitch = (Math.atan(0.1) * 180) / Math.PI;
    const force = 0.3 + (0.1 * (pitch - 5)) / 5;
    const pressure = peakVelocityPressure(26 * enReturnFactor(100), 3.5, 'sheltered', 1);
    expect(force * pressure).toBeCloseTo(183.377, 3);
    expect(-(1.3 + force - 0.3) * pressure).toBeCloseTo(-766.985, 3);
  });
});

describe('EN 1991-1-4 table 7.10, friction of ribbed skins (public restatement)', () => {
  it('0.04', () => {
    const { cases } = windActions(
      {
        gust: 40,
        gustReturnPeriod: 50,
        exposure: 'open',
        elevation: 0,
        topography: 1,
        basis: 'eurocode',
        lowHazard: false,
      },
      { form: 'arch', span: 6, length: 20, rise: 2, springing: 1, sides: 'clad', ends: 'open' },
    );
    const steps = cases.flatMap((one) => one.steps);
    const friction = steps.flatMap((step) => step.inputs).find(({ symbol }) => symbol === 'c_fr');
    expect(friction?.value).toBe(0.04);
  });
});

describe('EN 1991-1-3 5.3.5, cylindrical roofs (public calculation library after the Polish edition, with its own tests)', () => {
  it.each([
    [2, 1.2],
    [5, 2],
  ])('20 m wide, %i m high: μ_3 = %f', (rise, factor) => {
    expect(enCylindricalFactor(rise / 20)).toBeCloseTo(factor, 12);
  });

  const casesOf = (rise: number) =>
    snowActions(
      // The library's C_e C_t s_k = 2 · 3 · 5 as one ground load: exposure 1 and 1 here.
      { basis: 'eurocode', groundSnow: 30, exposure: 'open', lowHazard: false },
      { form: 'arch', span: 20, rise },
    ).cases;

  it('20 m wide, 2 m high: 24 all over, drifted 18 and 36', () => {
    const [even, drifted] = casesOf(2);
    expect(even?.zones[0]?.loadFrom).toBeCloseTo(24, 9);
    const peaks = (drifted?.zones ?? []).map(({ loadFrom, loadTo }) => Math.max(loadFrom, loadTo));
    expect(Math.max(...peaks.slice(0, 2))).toBeCloseTo(18, 9);
    expect(Math.max(...peaks.slice(2))).toBeCloseTo(36, 9);
  });

  it('20 m wide, 10 m high: snow lies on 17.321 m', () => {
    const zone = casesOf(10)[0]?.zones[0];
    expect(((zone?.to ?? 0) - (zone?.from ?? 0)) * 20).toBeCloseTo(17.321, 3);
  });
});
