import {
  airPressure,
  clearSkyRadiation,
  daylightHours,
  extraterrestrialRadiation,
  halfRoundGutter,
  longWaveLoss,
  manningFlow,
  meanSaturationPressure,
  psychrometricConstant,
  referenceEvapotranspiration,
  runoff,
  saturationPressure,
  saturationSlope,
  solarRadiation,
  vapourFromHumidity,
  vapourFromWetBulb,
  windAtTwoMetres,
} from '@tautline/loads';
import { describe, expect, it } from 'vitest';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const MM_A_DAY = 86_400_000;
/** W/m² of a daily radiation in MJ/m². */
const watts = (megajoules: number): number => megajoules / 0.0864;

describe('FAO Irrigation and Drainage Paper 56, worked examples', () => {
  it('example 2: at 1800 m, 81.8 kPa and 0.054 kPa/°C', () => {
    expect(airPressure(1800)).toBeCloseTo(81.8, 1);
    expect(psychrometricConstant(airPressure(1800))).toBeCloseTo(0.054, 3);
  });

  it('example 3: 24.5 and 15 °C give 3.075, 1.705 and a mean of 2.39 kPa', () => {
    expect(saturationPressure(24.5)).toBeCloseTo(3.075, 3);
    expect(saturationPressure(15)).toBeCloseTo(1.705, 3);
    expect(meanSaturationPressure(24.5, 15)).toBeCloseTo(2.39, 2);
  });

  it('example 4: wet bulb 19.5, dry 25.6 °C at 1200 m give 1.91 kPa', () => {
    expect(vapourFromWetBulb(25.6, 19.5, airPressure(1200))).toBeCloseTo(1.91, 2);
  });

  it('example 5: 25/18 °C with 54/82 % give 1.70 kPa', () => {
    expect(vapourFromHumidity(25, 18, 0.82, 0.54)).toBeCloseTo(1.7, 2);
  });

  it('example 8: 20°S on 3 September, 32.2 MJ/m²', () => {
    expect(extraterrestrialRadiation(rad(-20), 246)).toBeCloseTo(32.2, 1);
  });

  it('example 9: 20°S on 3 September, 11.7 hours', () => {
    expect(daylightHours(rad(-20), 246)).toBeCloseTo(11.7, 1);
  });

  it('example 10: 22°54´S in May with 7.1 h of sun, 25.1, 10.9 h, 14.5 MJ/m²', () => {
    const latitude = rad(-(22 + 54 / 60));
    const outside = extraterrestrialRadiation(latitude, 135);
    const hours = daylightHours(latitude, 135);
    expect(outside).toBeCloseTo(25.1, 1);
    expect(hours).toBeCloseTo(10.9, 1);
    expect(solarRadiation(outside, 7.1, hours)).toBeCloseTo(14.5, 1);
  });

  it('example 11: long-wave loss of 3.5 MJ/m² at 25.1/19.1 °C, 2.1 kPa, clearness 14.5/18.8', () => {
    expect(longWaveLoss(25.1, 19.1, 2.1, 14.5 / 18.8)).toBeCloseTo(3.5, 1);
  });

  it('example 14: 3.2 m/s at 10 m is 2.4 m/s at 2 m', () => {
    expect(windAtTwoMetres(3.2, 10)).toBeCloseTo(2.4, 1);
  });

  it('example 17: monthly, 13°44´N in April, 5.72 mm/day', () => {
    const latitude = rad(13 + 44 / 60);
    const outside = extraterrestrialRadiation(latitude, 105);
    expect(outside).toBeCloseTo(38.06, 1);
    const sun = solarRadiation(outside, 8.5, daylightHours(latitude, 105));
    expect(sun).toBeCloseTo(22.65, 1);
    const { rate } = referenceEvapotranspiration({
      hottest: 34.8,
      coldest: 25.6,
      vapour: 2850,
      wind: 2,
      radiation: watts(sun),
      latitude,
      day: 105,
      elevation: 2,
      soilHeat: watts(0.14),
    });
    expect(rate * MM_A_DAY).toBeCloseTo(5.72, 1);
  });

  it('example 18: daily, 50°48´N on 6 July, 3.88 mm/day, with its steps', () => {
    const latitude = rad(50.8);
    const outside = extraterrestrialRadiation(latitude, 187);
    expect(outside).toBeCloseTo(41.09, 1);
    expect(windAtTwoMetres(2.78, 10)).toBeCloseTo(2.079304, 3);
    expect(psychrometricConstant(airPressure(100))).toBeCloseTo(0.0666, 3);
    expect(saturationSlope(16.9)).toBeCloseTo(0.122, 3);
    expect(vapourFromHumidity(21.5, 12.3, 0.84, 0.63)).toBeCloseTo(1.409, 3);
    expect(clearSkyRadiation(outside, 100)).toBeCloseTo(30.9, 1);
    const { rate } = referenceEvapotranspiration({
      hottest: 21.5,
      coldest: 12.3,
      vapour: 1409,
      wind: 2.078,
      radiation: watts(22.07),
      latitude,
      day: 187,
      elevation: 100,
    });
    expect(rate * MM_A_DAY).toBeCloseTo(3.88, 1);
  });

  it('example 20: 45°43´N in July from temperatures alone, 4.56 mm/day', () => {
    const { rate } = referenceEvapotranspiration({
      hottest: 26.6,
      coldest: 14.8,
      vapour: 1000 * saturationPressure(14.8),
      wind: 2,
      radiation: watts(22.29),
      latitude: rad(45 + 43 / 60),
      day: 196,
      elevation: 200,
    });
    expect(rate * MM_A_DAY).toBeCloseTo(4.56, 1);
  });
});

describe('rain and channels', () => {
  it('150 mm/h is 0.042 l/s on a square metre (published drainage guide)', () => {
    expect(runoff(0.15 / 3600, 1).flow * 1000).toBeCloseTo(0.042, 3);
  });

  it('EN 12056-3 length factors 1.0, 0.93, 0.86, 0.80 at 50, 100, 150, 200 depths (published)', () => {
    const whole = halfRoundGutter(0.1, 2).flow;
    const share = [2.5, 5, 7.5, 10].map((length) => halfRoundGutter(0.1, length).flow / whole);
    [1, 0.93, 0.86, 0.8].forEach((factor, i) => {
      expect(share[i]).toBeCloseTo(factor, 10);
    });
  });

  it('half-round 100 mm level eaves gutter: 0.78 l/s (handbook, from memory)', () => {
    expect(halfRoundGutter(0.1, 2).flow * 1000).toBeCloseTo(0.78, 2);
  });

  it('12 in pipe full at 1 %, n = 0.013: 3.56 ft³/s (pipe charts, from memory)', () => {
    const d = 0.3048;
    const flow = manningFlow((Math.PI / 4) * d * d, Math.PI * d, 0.01, 0.013).flow;
    expect(flow / 0.0283168).toBeCloseTo(3.56, 1);
  });
});
