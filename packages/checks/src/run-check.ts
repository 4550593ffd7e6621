/** Puts the question of a check to a shelter: what it needs is seen to here, and each answer is stamped. */
import type { Check, CheckInput } from './check.ts';
import { whyNoGusts } from './check.ts';
import type { Finding, Found } from './finding.ts';
import { judge, nearLimit, notChecked } from './judge.ts';
import { type FrameLimit, type Limit, type PressureLimit, type Use, usesOf, worstOf } from './limit.ts';
import { notSurvived } from './stress.ts';

/** Answers of a check, each with the id of the check and what that is about. */
export function stamped({ id, nature }: Check, answers: readonly Found[]): readonly Finding[] {
  return answers.map((answer) => ({ ...answer, id, ...(nature === undefined ? {} : { nature }) }));
}

/** Whether a check has anything to ask of a shelter. */
export const applies = (check: Check, { shelter }: Pick<CheckInput, 'shelter'>): boolean =>
  check.appliesTo?.(shelter) ?? true;

export function runCheck(check: Check, input: CheckInput): readonly Finding[] {
  if (!applies(check, input)) return [];
  const lacking = whatIsLacking(check, input);
  if (lacking === 'not asked') return [];
  if (lacking !== undefined) return stamped(check, [notChecked(input.shelter.roof, lacking)]);
  return stamped(check, [
    ...(check.run?.(input) ?? []),
    ...(check.limits?.(input) ?? []).flatMap((limit) => judgeLimit(limit, input)),
  ]);
}

/** Why a check cannot be asked for want of an analysis; 'not asked' for the whole house in the live tier. */
function whatIsLacking({ needs }: Check, input: CheckInput): string | undefined {
  const { frame, gusts, house } = input;
  if (needs === 'frame' && !frame.ok) return frame.reason;
  if (needs === 'gusts' && gusts === undefined) return whyNoGusts(input);
  if (needs === 'house' && house === undefined) return 'not asked';
  if (needs === 'house' && house?.ok === false) return house.reason;
  return undefined;
}

/** The verdict on one limit at the site's loads; nothing where no load asks for it and the check has no word for that. */
function judgeLimit(limit: Limit, { frame }: CheckInput): Found[] {
  switch (limit.by) {
    case 'unknown':
      return [notChecked(limit.part, limit.reason)];
    case 'balance':
      return [];
    case 'pressure':
      return judgeWorst(limit, worstOf([limit.use(1), ...(limit.calm ?? [])]), []);
    case 'frame': {
      if (!frame.ok) return [notChecked(limit.part, frame.reason)];
      return judgeWorst(
        limit,
        worstOf(usesOf(limit, frame.analysis)),
        notSurvived(frame.analysis).map(({ load }) => load.title),
      );
    }
  }
}

function judgeWorst(
  limit: FrameLimit | PressureLimit,
  worst: Use | undefined,
  lost: readonly string[],
): Found[] {
  const { part, unasked } = limit;
  const under = lost[0];
  if (worst === undefined) {
    if (under !== undefined) return [notChecked(part, `the frame does not hold under ${under}`)];
    return unasked === undefined ? [] : [notChecked(part, unasked)];
  }
  const { utilisation, loadCase } = worst;
  // What passes under the combinations that are left says nothing about the one the frame does not survive.
  if (under !== undefined && utilisation <= 1)
    return [
      notChecked(
        part,
        `the frame does not hold under ${under}; of its limit it uses ${Math.round(100 * utilisation)} % under ${loadCase}, the worst that the frame survives`,
      ),
    ];
  if (limit.by === 'frame' && limit.bound !== undefined && !(utilisation <= nearLimit))
    return [notChecked(part, limit.bound)];
  return [judge({ part, utilisation, loadCase, ...worst.tell() })];
}
