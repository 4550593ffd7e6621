/** Fixes of what is found of shelters side by side, worked out as those of a shelter: by trying them. */
import { applyEdits, type Range, resolveRange } from '@tautline/shelter';
import { evaluateRange } from '../evaluate-range.ts';
import type { Finding, Fix } from '../finding.ts';
import { checkOf } from '../registry.ts';
import { type Attempt, type FixContext, type Trial, tried } from './search.ts';

const unresolved: Trial = { utilisation: Number.POSITIVE_INFINITY, passes: false, worse: [] };

/** Every change of a range after which a finding of it is gone and nothing new is found; `world` holds the range. */
export function rangeFixesFor(
  finding: Finding,
  range: Range,
  { world, system, on }: Pick<FixContext, 'world' | 'system' | 'on'>,
): Fix[] {
  const levers = checkOf(finding.id)?.rangeLevers?.(range, finding) ?? [];
  const key = ({ id, part }: Finding): string => `${id}@${part}`;
  const open = (findings: readonly Finding[]): ReadonlySet<string> =>
    new Set(findings.filter(({ severity }) => severity !== 'information').map(key));
  const before = open(evaluateRange(range, on).findings);
  const attempt: Attempt = (edits) => {
    const changed = { ...world, definitions: applyEdits(world.definitions, edits) };
    const after = resolveRange(range.name, changed).range;
    if (after === undefined) return unresolved;
    const { findings } = evaluateRange(after, on);
    const left = open(findings);
    const shares = findings.filter((one) => key(one) === key(finding)).map((one) => one.utilisation ?? 0);
    const passes = !left.has(key(finding)) && [...left].every((one) => before.has(one));
    return { utilisation: Math.max(0, ...shares), passes, worse: [] };
  };
  return tried(levers, attempt, system);
}
