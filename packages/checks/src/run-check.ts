import type { Check, CheckInput } from './check.ts';
import type { Finding, Found } from './finding.ts';

/** Answers of a check, each with the id of the check and what that is about. */
export function stamped({ id, nature }: Check, answers: readonly Found[]): readonly Finding[] {
  return answers.map((answer) => ({ ...answer, id, ...(nature === undefined ? {} : { nature }) }));
}

/** Puts a check's question to a shelter. */
export function runCheck(check: Check, input: CheckInput): readonly Finding[] {
  return stamped(check, check.run(input));
}
