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
  readonly zones: readonly WindZone[];
  /** Force along the house on one end frame and its covering, N, for racking. */
  readonly alongForce?: number;
  readonly steps: readonly Step[];
  readonly source: string;
}

export interface WindActions {
  readonly cases: readonly WindCase[];
  /** What the chosen standard does not cover for this shape, in plain words. */
  readonly notCovered: readonly string[];
}
