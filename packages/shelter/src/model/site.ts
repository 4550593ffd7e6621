import type { Origin } from './origin.ts';

export type LoadBasis = 'asce7-asd' | 'asce7-strength' | 'eurocode';
export type Exposure = 'sheltered' | 'open' | 'coastal';
export type SoilClass =
  | 'sand-loose'
  | 'sand'
  | 'gravel'
  | 'loam'
  | 'clay-soft'
  | 'clay'
  | 'clay-stiff'
  | 'rock';

/** A day of the dry season, for what the crop drinks; every part as far as it was said. */
export interface DryDay {
  /** Least and greatest air temperature, °C. */
  readonly coldest?: number;
  readonly hottest?: number;
  /** ISO date. */
  readonly on?: string;
  /** Hours of sun, as s. */
  readonly sunshine?: number;
  /** Mean wind 2 m over the ground, m/s. */
  readonly breeze?: number;
}

/** The place a shelter stands in. SI units; temperatures in °C. */
export interface Site {
  readonly id: string;
  readonly origin: Origin;
  /** Design gust, 3 s at 10 m in open country, m/s. */
  readonly gust: number;
  /** Return period the gust belongs to, years. */
  readonly gustReturnPeriod: number;
  readonly exposure: Exposure;
  /** Height above sea level, m. */
  readonly elevation: number;
  /** Topographic factor (speed-up over hills and gullies), 1 on flat ground. */
  readonly topography: number;
  /** Ground snow load, Pa. */
  readonly groundSnow: number;
  /** Design rain, m/s (110 mm/h = 3.06e-5). */
  readonly rain: number;
  readonly soil: SoilClass;
  /** Whether a storm finds the ground soaked, or it drains well enough to stay firm. */
  readonly soaked: boolean;
  /** Feet give as the soil does, as far as it was said. */
  readonly givingGround?: boolean;
  /** Coldest day of building and hottest pipe or film temperature, °C. */
  readonly coldest: number;
  readonly hottest: number;
  /** rad, south negative. */
  readonly latitude: number;
  readonly basis: LoadBasis;
  /** True: the low-hazard agricultural class of the chosen standard. */
  readonly lowHazard: boolean;
  readonly dryDay?: DryDay;
}
