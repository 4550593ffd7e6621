/** A stock item in a few words: its title, its main sizes, where its numbers come from. */
import { formatBoth, type System } from '@tautline/quantity';
import type { SpecDefinition, SpecNode } from '@tautline/shelter';

/** First sentence of its doc comment, without the source. `no. 5` ends no sentence. */
export function titleOf({ doc }: SpecDefinition): string {
  const [said = ''] = doc.split(/\bSource:/i);
  const plain = said.replace(/\s+/g, ' ').trim();
  return (/^(.*?)\.(?= [A-Z]|$)/.exec(plain)?.[1] ?? plain).trim();
}

export function sourceOf({ doc }: SpecDefinition): string {
  return (/Source:\s*([\s\S]*)/i.exec(doc)?.[1] ?? '').replace(/\s+/g, ' ').trim();
}

const sizes = new Set([
  'outside',
  'wall',
  'across',
  'butt',
  'tip',
  'depth',
  'breadth',
  'thickness',
  'covers',
  'porosity',
  'gust',
]);

function valuesOf(node: SpecNode, system: System): string {
  return Object.values(node.slots)
    .map((value) => {
      if (value.type === 'quantity') return formatBoth(value.si, value.kind, system);
      if (value.type === 'word') return value.word;
      if (value.type === 'item') return value.id;
      return value.type === 'text' ? value.text : value.date;
    })
    .join(' x ');
}

/** `outside 33.4 mm (1-5/16 in), wall 3.38 mm (...)`. */
export function itemFacts(definition: SpecDefinition, system: System = 'metric'): string {
  return definition.children
    .filter(({ word }) => sizes.has(word))
    .map((node) => `${node.word} ${valuesOf(node, system)}`)
    .join(', ');
}

/** Every fact of an item on a line of its own, as a list in Markdown. */
export function allFacts(definition: SpecDefinition, system: System): string {
  const lines = definition.children
    .slice(0, 14)
    .map((node) => `- ${[node.word, valuesOf(node, system)].filter((part) => part !== '').join(': ')}`);
  if (definition.children.length > 14) lines.push(`- and ${definition.children.length - 14} more`);
  return lines.join('\n');
}
