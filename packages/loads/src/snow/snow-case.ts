/** What snow is told, and what it answers. */
import type { Basis } from '../combinations.ts';
import type { Step } from '../step.ts';

export interface SnowInput {
  readonly basis: Basis;
  /** Ground snow, Pa. */
  readonly groundSnow: number;
  readonly exposure: 'sheltered' | 'open' | 'coastal';
  readonly lowHazard: boolean;
}

export interface SnowShape {
  readonly form: 'arch' | 'gable' | 'single-slope';
  readonly span: number;
  readonly rise: number;
}

/** Upright load on plan, Pa, straight from one end of the strip to the other; places as shares of the span. */
export interface SnowZone {
  readonly from: number;
  readonly to: number;
  readonly loadFrom: number;
  readonly loadTo: number;
}

export interface SnowCase {
  readonly id: string;
  readonly title: string;
  readonly zones: readonly SnowZone[];
  readonly steps: readonly Step[];
  readonly source: string;
}

export interface SnowActions {
  readonly cases: readonly SnowCase[];
  readonly notCovered: readonly string[];
}

/** Slope in degrees at a share x of the span of a circular arch; the pitch of straight roofs. */
export function slopeAt(shape: SnowShape, x: number): number {
  if (shape.form !== 'arch') return pitchOf(shape);
  const radius = shape.span ** 2 / (8 * shape.rise) + shape.rise / 2;
  const offset = Math.min(1, (Math.abs(x - 0.5) * shape.span) / radius);
  const angle = (Math.asin(offset) * 180) / Math.PI;
  const below = shape.rise > radius && Math.abs(x - 0.5) > 0.4999;
  return below ? 180 - angle : angle;
}

/** Pitch of a straight roof, or the slope from eave to crown of an arch, degrees. */
export function pitchOf(shape: SnowShape): number {
  const run = shape.form === 'single-slope' ? shape.span : shape.span / 2;
  return (Math.atan2(shape.rise, run) * 180) / Math.PI;
}
