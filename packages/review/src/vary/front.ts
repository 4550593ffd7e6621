/** Choices that no other choice beats in everything. */

export interface Aim<T> {
  readonly name: string;
  readonly better: 'less' | 'more';
  /** Undefined where it is not known: such a choice is never on the front. */
  readonly of: (choice: T) => number | undefined;
}

/**
 * The Pareto front: choices for which no other is at least as good in every aim and better in one. In the
 * order given; of choices equal in every aim all are kept.
 */
export function front<T>(choices: readonly T[], aims: readonly Aim<T>[]): readonly T[] {
  if (aims.length === 0) return [];
  const scored = choices.flatMap((choice) => {
    const scores = aims.map(({ of, better }) => {
      const value = of(choice);
      return value === undefined ? Number.NaN : better === 'less' ? -value : value;
    });
    return scores.every(Number.isFinite) ? [{ choice, scores }] : [];
  });
  return scored
    .filter(({ scores }) => !scored.some((other) => beats(other.scores, scores)))
    .map(({ choice }) => choice);
}

function beats(a: readonly number[], b: readonly number[]): boolean {
  return a.every((score, at) => score >= b[at]!) && a.some((score, at) => score > b[at]!);
}
