import type { Item, Shelter } from '@tautline/shelter';
import type { Check, CheckInput } from '../check.ts';
import type { Found } from '../finding.ts';
import { given, inWords } from '../judge.ts';
import { remark } from '../remark.ts';

/** Items named in a message before it only counts the rest: own choice. */
const named = 4;

/** Every stock item a shelter is made of, each once: whatever part holds it. */
function itemsOf(shelter: Shelter): Item[] {
  const found = new Map<string, Item>();
  const look = (value: unknown): void => {
    if (Array.isArray(value)) for (const entry of value) look(entry);
    else if (typeof value === 'object' && value !== null) {
      if ('prices' in value && 'kind' in value && 'id' in value) {
        const item = value as Item;
        // What is tied is not bought; its cord is.
        if ('cord' in item && item.cord) found.set(item.cord.id, item.cord);
        else found.set(item.id, item);
      } else for (const entry of Object.values(value)) look(entry);
    }
  };
  const { site: _, ...made } = shelter;
  look(made);
  return [...found.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
}

function run({ shelter }: CheckInput): Found[] {
  const items = itemsOf(shelter);
  const without = items.filter(({ prices }) => prices.length === 0);
  // Without any price nobody asked what it costs.
  if (items.length === 0 || without.length === items.length) return [];
  const names = without.slice(0, named).map(({ id }) => id);
  const more = without.length - names.length;
  const list = more > 0 ? `${names.join(', ')} and ${more} more` : names.join(', ');
  return [
    remark(
      shelter,
      without.length === 0 ? 'passes' : 'fails',
      [
        without.length === 0
          ? 'Every item has a price.'
          : `No price is known of ${list}: the cost leaves them out. Write \`price of ${names[0]} ...\` in a price list.`,
      ],
      'derived',
      [
        inWords(
          'n',
          'items without a price',
          'counted',
          [given('N', 'stock items the shelter is made of', items.length, 'count')],
          without.length,
          'count',
          'derived',
        ),
      ],
    ),
  ];
}

export const missingPrice: Check = {
  id: 'missing-price',
  title: 'Missing price',
  nature: 'stock',
  asks: 'Where a price list is in use, does it name every item the shelter is made of?',
  matters: 'A sum that leaves an item out looks like a bargain until the treasurer pays the bill.',
  formula: 'n = 0',
  symbols: [{ symbol: 'n', meaning: 'items of the shelter without a price', kind: 'count' }],
  sources: ['derived'],
  leavesOut:
    'Whether a price is still true; gutters, ballast and other pieces the spec does not name; stock on hand, which need not be bought; price lists given on the command line.',
  mayBeAccepted: 'Where the item lies in the rack or grows in the hedge.',
  run,
};
