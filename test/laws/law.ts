/** What a law is, and how its breaks are found. */
import { checks, type Evaluation, type Finding, messageText } from '@tautline/checks';
import { judged, type Subject } from './subject.ts';

/** Something that does not hold: the check, the part, and what it was before and after. */
export interface Break {
  readonly check: string;
  readonly part: string;
  readonly told: string;
}

/** A break that is right, and why: a property of the world. */
export interface Exception {
  readonly check: string;
  readonly reason: string;
}

export interface Law {
  readonly name: string;
  /** The verdict on the changed shelter; undefined where there is nothing to change. Left out where the law asks of one shelter. */
  readonly changed?: (subject: Subject) => Evaluation | undefined;
  readonly breaks: (before: Evaluation, after: Evaluation) => readonly Break[];
  readonly exceptions: readonly Exception[];
  /** Few shelters have what it changes: asked of every one that has. */
  readonly seldom?: true;
}

/** Of the check of a finding alone: whether the house stands, not what it is like under it. */
const structural = new Set(checks.filter(({ nature }) => nature === undefined).map(({ id }) => id));

/** More than what sums in another order differ by, and the end of a search. */
const tolerance = 0.002;

const usesOf = ({ findings }: Evaluation): readonly (Finding & { readonly utilisation: number })[] =>
  findings.flatMap((one) =>
    structural.has(one.id) && one.utilisation !== undefined ? [{ ...one, utilisation: one.utilisation }] : [],
  );

/** A frame that finds no balance under some load is past every limit under it, and none of them is worked out. */
const givesWay = ({ analysis, findings }: Evaluation): boolean =>
  findings.some(({ id, verdict }) => id === 'frame-gives-way' && verdict === 'fails') ||
  (analysis?.responses.some(({ status }) => status !== 'holds') ?? false);

const share = (value: number): string => value.toPrecision(5);

/**
 * Bending and buckling of a member are one: a wind that lifts takes the thrust out of a bow or a post, and what is only
 * pulled cannot buckle, but it still bends.
 */
const together: Readonly<Record<string, string>> = {
  'bow-buckling': 'over-span',
  'post-buckling': 'over-span',
};

/** The largest use by check, or by check and part; of these checks alone where some are named. */
function largest(
  evaluation: Evaluation,
  by: 'check' | 'part',
  of?: ReadonlySet<string>,
  part?: RegExp,
): ReadonlyMap<string, Finding & { readonly utilisation: number }> {
  const found = new Map<string, Finding & { readonly utilisation: number }>();
  for (const one of usesOf(evaluation)) {
    if (of?.has(one.id) === false || part?.test(one.part) === false) continue;
    const key = by === 'check' ? (together[one.id] ?? one.id) : `${one.id} of ${one.part}`;
    if ((found.get(key)?.utilisation ?? Number.NEGATIVE_INFINITY) < one.utilisation) found.set(key, one);
  }
  return found;
}

/** No use in the second is lower than in the first. */
export function neverLower(
  less: Evaluation,
  more: Evaluation,
  {
    by = 'check',
    of,
    part,
    slack = tolerance,
  }: {
    readonly by?: 'check' | 'part';
    readonly of?: ReadonlySet<string>;
    readonly part?: RegExp;
    readonly slack?: number;
  } = {},
): Break[] {
  // What was not worked out for want of a balance cannot be compared; but a load that mends a frame is a break.
  if (givesWay(more)) return [];
  if (givesWay(less))
    return [{ check: 'frame-gives-way', part: 'frame', told: 'finds no balance before, and one after' }];
  const after = largest(more, by, of, part);
  return [...largest(less, by, of, part)].flatMap(([key, before]) => {
    const now = after.get(key);
    if (now === undefined || now.utilisation >= before.utilisation * (1 - slack) - 1e-6) return [];
    const told = `${share(before.utilisation)} (${before.loadCase ?? 'no load case'}) → ${share(now.utilisation)} (${now.loadCase ?? 'no load case'})`;
    return [{ check: before.id, part: before.part, told }];
  });
}

/** The same findings, in whatever order. */
export function same(before: Evaluation, after: Evaluation): Break[] {
  const [was, is] = [before, after].map(
    ({ findings }) =>
      new Map(
        findings.map((one) => [`${one.id} of ${one.part}: ${messageText(one.message, 'metric')}`, one]),
      ),
  ) as [Map<string, Finding>, Map<string, Finding>];
  const lost = [...was]
    .filter(([told]) => !is.has(told))
    .map(([told, one]) => ({ check: one.id, part: one.part, told: `no longer: ${told}` }));
  const fresh = [...is]
    .filter(([told]) => !was.has(told))
    .map(([told, one]) => ({ check: one.id, part: one.part, told: `only then: ${told}` }));
  return [...lost, ...fresh];
}

/** What a law finds in one subject, its exceptions left out. */
export function breaksOf(
  law: Law,
  subject: Subject,
  before: Evaluation,
): { readonly asked: boolean; readonly breaks: readonly string[] } {
  const after = law.changed === undefined ? before : law.changed(subject);
  if (after === undefined) return { asked: false, breaks: [] };
  const breaks = law
    .breaks(before, after)
    .filter(({ check }) => !law.exceptions.some((one) => one.check === check))
    .map(
      ({ check, part, told }) =>
        `${subject.from}, ${subject.name}: ${law.name}: ${check} of ${part}: ${told}`,
    );
  return { asked: true, breaks };
}

/** A change of the spec as the change of a law. */
export const spec =
  (change: (subject: Subject) => Subject | undefined) =>
  (subject: Subject): Evaluation | undefined => {
    const changed = change(subject);
    return changed && judged(changed);
  };
