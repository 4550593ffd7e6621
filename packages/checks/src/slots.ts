/** Short ways to write the edits of a fix. Slot names are those of the vocabulary. */
import type { Origin, SpecEdit, SpecNode, SpecValue } from '@tautline/shelter';

export const quantity = (si: number, kind: string, origin: Origin): SpecValue => ({
  type: 'quantity',
  si,
  kind,
  origin,
});
export const item = (id: string, origin: Origin): SpecValue => ({
  type: 'item',
  id,
  origin,
});
export const word = (text: string, origin: Origin): SpecValue => ({
  type: 'word',
  word: text,
  origin,
});

/** Gives the fact `name` of a block one number. */
export function setQuantity(block: Origin, name: string, si: number, kind: string): SpecEdit {
  return {
    type: 'set',
    block,
    word: name,
    slots: { value: quantity(si, kind, block) },
  };
}

/** Gives the fact `name` of a block one stock item. */
export function setItem(block: Origin, name: string, id: string): SpecEdit {
  return { type: 'set', block, word: name, slots: { item: item(id, block) } };
}

/** A new fact or block. */
export function node(
  name: string,
  origin: Origin,
  slots: Readonly<Record<string, SpecValue>>,
  children: readonly SpecNode[] = [],
): SpecNode {
  return { word: name, slots, children, origin };
}
