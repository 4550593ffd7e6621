/** Making, finding and comparing spec nodes. */
import type { KindName } from '@tautline/quantity';
import type { Origin } from '../model/origin.ts';
import type { SpecDefinition, SpecNode, SpecValue } from './spec.ts';

/** A quantity in SI with its kind. */
export function quantityValue(si: number, kind: KindName, origin: Origin): SpecValue {
  return { type: 'quantity', si, kind, origin };
}

export function wordValue(word: string, origin: Origin): SpecValue {
  return { type: 'word', word, origin };
}

/** A reference to a stock item, site or shelter by name. */
export function itemValue(id: string, origin: Origin): SpecValue {
  return { type: 'item', id, origin };
}

export function textValue(text: string, origin: Origin): SpecValue {
  return { type: 'text', text, origin };
}

/** An ISO date. */
export function dateValue(date: string, origin: Origin): SpecValue {
  return { type: 'date', date, origin };
}

export function specNode(
  word: string,
  origin: Origin,
  slots: Readonly<Record<string, SpecValue>> = {},
  children: readonly SpecNode[] = [],
): SpecNode {
  return { word, slots, children, origin };
}

/** The first fact of a block with this word. */
export function factNode(block: SpecNode | undefined, word: string): SpecNode | undefined {
  return block?.children.find((child) => child.word === word);
}

/** Every fact of a block with this word, in the order written. */
export function factNodes(block: SpecNode | undefined, word: string): readonly SpecNode[] {
  return block?.children.filter((child) => child.word === word) ?? [];
}

/** Number in a slot, SI. */
export function numberIn(node: SpecNode | undefined, slot = 'value'): number | undefined {
  const value = node?.slots[slot];
  return value?.type === 'quantity' ? value.si : undefined;
}

export function wordIn(node: SpecNode | undefined, slot = 'value'): string | undefined {
  const value = node?.slots[slot];
  return value?.type === 'word' ? value.word : undefined;
}

export function itemIn(node: SpecNode | undefined, slot = 'item'): string | undefined {
  const value = node?.slots[slot];
  return value?.type === 'item' ? value.id : undefined;
}

export function textIn(node: SpecNode | undefined, slot = 'value'): string | undefined {
  const value = node?.slots[slot];
  return value?.type === 'text' ? value.text : undefined;
}

export function dateIn(node: SpecNode | undefined, slot = 'value'): string | undefined {
  const value = node?.slots[slot];
  return value?.type === 'date' ? value.date : undefined;
}

/** Whether two specs say the same, wherever it is written. Order counts, as it does in the text. */
export function sameSpec(a: SpecNode, b: SpecNode): boolean {
  return (
    a.word === b.word &&
    sameSlots(a.slots, b.slots) &&
    a.children.length === b.children.length &&
    a.children.every((child, index) => sameSpec(child, b.children[index]!))
  );
}

/** Whether two definitions say the same: name, doc and likeness included. */
export function sameDefinition(a: SpecDefinition, b: SpecDefinition): boolean {
  return a.name === b.name && a.doc === b.doc && a.like === b.like && sameSpec(a, b);
}

function sameSlots(a: Readonly<Record<string, SpecValue>>, b: Readonly<Record<string, SpecValue>>): boolean {
  const names = Object.keys(a);
  return (
    names.length === Object.keys(b).length &&
    names.every((name) => {
      const other = b[name];
      return other !== undefined && sameValue(a[name]!, other);
    })
  );
}

export function sameValue(a: SpecValue, b: SpecValue): boolean {
  const { origin: _a, ...plainA } = a;
  const { origin: _b, ...plainB } = b;
  return JSON.stringify(plainA) === JSON.stringify(plainB);
}
