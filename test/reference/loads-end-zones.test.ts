/** Stronger wind on the frames near the ends: coefficients and widths of the two load bases. */
import {
  type EndWind,
  endCoefficients,
  endWind,
  ridgewiseEnd,
  type WindInput,
  type WindShape,
  windActions,
} from '@tautline/loads';
import { describe, expect, it } from 'vitest';

const site: WindInput = {
  gust: 40,
  gustReturnPeriod: 50,
  exposure: 'open',
  elevation: 0,
  topography: 1,
  basis: 'asce7-asd',
  lowHazard: false,
};
const gable = (pitch: number): WindShape => ({
  form: 'gable',
  span: 6,
  length: 12,
  rise: 3 * Math.tan((pitch * Math.PI) / 180),
  springing: 2.4,
  sides: 'clad',
  ends: 'clad',
});
const eurocode = { ...site, basis: 'eurocode' } as const;
const named = (wind: EndWind, id: string) => wind.cases.find((one) => one.id === id)!;

describe('ASCE 7-16 figure 28.3-1, end zones of low-rise buildings (a public restatement of the table)', () => {
  it.each([
    [5, 0.61, -1.07, -0.53, -0.43],
    [20, 0.8, -1.07, -0.69, -0.64],
    [30, 0.69, 0.27, -0.53, -0.48],
    [45, 0.69, 0.27, -0.53, -0.48],
    [90, 0.69, 0.69, -0.48, -0.48],
  ])('θ = %i°: 1E %f, 2E %f, 3E %f, 4E %f', (degrees, one, two, three, four) => {
    const c = endCoefficients(degrees).across.end;
    expect([c.windwardWall, c.windwardRoof, c.leewardRoof, c.leewardWall]).toEqual([one, two, three, four]);
  });

  it('load case B: 2E -1.07, 3E -0.53, side walls -0.48', () => {
    const { end } = endCoefficients(20).along;
    expect(end).toEqual({ windwardWall: -0.48, windwardRoof: -1.07, leewardRoof: -0.53, leewardWall: -0.48 });
  });

  it('reaches 2a: a is 0.9 m where a tenth of the least side is less', () => {
    expect(endWind(site, gable(20)).width).toBeCloseTo(1.8, 12);
    expect(endWind(site, { ...gable(20), span: 14, length: 40, rise: 2.5 }).width).toBeCloseTo(2.8, 12);
  });

  it('p = q_h (GC_pf - GC_pi): 2E at 20° is q (-1.07 - 0.18)', () => {
    const wind = endWind(site, gable(20));
    const q = windActions(site, gable(20)).velocityPressure;
    const [strip] = named(wind, 'end-across-inside-plus').strips;
    expect(strip).toMatchObject({ from: 0, to: 1.8 });
    expect(strip!.zones[0]!.net / q).toBeCloseTo(-1.25, 10);
  });

  it('is not given for arches, single slopes and open roofs, and that is said', () => {
    for (const shape of [
      { ...gable(20), form: 'arch' as const },
      { ...gable(20), form: 'single-slope' as const },
      { ...gable(20), sides: 'open' as const },
    ]) {
      const wind = endWind(site, shape);
      expect(wind).toMatchObject({ width: 0, cases: [] });
      expect(wind.none).toMatch(/no end zones/);
    }
  });
});

describe('EN 1991-1-4, zone F in place of G near the ends', () => {
  // c_pe,10 of tables 7.3a, 7.3b, 7.4a and 7.4b, restated in public of the Danish edition.
  it.each([
    [15, -0.9, 0.2],
    [30, -0.5, 0.7],
    [5, -1.7, 0],
  ])('duopitch, θ = 0, %i°: F %f or %f', (degrees, lifted, pressed) => {
    const q = windActions(eurocode, gable(degrees)).velocityPressure;
    const wind = endWind(eurocode, gable(degrees));
    const edge = (id: string) => named(wind, id).strips[0]!.zones[0]!.net / q + 0.2;
    expect(edge('end-across-lifted-lifted-inside-plus')).toBeCloseTo(lifted, 10);
    expect(edge('end-across-pressed-lifted-inside-plus')).toBeCloseTo(pressed, 10);
  });

  it.each([
    [5, -1.6, -1.3, -0.7, -0.6],
    [15, -1.3, -1.3, -0.6, -0.5],
    [30, -1.1, -1.4, -0.8, -0.5],
    [45, -1.1, -1.4, -0.9, -0.5],
    [60, -1.1, -1.2, -0.8, -0.5],
  ])('duopitch, θ = 90, %i°: F %f, G %f, H %f, I %f', (degrees, F, G, H, I) => {
    expect(ridgewiseEnd('duo', degrees)).toEqual({ low: F, high: F, middle: G, behind: H, rest: I });
  });

  it.each([
    [5, -2.1, -2.1, -1.8, -0.6, -0.5],
    [15, -2.4, -1.6, -1.9, -0.8, -0.7],
    [30, -2.1, -1.3, -1.5, -1, -0.8],
    [45, -1.5, -1.3, -1.4, -1, -0.9],
    [60, -1.2, -1.2, -1.2, -1, -0.7],
  ])(
    'single slope, θ = 90, %i°: F up %f, F low %f, G %f, H %f, I %f',
    (degrees, high, low, middle, behind, rest) => {
      expect(ridgewiseEnd('mono', degrees)).toEqual({ low, high, middle, behind, rest });
    },
  );

  it('F reaches e/4 with wind across and e/10 with wind along', () => {
    const shape = gable(20);
    const height = shape.springing + shape.rise;
    const wind = endWind(eurocode, shape);
    expect(named(wind, 'end-across-lifted-lifted-inside-plus').strips[0]!.to).toBeCloseTo(
      (2 * height) / 4,
      10,
    );
    expect(named(wind, 'end-along').strips[0]!.to).toBeCloseTo(6 / 10, 10);
  });

  it('vaults have none with the wind across, and those of a duopitch roof along', () => {
    const wind = endWind(eurocode, { ...gable(20), form: 'arch' });
    expect(wind.cases.map((one) => one.id)).toEqual(['end-along']);
    expect(wind.notCovered.join(' ')).toMatch(/vaults/i);
  });
});
