import type { KindName } from '@tautline/quantity';
import type { Basis } from '../combinations.ts';
import { levelOf } from '../resistance/duration.ts';
import { given, type Step, type StepInput } from '../step.ts';
import type { SoilClass } from './soil.ts';

/** What the ground takes. */
export interface GroundResult {
  /** Force (N) or pressure (Pa) at which it gives. */
  readonly capacity: number;
  readonly safetyFactor: number;
  /** capacity / safetyFactor: what service-level (allowable stress) load it may take. */
  readonly allowable: number;
  readonly steps: readonly Step[];
  readonly source: string;
  readonly notCovered?: readonly string[];
}

/** Puts a capacity, its step and its safety factor together. */
export function groundResult(
  step: Omit<Step, 'kind'> & { readonly kind?: KindName },
  safetyFactor: number,
  soil: SoilClass,
  earlier: readonly Step[] = [],
): GroundResult {
  const kind = step.kind ?? 'force';
  const allowable = step.value / safetyFactor;
  const inputs: StepInput[] = [
    given(step.symbol, step.meaning, step.value, kind),
    given('n', 'safety factor', safetyFactor, 'ratio'),
  ];
  return {
    capacity: step.value,
    safetyFactor,
    allowable,
    source: step.source,
    steps: [
      ...earlier,
      { ...step, kind },
      {
        symbol: `${step.symbol}_a`,
        meaning: 'what it may take in service',
        formula: `${step.symbol} / n`,
        inputs,
        value: allowable,
        kind,
        source: step.source,
      },
    ],
    ...(soil === 'rock'
      ? { notCovered: ['Rock: stakes do not drive; drilled and grouted anchors are not covered.'] }
      : {}),
  };
}

/** Checks that lengths are above zero; the name goes into the error. */
export function needPositive(values: Readonly<Record<string, number>>): void {
  for (const [name, value] of Object.entries(values)) {
    if (!(value > 0)) throw new RangeError(`${name} must be above zero`);
  }
}

/**
 * What a ground result may take under the loads of a basis: `allowable` for allowable-stress combinations,
 * half as much again for factored ones (their wind and weight factors lie about 1.5 apart), but never more
 * than the capacity where a safety factor stands between the two.
 */
export function groundAllowedAt(result: GroundResult, basis: Basis): number {
  const factored = result.allowable * levelOf(basis);
  return result.safetyFactor > 1 ? Math.min(result.capacity, factored) : factored;
}
