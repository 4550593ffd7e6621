/** Short ways to write the edits of a fix. Slot names are those of the vocabulary. */
import type { KindName } from '@tautline/quantity';
import {
  dateValue,
  itemValue,
  type Origin,
  quantityValue,
  type SpecEdit,
  wordValue,
} from '@tautline/shelter';

/** Gives the fact `name` of a block one number. */
export function setQuantity(block: Origin, name: string, si: number, kind: KindName): SpecEdit {
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

/** Gives the fact `name` of a block one day, ISO. */
export function setDay(block: Origin, name: string, day: string): SpecEdit {
  return { type: 'set', block, word: name, slots: { value: dateValue(day, block) } };
}

/** Gives the fact `name` of a block one word. */
export function setWord(block: Origin, name: string, word: string): SpecEdit {
  return { type: 'set', block, word: name, slots: { value: wordValue(word, block) } };
}
