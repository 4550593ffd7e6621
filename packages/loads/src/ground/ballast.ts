/** Weight on the ground, and what its friction holds. */
import { GRAVITY } from '../rain.ts';
import { given, type StepInput } from '../step.ts';
import { type GroundResult, groundResult, needPositive, WEIGHT_SPREAD } from './ground-result.ts';
import { WEIGHT_SHARE } from './safety.ts';
import { type SoilClass, soilOf } from './soil.ts';

export interface BallastInput {
  readonly soil: SoilClass;
  /** kg on one foot. */
  readonly mass: number;
}

/** Weight on a foot against lift, N: 0.6 of it may be counted on, as of every weight (ASCE 7 2.4.1). */
export function ballastUplift(input: BallastInput): GroundResult {
  needPositive({ mass: input.mass });
  return groundResult(
    {
      symbol: 'W',
      meaning: 'lift that raises the ballast',
      formula: 'W = m g',
      inputs: [given('m', 'ballast', input.mass, 'mass'), given('g', 'gravity, N/kg', GRAVITY, 'ratio')],
      value: input.mass * GRAVITY,
      source: 'derived:weight',
    },
    1 / WEIGHT_SHARE,
    input.soil,
    [],
    { spread: WEIGHT_SPREAD },
  );
}

/**
 * Sideways force that a ballasted or bearing foot takes before it slides, N: friction on what weight the
 * lift leaves, or cohesion on its area, at most half the weight (IBC 1806.3.2).
 * @param lift N pulling up at the same time; `area` m2 of contact
 */
export function ballastSliding(input: BallastInput, lift: number, area: number): GroundResult {
  needPositive({ mass: input.mass, area });
  return slidingFriction(input.soil, Math.max(0, input.mass * GRAVITY - lift), area);
}

/** Sideways force before a foot slides that is pressed down with a force (N) on an area (m2). */
export function slidingFriction(id: SoilClass, pressed: number, area: number): GroundResult {
  const soil = soilOf(id);
  const rubs = soil.sliding > 0;
  const inputs: StepInput[] = [given('V', 'force left on the ground', pressed, 'force')];
  return groundResult(
    {
      symbol: 'H_f',
      meaning: 'sideways force at which the foot slides',
      formula: rubs ? 'H_f = μ V' : 'H_f = min(c A, V / 2)',
      inputs: rubs
        ? [given('μ', 'friction', soil.sliding, 'ratio'), ...inputs]
        : [
            given('c', 'sliding cohesion', soil.slidingCohesion, 'stress'),
            given('A', 'area', area, 'area'),
            ...inputs,
          ],
      value: rubs ? soil.sliding * pressed : Math.min(soil.slidingCohesion * area, pressed / 2),
      source: 'ibc2018:1806.2',
    },
    1,
    id,
  );
}
