/** How long a load stays, hours of it, and what that does to wood, bamboo and plastic. */
import type { Basis } from '../combinations.ts';

/**
 * How long the load of a combination stays: that of its shortest-acting part, for a combination is only there as long
 * as all of it is. Own weight is permanent, a crop hangs for a season, snow lies for weeks, water stands for days, a
 * person works or leans for hours, a gust blows for seconds.
 */
export type Duration = 'permanent' | 'season' | 'weeks' | 'days' | 'person' | 'gust';

/** From the longest to the shortest. */
export const DURATIONS: readonly Duration[] = ['permanent', 'season', 'weeks', 'days', 'person', 'gust'];

/** The shortest of some; permanent without any. */
export const shortestOf = (some: readonly Duration[]): Duration =>
  DURATIONS.findLast((one) => some.includes(one)) ?? 'permanent';

/** Whether it stays for months: what sags by it has crept, and what it presses on is pressed for good. */
export const lasts = (duration: Duration): boolean => duration === 'permanent' || duration === 'season';

/**
 * Hours each stay stands for, used for plastics: all the hours of full load together in the life of a house. Ten years,
 * half a year, two months, a week, a working day, the minutes of a test. Own choice, near the classes of NDS 2.3.2.
 */
export const HOURS: Record<Duration, number> = {
  permanent: 87_600,
  season: 4_380,
  weeks: 1_440,
  days: 168,
  person: 8,
  gust: 0.1,
};

/**
 * NDS table 2.3.2 C_D: permanent (dead load), ten years (live load of a floor), two months (snow), seven days
 * (construction load; here standing water and people on a roof), ten minutes (wind). Opened in a public copy.
 */
export const NDS_DURATION: Record<Duration, number> = {
  permanent: 0.9,
  season: 1,
  weeks: 1.15,
  days: 1.25,
  person: 1.25,
  gust: 1.6,
};

/**
 * NDS table N.3 λ, the time effect factor of the strength format: 1.4 D 0.6; stored load 0.7; roof live load, snow or
 * rain 0.8; wind 1.0. From memory.
 */
export const NDS_TIME_EFFECT: Record<Duration, number> = {
  permanent: 0.6,
  season: 0.7,
  weeks: 0.8,
  days: 0.8,
  person: 0.8,
  gust: 1,
};

/**
 * EN 1995-1-1 table 3.1 k_mod of solid timber: service classes 1 and 2, then 3. Permanent, long-term, medium-term,
 * short-term, short-term, instantaneous. Table 2.2 leaves to the nations whether snow is medium-term (the north, and
 * high places) or short-term (low places of milder countries, 0.9): a site names no nation, so the weaker is taken.
 */
export const EN_KMOD: Record<Duration, readonly [number, number]> = {
  permanent: [0.6, 0.5],
  season: [0.7, 0.55],
  weeks: [0.8, 0.65],
  days: [0.9, 0.7],
  person: [0.9, 0.7],
  gust: [1.1, 0.9],
};

/**
 * ISO 22156:2021 C_DF of bamboo: service class 2 (under a roof) as a public restatement has it; 3 (rained on or in
 * soil), for which that restatement has none, from memory.
 */
export const BAMBOO_DURATION: Record<Duration, readonly [number, number]> = {
  permanent: [0.55, 0.5],
  season: [0.55, 0.5],
  weeks: [0.65, 0.55],
  days: [0.65, 0.55],
  person: [0.65, 0.55],
  gust: [0.85, 0.65],
};

/**
 * Strength of PVC left after `hours` under load, over its short-term strength: a straight line in
 * log-log from 48.3 MPa at 0.1 h (D1784 cell 12454) to the hydrostatic design basis 27.6 MPa at 100,000 h.
 */
export function plasticDuration(hours: number): number {
  const exponent = Math.log10(48.3 / 27.6) / 6;
  return (Math.max(0.1, hours) / 0.1) ** -exponent;
}

/**
 * Strength-level stress that goes with an allowable one, for families whose rules know allowable stress
 * only: 1.5 for both factored bases (wind at strength level is 1/0.6 of the allowable one, weight 1.2 to
 * 1.4, so 1.5 lies between; EN's variable factor is 1.5).
 */
export function levelOf(basis: Basis): number {
  return basis === 'asce7-asd' ? 1 : 1.5;
}
