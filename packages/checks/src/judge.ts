import type { Step, StepInput } from '@tautline/loads';
import type { KindName } from '@tautline/quantity';
import type { Part } from '@tautline/shelter';
import type { Finding, Found, Measured, MessagePiece, Severity, Verdict } from './finding.ts';

/** From this share of the capacity on a finding says 'near its limit': own choice. */
export const nearLimit = 0.85;

export interface Judged {
  readonly part: Pick<Part, 'id' | 'origin'>;
  readonly utilisation: number;
  readonly demand: Measured;
  readonly capacity: Measured;
  /** Said when it fails or comes near; the same words serve both. */
  readonly message: readonly MessagePiece[];
  readonly source: string;
  readonly steps: readonly Step[];
  readonly loadCase?: string;
  readonly related?: Finding['related'];
  /** Failing is a warning only, for what does not bring the house down. */
  readonly mild?: boolean;
  /** All of the capacity may be used: a length of pipe or a roll used whole is no near miss. */
  readonly exact?: boolean;
}

/** Turns demand and capacity into a finding with a verdict. A utilisation that is no number is not checked. */
export function judge(judged: Judged): Found {
  const { utilisation } = judged;
  if (
    !Number.isFinite(utilisation) ||
    !Number.isFinite(judged.demand.value) ||
    !Number.isFinite(judged.capacity.value)
  ) {
    return notChecked(judged.part, 'the calculation gave no number for these values', judged.source);
  }
  const near = judged.exact === true ? 1 : nearLimit;
  const verdict: Verdict = utilisation > 1 ? 'fails' : utilisation > near ? 'near its limit' : 'passes';
  const severity: Severity =
    verdict === 'fails'
      ? judged.mild === true
        ? 'warning'
        : 'error'
      : verdict === 'near its limit'
        ? 'warning'
        : 'information';
  return {
    verdict,
    severity,
    part: judged.part.id,
    origin: judged.part.origin,
    related: judged.related ?? [],
    message: judged.message,
    demand: judged.demand,
    capacity: judged.capacity,
    utilisation,
    source: judged.source,
    steps: judged.steps,
    ...(judged.loadCase === undefined ? {} : { loadCase: judged.loadCase }),
  };
}

/** A question that could not be answered, and why. */
export function notChecked(part: Pick<Part, 'id' | 'origin'>, reason: string, source = 'derived'): Found {
  return {
    verdict: 'not checked',
    severity: 'information',
    part: part.id,
    origin: part.origin,
    related: [],
    message: ['Not checked: ', reason, '.'],
    source,
    steps: [],
    reason,
  };
}

export function step(
  symbol: string,
  meaning: string,
  formula: string,
  inputs: readonly StepInput[],
  value: number,
  kind: KindName,
  source: string,
): Step {
  return { symbol, meaning, formula, inputs, value, kind, source };
}

/** A step whose formula is words, which nobody can work out: what was looked up, counted, found by solving a frame. */
export const inWords = (...told: Parameters<typeof step>): Step => ({ ...step(...told), prose: true });

export { given } from '@tautline/loads';

export const length = (value: number): Measured => ({ value, kind: 'length' });
export const measured = (value: number, kind: KindName): Measured => ({
  value,
  kind,
});
/** Utilisation as a percentage for a message. */
export const percent = (value: number): Measured => ({
  value,
  kind: 'percent',
});
