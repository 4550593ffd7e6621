/** Air and sun by FAO Irrigation and Drainage Paper 56, chapter 3. Pressures in kPa and radiation in MJ/m²/day as there. */

/** Solar constant, MJ/(m²·min), and the Stefan-Boltzmann constant, MJ/(K⁴·m²·day): FAO-56 eq. 21 and 39. */
const SOLAR_CONSTANT = 0.082;
const STEFAN_BOLTZMANN = 4.903e-9;

/** Air pressure at a height above the sea, kPa (eq. 7). */
export function airPressure(elevation: number): number {
  return 101.3 * ((293 - 0.0065 * elevation) / 293) ** 5.26;
}

/** Psychrometric constant, kPa/°C (eq. 8). */
export function psychrometricConstant(pressure: number): number {
  return 0.000665 * pressure;
}

/** Saturation vapour pressure at a temperature in °C, kPa (eq. 11). */
export function saturationPressure(temperature: number): number {
  return 0.6108 * Math.exp((17.27 * temperature) / (temperature + 237.3));
}

/** Slope of the saturation curve, kPa/°C (eq. 13). */
export function saturationSlope(temperature: number): number {
  return (4098 * saturationPressure(temperature)) / (temperature + 237.3) ** 2;
}

/** Mean saturation pressure of a day, kPa (eq. 12). */
export function meanSaturationPressure(hottest: number, coldest: number): number {
  return (saturationPressure(hottest) + saturationPressure(coldest)) / 2;
}

/** Vapour pressure from the day's extremes of relative humidity (0..1), kPa (eq. 17). */
export function vapourFromHumidity(hottest: number, coldest: number, most: number, least: number): number {
  return (saturationPressure(coldest) * most + saturationPressure(hottest) * least) / 2;
}

/** Vapour pressure from a ventilated wet and dry bulb, kPa (eq. 15 and 16, a = 0.000662). */
export function vapourFromWetBulb(dry: number, wet: number, pressure: number): number {
  return saturationPressure(wet) - 0.000662 * pressure * (dry - wet);
}

/** Wind at 2 m from wind at a height over grass, m/s (eq. 47). */
export function windAtTwoMetres(wind: number, height: number): number {
  return (wind * 4.87) / Math.log(67.8 * height - 5.42);
}

interface SunPosition {
  readonly distance: number;
  readonly declination: number;
  readonly sunset: number;
}

function sunOf(latitude: number, day: number): SunPosition {
  const year = (2 * Math.PI * day) / 365;
  const declination = 0.409 * Math.sin(year - 1.39);
  const cosine = -Math.tan(latitude) * Math.tan(declination);
  return {
    distance: 1 + 0.033 * Math.cos(year),
    declination,
    sunset: Math.acos(Math.min(1, Math.max(-1, cosine))),
  };
}

/** Radiation above the air on a day of the year (1..365) at a latitude in rad, MJ/m²/day (eq. 21). */
export function extraterrestrialRadiation(latitude: number, day: number): number {
  const { distance, declination, sunset } = sunOf(latitude, day);
  return (
    ((24 * 60) / Math.PI) *
    SOLAR_CONSTANT *
    distance *
    (sunset * Math.sin(latitude) * Math.sin(declination) +
      Math.cos(latitude) * Math.cos(declination) * Math.sin(sunset))
  );
}

/** Hours of daylight (eq. 34). */
export function daylightHours(latitude: number, day: number): number {
  return (24 / Math.PI) * sunOf(latitude, day).sunset;
}

/** Radiation at the ground from hours of sun: (0.25 + 0.5 n/N) R_a, MJ/m²/day (eq. 35). */
export function solarRadiation(outside: number, sunHours: number, daylight: number): number {
  return (0.25 + (0.5 * sunHours) / daylight) * outside;
}

/** Clear-sky radiation, MJ/m²/day (eq. 37). */
export function clearSkyRadiation(outside: number, elevation: number): number {
  return (0.75 + 2e-5 * elevation) * outside;
}

/** Net long-wave loss, MJ/m²/day (eq. 39). `clearness` is R_s/R_so, held at 1. */
export function longWaveLoss(hottest: number, coldest: number, vapour: number, clearness: number): number {
  const fourth = ((hottest + 273.16) ** 4 + (coldest + 273.16) ** 4) / 2;
  return (
    STEFAN_BOLTZMANN * fourth * (0.34 - 0.14 * Math.sqrt(vapour)) * (1.35 * Math.min(1, clearness) - 0.35)
  );
}
