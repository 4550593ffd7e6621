/** Short ways to write the edits of a fix. Slot names are those of the vocabulary. */
import { itemValue, type Origin, quantityValue, type SpecEdit } from '@tautline/shelter';

/** Gives the fact `name` of a block one number. */
export function setQuantity(block: Origin, name: string, si: number, kind: string): SpecEdit {
  return {
    type: 'set',
    block,
    word: name,
    slots: { value: quantityValue(si, kind, block) },
  };
}

/** Gives the fact `name` of a block one stock item. */
export function setItem(block: Origin, name: string, id: string): SpecEdit {
  return { type: 'set', block, word: name, slots: { item: itemValue(id, block) } };
}
