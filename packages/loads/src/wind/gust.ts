/** Gusts: return periods, averaging times, and what a change of gust does to pressure. */

/** Turbulence intensity of EN 1991-1-4 at 10 m in category II country, 1/ln(10/0.05) (eq. 4.7). */
export const OPEN_TURBULENCE = 1 / Math.log(10 / 0.05);

/**
 * Pressure under another gust. Pressure goes with the square of the speed in every standard used here.
 * @param pressure Pa under `fromGust`; gusts in m/s, `fromGust` above zero.
 */
export function scalePressure(pressure: number, fromGust: number, toGust: number): number {
  return pressure * (toGust / fromGust) ** 2;
}

/**
 * 10-minute mean that EN 1991-1-4 (4.5) turns into exactly the peak pressure of the given gust at 10 m in
 * category II country: v_b = gust / sqrt(1 + 7 I_v(10 m)) = gust / 1.523. m/s in and out. Derived from
 * EN 1991-1-4 eq. 4.7 and 4.8, so the pressure the user knows is kept rather than a fixed speed ratio.
 */
export function tenMinuteMean(gust: number): number {
  return gust / Math.sqrt(1 + 7 * OPEN_TURBULENCE);
}

/** 3 s gust of a 10-minute mean; the exact inverse of `tenMinuteMean`. m/s. */
export function threeSecondGust(mean: number): number {
  return mean * Math.sqrt(1 + 7 * OPEN_TURBULENCE);
}

/**
 * Speed of a T-year gust over that of the 50-year gust, outside cyclone country:
 * V_T/V_50 = 0.36 + 0.1 ln(12 T) (ASCE 7 commentary C26.5). T in years, at least 5.
 */
export function asceReturnFactor(years: number): number {
  return 0.36 + 0.1 * Math.log(12 * Math.max(5, years));
}

/**
 * Probability factor of EN 1991-1-4 eq. 4.2 with K = 0.2, n = 0.5: v(T)/v(50 years).
 * T in years, above 1.
 */
export function enReturnFactor(years: number): number {
  const p = 1 / Math.max(1.05, years);
  return Math.sqrt((1 - 0.2 * Math.log(-Math.log(1 - p))) / (1 - 0.2 * Math.log(-Math.log(0.98))));
}
