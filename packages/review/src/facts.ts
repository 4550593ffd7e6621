/** What two specs say differently. The order of facts, comments, layout and units make no difference. */
import { type SpecNode, type SpecValue, sameValue } from '@tautline/shelter';
import { type Said, saidOf } from './said.ts';

export interface FactChange {
  /** Labels from the block down, e.g. ['bows', 'foot', 'deep'] or ['cover roof', 'tension']. */
  readonly path: readonly string[];
  readonly change: 'added' | 'removed' | 'changed';
  readonly before?: Said;
  readonly after?: Said;
  /** Word of the block of the definition it stands in, e.g. 'bows'; 'installed' wherever that is said. */
  readonly word: string;
}

/** Words that tell facts of one block apart, as they do in a variant. */
const telling = ['place', 'where', 'check', 'subject', 'plane', 'role', 'name', 'part'];

interface At {
  /** Words of the vocabulary down to here. */
  readonly words: readonly string[];
  readonly labels: readonly string[];
}

/** Changes from one block (or definition) to another of the same kind; `word` is its word in the vocabulary. */
export function blockChanges(before: SpecNode, after: SpecNode, label: readonly string[] = []): FactChange[] {
  const at: At = { words: [after.word], labels: label };
  return childChanges(before.children, after.children, at);
}

/** Whether two nodes say the same whatever the order of their facts. */
export function sameFacts(a: SpecNode, b: SpecNode): boolean {
  return (
    a.word === b.word &&
    sameSlots(a.slots, b.slots) &&
    a.children.length === b.children.length &&
    pairsOf(a.children, b.children).every(([left, right]) => left && right && sameFacts(left, right))
  );
}

function childChanges(before: readonly SpecNode[], after: readonly SpecNode[], at: At): FactChange[] {
  const pairs = pairsOf(before, after);
  const count = new Map<string, number>();
  return pairs.flatMap(([left, right]) => {
    const node = right ?? left;
    if (!node) return [];
    const label = labelOf(node);
    const seen = (count.get(label) ?? 0) + 1;
    count.set(label, seen);
    const several = pairs.filter(([a, b]) => labelOf((b ?? a)!) === label).length > 1;
    const below: At = {
      words: [...at.words, node.word],
      labels: [...at.labels, several ? `${label} (${seen})` : label],
    };
    return nodeChanges(left, right, below);
  });
}

function nodeChanges(before: SpecNode | undefined, after: SpecNode | undefined, at: At): FactChange[] {
  const word = at.words[1] ?? '';
  const base = { path: at.labels, word: at.words.at(-1) === 'installed' ? 'installed' : word };
  if (!before || !after) {
    const node = (after ?? before)!;
    const said = saidOf(node, at.words, true);
    return [after ? { ...base, change: 'added', after: said } : { ...base, change: 'removed', before: said }];
  }
  const own: FactChange[] = sameSlots(before.slots, after.slots)
    ? []
    : [
        {
          ...base,
          change: 'changed',
          before: saidOf(before, at.words, false),
          after: saidOf(after, at.words, false),
        },
      ];
  return [...own, ...childChanges(before.children, after.children, at)];
}

type Pair = readonly [SpecNode | undefined, SpecNode | undefined];

/** Facts of the two blocks that belong together: the same first, then those with the same label in order. */
function pairsOf(before: readonly SpecNode[], after: readonly SpecNode[]): readonly Pair[] {
  const left = [...before];
  const partner = new Map<SpecNode, SpecNode>();
  const take = (node: SpecNode, fits: (candidate: SpecNode) => boolean): void => {
    const index = left.findIndex(fits);
    if (index < 0) return;
    partner.set(node, left[index]!);
    left.splice(index, 1);
  };
  for (const node of after)
    take(node, (candidate) => keyOf(candidate) === keyOf(node) && sameFacts(candidate, node));
  for (const node of after) {
    if (!partner.has(node)) take(node, (candidate) => keyOf(candidate) === keyOf(node));
  }
  return [
    ...after.map((node): Pair => [partner.get(node), node]),
    ...left.map((node): Pair => [node, undefined]),
  ];
}

function keyOf(node: SpecNode): string {
  return `${node.word} ${tellingWords(node)}`;
}

function labelOf(node: SpecNode): string {
  const told = tellingWords(node);
  return told === '' ? node.word : `${node.word} ${told}`;
}

function tellingWords(node: SpecNode): string {
  return telling
    .flatMap((slot) => {
      const value = node.slots[slot];
      return value?.type === 'word' ? [value.word] : [];
    })
    .join(' ');
}

function sameSlots(a: Readonly<Record<string, SpecValue>>, b: Readonly<Record<string, SpecValue>>): boolean {
  const names = Object.keys(a);
  return (
    names.length === Object.keys(b).length &&
    names.every((name) => b[name] !== undefined && sameValue(a[name]!, b[name]))
  );
}
