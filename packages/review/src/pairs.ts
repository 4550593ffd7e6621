/** Which shelter of one revision is which of the other. */
import type { SpecNode } from '@tautline/shelter';
import type { RenamedFiles, Written } from './revision.ts';
import { sourcesOf } from './written.ts';

export interface Pair<T extends Written = Written> {
  readonly before?: T;
  readonly after?: T;
}

/** Shelters with another name in the same (or the moved) file need to share this much of what they say. */
const alikeInFile = 0.5;
/** And this much when they stand in another file, too. */
const alikeAnywhere = 0.6;

/**
 * Pairs by name in the same or the moved file, then by name anywhere, then by most similar spec. In the
 * order of the later revision; what has gone comes last.
 */
export function pairShelters<T extends Written>(
  before: readonly T[],
  after: readonly T[],
  renamed: RenamedFiles = new Map(),
): readonly Pair<T>[] {
  const left = new Set(before);
  const partner = new Map<T, T>();
  const fileNow = (one: Written): string => renamed.get(one.file) ?? one.file;
  const open = (): T[] => after.filter((one) => !partner.has(one));
  const join = (old: T | undefined, now: T): void => {
    if (!old) return;
    partner.set(now, old);
    left.delete(old);
  };
  const sameKind = (old: T, now: T): boolean => (old.kind === 'range') === (now.kind === 'range');
  for (const now of open())
    join(
      [...left].find((old) => old.name === now.name && fileNow(old) === now.file && sameKind(old, now)),
      now,
    );
  for (const now of open())
    join(
      [...left].find((old) => old.name === now.name && sameKind(old, now)),
      now,
    );
  for (const [least, sameFile] of [
    [alikeInFile, true],
    [alikeAnywhere, false],
  ] as const) {
    const candidates = open().flatMap((now) =>
      [...left]
        .filter((old) => sameKind(old, now) && (!sameFile || fileNow(old) === now.file))
        .map((old) => ({ old, now, alike: likeness(old, now) })),
    );
    for (const { old, now, alike } of candidates.sort((a, b) => b.alike - a.alike))
      if (alike >= least && left.has(old) && !partner.has(now)) join(old, now);
  }
  return [
    ...after.map((now): Pair<T> => {
      const old = partner.get(now);
      return old ? { before: old, after: now } : { after: now };
    }),
    ...[...left].map((old): Pair<T> => ({ before: old })),
  ];
}

/** Share of the facts that two shelters both say, 0 to 1 (Sørensen–Dice coefficient of their facts). */
export function likeness(a: Written, b: Written): number {
  const left = factsOf(a);
  const right = factsOf(b);
  const total = left.length + right.length;
  if (total === 0) return 0;
  const open = new Map<string, number>();
  for (const fact of right) open.set(fact, (open.get(fact) ?? 0) + 1);
  let shared = 0;
  for (const fact of left) {
    const count = open.get(fact) ?? 0;
    if (count === 0) continue;
    open.set(fact, count - 1);
    shared += 1;
  }
  return (2 * shared) / total;
}

function factsOf(written: Written): string[] {
  const { shelter } = sourcesOf(written);
  const lines: string[] = [];
  const walk = (node: SpecNode, path: string): void => {
    for (const child of node.children) {
      const here = `${path}/${child.word}`;
      const values = Object.entries(child.slots).map(([slot, { origin: _origin, ...value }]) => [
        slot,
        value,
      ]);
      lines.push(`${here} ${JSON.stringify(values)}`);
      walk(child, here);
    }
  };
  if (shelter) walk(shelter, '');
  return lines;
}
