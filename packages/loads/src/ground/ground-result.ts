import type { KindName } from '@tautline/quantity';
import type { Basis } from '../combinations.ts';
import type { Expected } from '../expected.ts';
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
  /** What is expected to be reached, in the state the ground was taken to be in. */
  readonly expected: Expected;
  readonly steps: readonly Step[];
  readonly source: string;
  readonly notCovered?: readonly string[];
}

/**
 * Coefficient of variation of what ground reaches of which only the class is known: own choice. Undrained strength
 * scatters by 10 to 60 % at one place (Phoon and Kulhawy 1999, as a public restatement has it), and the methods by
 * some 30 to 40 % against tests (Phoon and Kulhawy 2005, from memory); 35 % each make 0.5.
 */
export const GROUND_SPREAD = 0.5;

/** Coefficient of variation of a weight on the ground: own choice. */
export const WEIGHT_SPREAD = 0.1;

/** What ground is expected to reach: the method's own value as the median, in the soil's class. */
export function expectedHold(
  median: number,
  kind: KindName,
  spread = GROUND_SPREAD,
  source = 'tests:pull-out',
): Expected {
  return {
    median,
    spread,
    source,
    steps: [
      {
        symbol: 'R_m',
        meaning: 'what is expected to be reached, no safety in it',
        formula: 'R_m = R',
        inputs: [given('R', 'value of the method', median, kind)],
        value: median,
        kind,
        source,
      },
    ],
  };
}

/** Puts a capacity, its step and its safety factor together; `rule` is the source of the factor where it has its own. */
export function groundResult(
  step: Omit<Step, 'kind'> & { readonly kind?: KindName },
  safetyFactor: number,
  soil: SoilClass,
  earlier: readonly Step[] = [],
  { spread = GROUND_SPREAD, rule = step.source }: { readonly spread?: number; readonly rule?: string } = {},
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
    expected: expectedHold(step.value, kind, spread),
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
        source: rule,
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
