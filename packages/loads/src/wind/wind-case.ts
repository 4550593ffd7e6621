import type { Step } from '../step.ts';

/** The outer shape of a shelter as the wind standards see it. SI. */
export interface WindShape {
  readonly form: 'arch' | 'gable' | 'single-slope';
  readonly span: number;
  readonly length: number;
  /** Rise of the roof above its springing or eave. */
  readonly rise: number;
  /** Height of the springing or eave over the ground (0 for an arch from the ground). */
  readonly springing: number;
  readonly sides: 'open' | 'clad' | 'screened';
  readonly ends: 'open' | 'clad';
  /** Open area share of screened sides, 0..1. */
  readonly sidePorosity?: number;
  /**
   * True when one end or side stands open while the rest is shut: the wind then blows the house up (or sucks
   * it empty) from inside. Openings on both ends that let it through are not meant.
   */
  readonly oneSideOpen?: boolean;
  /** Share of the space under an open roof that crop or goods block against the wind, 0..1; 0 when absent. */
  readonly blockage?: number;
}

/** What a wind standard needs to know of the place, and which standard. SI. */
export interface WindInput {
  /** 3 s gust at 10 m in open country, m/s. */
  readonly gust: number;
  /** Return period that gust belongs to, years. */
  readonly gustReturnPeriod: number;
  readonly exposure: 'sheltered' | 'open' | 'coastal';
  /** Height above sea level, m. */
  readonly elevation: number;
  /** Speed-up of the wind speed by hills and gullies, 1 on flat ground. */
  readonly topography: number;
  readonly basis: 'asce7-asd' | 'asce7-strength' | 'eurocode';
  readonly lowHazard: boolean;
}

export interface WindZone {
  readonly surface: 'roof' | 'windward-wall' | 'leeward-wall';
  /** Share of the developed roof line, or of the wall height, from the windward foot: 0..1. */
  readonly from: number;
  readonly to: number;
  /** Net pressure on the surface, Pa: positive presses on it from outside, negative lifts it off. */
  readonly net: number;
}

export interface WindCase {
  readonly id: string;
  readonly title: string;
  readonly direction: 'across' | 'along';
  /** For a single slope: which side the wind meets first. Absent where the shape is symmetric. */
  readonly from?: 'low side' | 'high side';
  readonly zones: readonly WindZone[];
  /** Force along the house on one end frame and its covering, N, for racking. */
  readonly alongForce?: number;
  readonly steps: readonly Step[];
  readonly source: string;
}

export interface WindActions {
  readonly cases: readonly WindCase[];
  /** Velocity pressure at the mean (ASCE) or top (EN) height of the roof, Pa. */
  readonly velocityPressure: number;
  /** What the chosen standard does not cover for this shape, in plain words. */
  readonly notCovered: readonly string[];
}

/** A strip across the house near one end, and what presses on it. */
export interface EndStrip {
  /** From the end, m; infinite for what lies behind the last. */
  readonly from: number;
  readonly to: number;
  readonly zones: readonly WindZone[];
}

/** One wind on the frames near an end: strips from the end inwards, without a gap. */
export interface EndWindCase extends Omit<WindCase, 'zones' | 'alongForce'> {
  readonly strips: readonly EndStrip[];
}

export interface EndWind {
  /** How far the zone reaches from either end, m; 0 without one. */
  readonly width: number;
  readonly cases: readonly EndWindCase[];
  /** Why there are no cases: what the standard does not give. */
  readonly none?: string;
  /** What is left out of the cases, in plain words. */
  readonly notCovered: readonly string[];
}

/** Local suction for film, sheet and their fastenings. */
export interface CladdingZone {
  readonly place: 'middle' | 'edge' | 'corner';
  /** Pa, negative: greatest outward net pressure. */
  readonly suction: number;
  /** Pa, greatest inward net pressure. */
  readonly pressure: number;
}

export interface CladdingSuction {
  readonly zones: readonly CladdingZone[];
  /** Width of the edge strip, m. */
  readonly edgeWidth: number;
  readonly steps: readonly Step[];
  readonly source: string;
  readonly notCovered: readonly string[];
}
