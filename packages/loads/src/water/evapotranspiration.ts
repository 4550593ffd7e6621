/** Water the crop asks for: FAO-56 Penman-Monteith, outside and under cover. */
import { given, type Step } from '../step.ts';
import {
  airPressure,
  clearSkyRadiation,
  extraterrestrialRadiation,
  longWaveLoss,
  meanSaturationPressure,
  psychrometricConstant,
  saturationSlope,
} from './air.ts';

/** MJ/m²/day in one W/m²: by definition. */
const MEGAJOULES_A_DAY = 0.0864;
/** m/s in one mm/day: by definition. */
const MILLIMETRE_A_DAY = 1 / 86_400_000;

/** One day's weather. */
export interface Weather {
  /** Greatest and least air temperature, °C. */
  readonly hottest: number;
  readonly coldest: number;
  /** Vapour pressure, Pa. */
  readonly vapour: number;
  /** Wind at 2 m, m/s. */
  readonly wind: number;
  /** Sun on level ground, mean over the day, W/m². */
  readonly radiation: number;
  /** Rad, south negative. */
  readonly latitude: number;
  /** 1..365. */
  readonly day: number;
  /** m above the sea. */
  readonly elevation: number;
  /** Heat into the soil, mean over the day, W/m²; 0 for single days. */
  readonly soilHeat?: number;
}

export interface Evapotranspiration {
  /** Reference evapotranspiration, m/s (1 mm/day = 1.157e-8). */
  readonly rate: number;
  readonly steps: readonly Step[];
  readonly source: string;
}

/** Reference evapotranspiration by FAO-56 eq. 6. Throws a RangeError for wind or radiation below zero. */
export function referenceEvapotranspiration(weather: Weather): Evapotranspiration {
  if (!(weather.wind >= 0 && weather.radiation >= 0)) {
    throw new RangeError('evapotranspiration needs wind and radiation of zero or more');
  }
  const mean = (weather.hottest + weather.coldest) / 2;
  const gamma = psychrometricConstant(airPressure(weather.elevation));
  const slope = saturationSlope(mean);
  const vapour = weather.vapour / 1000;
  const deficit = Math.max(0, meanSaturationPressure(weather.hottest, weather.coldest) - vapour);
  const outside = extraterrestrialRadiation(weather.latitude, weather.day);
  const sun = weather.radiation * MEGAJOULES_A_DAY;
  const clear = clearSkyRadiation(outside, weather.elevation);
  const net =
    0.77 * sun - longWaveLoss(weather.hottest, weather.coldest, vapour, clear > 0 ? sun / clear : 0.5);
  const soil = (weather.soilHeat ?? 0) * MEGAJOULES_A_DAY;
  const millimetres =
    (0.408 * slope * (net - soil) + ((gamma * 900) / (mean + 273)) * weather.wind * deficit) /
    (slope + gamma * (1 + 0.34 * weather.wind));
  const rate = Math.max(0, millimetres) * MILLIMETRE_A_DAY;
  return {
    rate,
    source: 'fao56:6',
    steps: [
      {
        symbol: 'R_n',
        meaning: 'net radiation',
        formula: 'R_n = 0.77 R_s - R_nl',
        inputs: [given('R_s', 'sun on level ground', weather.radiation, 'irradiance')],
        value: net / MEGAJOULES_A_DAY,
        kind: 'irradiance',
        source: 'fao56:40',
      },
      {
        symbol: 'ET_o',
        meaning: 'reference evapotranspiration',
        formula: 'ET_o = (0.408 Δ (R_n - G) + γ 900/(T + 273) u_2 (e_s - e_a)) / (Δ + γ (1 + 0.34 u_2))',
        inputs: [
          given('Δ', 'slope of the vapour curve, kPa/°C', slope, 'ratio'),
          given('γ', 'psychrometric constant, kPa/°C', gamma, 'ratio'),
          given('T', 'mean temperature', mean, 'temperature'),
          given('u_2', 'wind at 2 m', weather.wind, 'speed'),
          given('e_s - e_a', 'dryness of the air', deficit * 1000, 'pressure'),
        ],
        value: rate,
        kind: 'rain-rate',
        source: 'fao56:6',
      },
    ],
  };
}

export interface CoverEffect {
  /** Light let through, 0..1. */
  readonly light: number;
  /** Wind under the roof over wind outside: 0.5 with open sides, 0.1 with clad ones (common practice). */
  readonly wind: number;
  /** Crop coefficient K_c. */
  readonly crop: number;
  /** Share of the water given that the crop gets: drip 0.9, sprinkler 0.75 (FAO-56 practice). */
  readonly efficiency: number;
}

export interface IrrigationDemand {
  /** Water to give, m/s over the covered area (no rain reaches it). */
  readonly rate: number;
  readonly steps: readonly Step[];
}

/** Water to be given under a rain cover: FAO-56 with the light and wind that the cover leaves, times K_c. */
export function irrigationDemand(weather: Weather, cover: CoverEffect): IrrigationDemand {
  const inside = referenceEvapotranspiration({
    ...weather,
    radiation: weather.radiation * cover.light,
    wind: weather.wind * cover.wind,
  });
  const rate = (inside.rate * cover.crop) / cover.efficiency;
  return {
    rate,
    steps: [
      ...inside.steps,
      {
        symbol: 'I',
        meaning: 'water to give, for all rain is kept off',
        formula: 'I = K_c ET_o / η',
        inputs: [
          given('K_c', 'crop coefficient', cover.crop, 'ratio'),
          given('ET_o', 'under the cover', inside.rate, 'rain-rate'),
          given('η', 'share that the crop gets', cover.efficiency, 'ratio'),
        ],
        value: rate,
        kind: 'rain-rate',
        source: 'fao56:58',
      },
    ],
  };
}
