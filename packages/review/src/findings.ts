/** Findings and acceptances that came, went or changed between two verdicts. */
import type { Finding, MessagePiece, Severity, Verdict } from '@tautline/checks';
import type { Acceptance } from '@tautline/shelter';
import type { Judged } from './revision.ts';

export interface FindingSide {
  readonly verdict: Verdict;
  readonly severity: Severity;
  readonly message: readonly MessagePiece[];
  readonly utilisation?: number;
  /** Why it is accepted. */
  readonly accepted?: string;
}

export interface FindingChange {
  /** `accepted`: it still stands, and an acceptance now covers it. */
  readonly change: 'came' | 'went' | 'worse' | 'better' | 'accepted';
  /** Id of the check. */
  readonly id: string;
  readonly part: string;
  readonly before?: FindingSide;
  readonly after?: FindingSide;
}

export interface AcceptanceChange {
  readonly change: 'added' | 'removed' | 'changed' | 'went stale';
  readonly check: string;
  readonly because?: string;
  readonly until?: string;
  /** Why it is stale. */
  readonly message?: readonly MessagePiece[];
}

/** Share of the capacity by which a standing finding must move to be told. */
const worthTelling = 0.01;
const weight = { error: 2, warning: 1, information: 0 } as const;
const stale = 'stale-acceptance';

/** Findings at the level of errors and warnings; stale acceptances are told with the acceptances. */
export function findingChanges(
  before: readonly Finding[],
  after: readonly Finding[],
): readonly FindingChange[] {
  const old = keyed(before);
  const now = keyed(after);
  const keys = [...now.keys(), ...[...old.keys()].filter((key) => !now.has(key))];
  const changes = keys.flatMap((key) => changeOf(old.get(key), now.get(key)));
  const order = ['came', 'worse', 'accepted', 'better', 'went'];
  const rank = ({ change, before: was, after: is }: FindingChange): number =>
    order.indexOf(change) * 10 - weight[(is ?? was)?.severity ?? 'information'];
  return changes.sort((a, b) => rank(a) - rank(b));
}

function changeOf(before: Finding | undefined, after: Finding | undefined): FindingChange[] {
  const was = weight[before?.severity ?? 'information'];
  const is = weight[after?.severity ?? 'information'];
  const nowAccepted = after?.accepted !== undefined && before?.accepted === undefined;
  const moved = (after?.utilisation ?? 0) - (before?.utilisation ?? 0);
  const change =
    was === 0 && is === 0
      ? undefined
      : was === 0
        ? 'came'
        : is === 0
          ? nowAccepted
            ? 'accepted'
            : 'went'
          : is !== was
            ? is > was
              ? 'worse'
              : 'better'
            : Math.abs(moved) >= worthTelling
              ? moved > 0
                ? 'worse'
                : 'better'
              : undefined;
  const named = after ?? before;
  if (change === undefined || named === undefined) return [];
  return [
    {
      change,
      id: named.id,
      part: named.part,
      ...(before ? { before: sideOf(before) } : {}),
      ...(after ? { after: sideOf(after) } : {}),
    },
  ];
}

function sideOf({ verdict, severity, message, utilisation, accepted }: Finding): FindingSide {
  return {
    verdict,
    severity,
    message,
    ...(utilisation === undefined ? {} : { utilisation }),
    ...(accepted === undefined ? {} : { accepted: accepted.because }),
  };
}

/** By check and part; the second of the same check and part has a key of its own. */
function keyed(findings: readonly Finding[]): ReadonlyMap<string, Finding> {
  const result = new Map<string, Finding>();
  for (const finding of findings) {
    if (finding.id === stale) continue;
    let key = `${finding.id} ${finding.part}`;
    while (result.has(key)) key += ' again';
    result.set(key, finding);
  }
  return result;
}

/** Acceptances written anew, taken away or reworded, and those that no longer apply. */
export function acceptanceChanges(
  before: Judged | undefined,
  after: Judged | undefined,
): readonly AcceptanceChange[] {
  const old = before?.shelter.acceptances ?? [];
  const now = after?.shelter.acceptances ?? [];
  const of = (list: readonly Acceptance[], check: string): Acceptance | undefined =>
    list.find((one) => one.check === check);
  const told = ({ check, because, until }: Acceptance) => ({
    check,
    because,
    ...(until === undefined ? {} : { until }),
  });
  return [
    ...now.flatMap((one): AcceptanceChange[] => {
      const was = of(old, one.check);
      if (!was) return [{ change: 'added', ...told(one) }];
      const same = was.because === one.because && was.until === one.until;
      return same ? [] : [{ change: 'changed', ...told(one) }];
    }),
    ...old.flatMap((one): AcceptanceChange[] =>
      of(now, one.check) ? [] : [{ change: 'removed', ...told(one) }],
    ),
    ...wentStale(before, after),
  ];
}

function wentStale(before: Judged | undefined, after: Judged | undefined): AcceptanceChange[] {
  const checksOf = (evaluation: Judged | undefined): Map<string, Finding> =>
    new Map(
      (evaluation?.findings ?? []).flatMap((finding) => {
        const line = evaluation?.shelter.acceptances.find((one) => one.id === finding.part);
        return finding.id === stale && line ? [[line.check, finding] as const] : [];
      }),
    );
  const old = checksOf(before);
  return [...checksOf(after)]
    .filter(([check]) => !old.has(check))
    .map(([check, finding]) => ({ change: 'went stale', check, message: finding.message }));
}
