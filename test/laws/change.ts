/** Changes of a spec as a grower would make them: a number of a fact made larger, a fact said or left out. */
import type { SpecNode, SpecValue, SpecWorld } from '@tautline/shelter';
import type { Subject } from './subject.ts';

type Visit = (node: SpecNode, path: readonly string[]) => SpecNode | undefined;

/** Every fact inside after the visit, the innermost first; the very same node where nothing changes. */
function visited(node: SpecNode, visit: Visit, path: readonly string[] = []): SpecNode {
  let changed = false;
  const children = node.children.flatMap((child) => {
    const inside = [...path, child.word];
    const after = visit(visited(child, visit, inside), inside);
    if (after !== child) changed = true;
    return after === undefined ? [] : [after];
  });
  return changed ? { ...node, children } : node;
}

function withDefinition(
  subject: Subject,
  name: string,
  change: (node: SpecNode) => SpecNode,
): Subject | undefined {
  const definition = subject.world.definitions.get(name);
  if (definition === undefined) return undefined;
  const after = change(definition);
  if (after === definition) return undefined;
  const definitions = new Map(subject.world.definitions);
  definitions.set(name, { ...definition, ...after });
  return { ...subject, world: { ...subject.world, definitions } satisfies SpecWorld };
}

/** The shelter with its facts visited; undefined where nothing changed. */
export const inShelter = (subject: Subject, visit: Visit): Subject | undefined =>
  withDefinition(subject, subject.name, (node) => visited(node, visit));

function siteOf({ name, world }: Subject): string | undefined {
  const site = world.definitions.get(name)?.slots['site'];
  return site?.type === 'item' ? site.id : undefined;
}

/** A number of the site changed; `otherwise` stands for what it is where nothing is said. */
export function siteNumber(
  subject: Subject,
  word: string,
  otherwise: SpecValue & { readonly type: 'quantity' },
  to: (value: number) => number,
): Subject | undefined {
  const site = siteOf(subject);
  if (site === undefined) return undefined;
  return withDefinition(subject, site, (node) => {
    const there = node.children.find((child) => child.word === word);
    const value = there?.slots['value'] ?? otherwise;
    if (value.type !== 'quantity') return node;
    const slots = { ...there?.slots, value: { ...value, si: to(value.si) } };
    const fact: SpecNode = { word, children: [], origin: node.origin, ...there, slots };
    return { ...node, children: [...node.children.filter((child) => child !== there), fact] };
  });
}

/** A word of the site in a slot of a fact. */
export function siteWord(
  subject: Subject,
  word: string,
  slot: string,
  said: string,
  rest: SpecNode['slots'],
): Subject | undefined {
  const site = siteOf(subject);
  if (site === undefined) return undefined;
  return withDefinition(subject, site, (node) => {
    const there = node.children.find((child) => child.word === word);
    const slots = {
      ...rest,
      ...there?.slots,
      [slot]: { type: 'word' as const, word: said, origin: node.origin },
    };
    const fact: SpecNode = { word, children: [], origin: node.origin, ...there, slots };
    return { ...node, children: [...node.children.filter((child) => child !== there), fact] };
  });
}

/** Every number in a slot of facts at these paths, e.g. 'bows spaced', times the factor. */
export const scaled = (
  subject: Subject,
  paths: readonly string[],
  factor: number,
  slot = 'value',
): Subject | undefined =>
  inShelter(subject, (node, path) => {
    const value = node.slots[slot];
    const meant = paths.some((one) => ` ${path.join(' ')}`.endsWith(` ${one}`));
    if (!meant || value?.type !== 'quantity') return node;
    return { ...node, slots: { ...node.slots, [slot]: { ...value, si: value.si * factor } } };
  });

/** The number of one fact of a block times the factor. */
export function scaledBy(block: SpecNode, word: string, factor: number): SpecNode | undefined {
  const there = block.children.find((child) => child.word === word);
  const value = there?.slots['value'];
  if (there === undefined || value?.type !== 'quantity') return undefined;
  const fact = { ...there, slots: { ...there.slots, value: { ...value, si: value.si * factor } } };
  return { ...block, children: block.children.map((child) => (child === there ? fact : child)) };
}

/** Left out: every fact at the top of the shelter with one of these words. */
export const without = (subject: Subject, words: readonly string[]): Subject | undefined =>
  inShelter(subject, (node, path) => (path.length === 1 && words.includes(node.word) ? undefined : node));

/** A number of every stock item of a kind made larger, e.g. the wall of pipe. */
export function stockScaled(
  subject: Subject,
  kind: string,
  word: string,
  factor: number,
): Subject | undefined {
  const definitions = new Map(subject.world.definitions);
  let changed = false;
  for (const [name, definition] of definitions) {
    if (definition.word !== kind) continue;
    const children = definition.children.map((child) => {
      const value = child.slots['value'];
      if (child.word !== word || value?.type !== 'quantity') return child;
      changed = true;
      return { ...child, slots: { ...child.slots, value: { ...value, si: value.si * factor } } };
    });
    definitions.set(name, { ...definition, children });
  }
  return changed ? { ...subject, world: { ...subject.world, definitions } } : undefined;
}

/** The same facts in another order: those that may be said once, wherever they stand. */
export function reordered(subject: Subject): Subject | undefined {
  const turn = (node: SpecNode): SpecNode => {
    const words = [...new Set(node.children.map(({ word }) => word))].reverse();
    // Facts that may be said again keep their order among themselves: it gives them their names.
    const children = words.flatMap((word) => node.children.filter((child) => child.word === word)).map(turn);
    return { ...node, children };
  };
  return withDefinition(subject, subject.name, turn);
}
