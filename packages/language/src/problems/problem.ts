/** What is wrong with a text, before anything is calculated. Plain data; offsets into the text. */

export interface TextChange {
  readonly start: number;
  readonly end: number;
  readonly newText: string;
}

export interface Remedy {
  readonly title: string;
  readonly changes: readonly TextChange[];
}

export type ProblemId =
  | 'unreadable'
  | 'unclosed'
  | 'stray-brace'
  | 'character'
  | 'syntax'
  | 'unclosed-text'
  | 'unclosed-comment'
  | 'unknown-word'
  | 'own-line'
  | 'incomplete'
  | 'unexpected'
  | 'needs-unit'
  | 'unknown-unit'
  | 'wrong-dimension'
  | 'calculation'
  | 'unknown-name'
  | 'wrong-kind'
  | 'not-a-value'
  | 'circular'
  | 'bad-date'
  | 'unknown-check'
  | 'duplicate-fact'
  | 'missing-fact'
  | 'duplicate-name'
  | 'missing-name'
  | 'import';

export interface LanguageProblem {
  readonly id: ProblemId;
  readonly severity: 'error' | 'warning';
  readonly message: string;
  readonly start: number;
  readonly end: number;
  readonly remedies?: readonly Remedy[];
  readonly related?: readonly {
    readonly uri: string;
    readonly start: number;
    readonly end: number;
    readonly message: string;
  }[];
}

/** The words most like `word`, nearest first: at most three, none farther than a third of its letters. */
export function nearest(word: string, known: Iterable<string>): readonly string[] {
  const limit = Math.max(1, Math.floor(word.length / 3));
  const plain = simple(word);
  return [...new Set(known)]
    .map((candidate) => ({
      candidate,
      far: plain === simple(candidate) ? 0 : distance(word, candidate, limit),
    }))
    .filter(({ far }) => far <= limit)
    .sort((a, b) => a.far - b.far || (a.candidate < b.candidate ? -1 : 1))
    .slice(0, 3)
    .map(({ candidate }) => candidate);
}

const simple = (word: string): string => word.toLowerCase().replace(/[-_]/g, '');

/** Edits, with neighbours swapped counting as one; `limit + 1` when there are more. */
function distance(a: string, b: string, limit: number): number {
  if (Math.abs(a.length - b.length) > limit || a.length > 60) return limit + 1;
  let before: number[] = [];
  let row = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1];
      let best = Math.min(
        (row[j - 1] as number) + (same ? 0 : 1),
        (row[j] as number) + 1,
        (next[j - 1] as number) + 1,
      );
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) best = Math.min(best, (before[j - 2] as number) + 1);
      next.push(best);
    }
    before = row;
    row = next;
  }
  return row[b.length] as number;
}

/** ` Did you mean `a` or `b`?`, or nothing. */
export function didYouMean(words: readonly string[]): string {
  return words.length === 0 ? '' : ` Did you mean ${words.map((word) => `\`${word}\``).join(' or ')}?`;
}

/** Remedies that put one of the words in place of what is there. */
export function replacements(words: readonly string[], start: number, end: number): readonly Remedy[] {
  return words.map((word) => ({
    title: `Change to \`${word}\``,
    changes: [{ start, end, newText: word }],
  }));
}
