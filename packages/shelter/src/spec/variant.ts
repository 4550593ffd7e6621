/** A variant: the same shelter with some facts changed. */
import type { SpecDefinition, SpecNode } from './spec.ts';

/**
 * The shelter that a variant describes: each fact it says replaces the fact of the same word (and, where a
 * block may hold several such facts, with the same words in its sentence) or is added.
 */
export function varied(base: SpecDefinition, variant: SpecDefinition): SpecDefinition {
  return {
    ...base,
    name: variant.name,
    doc: variant.doc === '' ? base.doc : variant.doc,
    origin: variant.origin,
    children: mergeFacts(base.children, variant.children),
  };
}

/** Facts of `over` laid over `under`, block by block. */
function mergeFacts(under: readonly SpecNode[], over: readonly SpecNode[]): readonly SpecNode[] {
  const merged = [...under];
  for (const fact of over) {
    const index = merged.findIndex((candidate) => sameFact(candidate, fact));
    const there = merged[index];
    if (!there) merged.push(fact);
    else {
      merged[index] = {
        ...fact,
        slots: { ...there.slots, ...fact.slots },
        children: mergeFacts(there.children, fact.children),
      };
    }
  }
  return merged;
}

/** Words that tell facts of one block apart: the place of a cover, where posts stand, the check accepted. */
const telling = ['place', 'where', 'check', 'subject', 'plane', 'name'];

function sameFact(a: SpecNode, b: SpecNode): boolean {
  return (
    a.word === b.word &&
    telling.every((slot) => {
      const left = a.slots[slot];
      const right = b.slots[slot];
      return (left?.type === 'word' ? left.word : '') === (right?.type === 'word' ? right.word : '');
    })
  );
}
