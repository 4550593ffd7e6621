/** What can be said of a project, its prices, its yard, and of shelters side by side. */
import type { Entry } from './entry.ts';
import { accept } from './shelter-words.ts';
import { anything, fact, members, several } from './write.ts';

export const projectFacts: readonly Entry[] = [
  fact('title', '{value: text}', 'Name of the project, for the front of a book.', 'title "Gully houses"'),
  fact('currency', '{value: word *}', 'Three-letter ISO 4217 code all prices are in.', 'currency USD'),
  fact(
    'units',
    '{value: word metric|us}',
    'Units that numbers are shown in; those most of the file is written in when left out. What you write keeps its own.',
    'units metric',
  ),
];

const price =
  '{amount: money} [per {unit: word piece|pack|roll|bag|can|m|ft|m2|ft2|m3|yd3}] [per {length: length}]';

/** `price` inside a stock item. */
export const ownPrice: Entry = fact(
  'price',
  price,
  'What it costs: per stock length, or per one piece, pack, roll, bag, can, metre, square metre ...',
  'price 4.20 per 20 ft',
  several,
);

export const priceFacts: readonly Entry[] = [
  fact('from', '{value: text}', 'Where the prices come from, and when.', 'from "Kestrel yard, March list"'),
  fact('asked', '{value: date}', 'Day the prices were asked.', 'asked 2026-02-10'),
  fact(
    'price',
    `of {item: item ${anything}} ${price}`,
    'What an item costs: per stock length, or per one piece, pack, roll, bag, can, metre, square metre ...',
    'price of pvc40-25 4.20 per 20 ft',
    several,
  ),
];

export const yardFacts: readonly Entry[] = [
  fact(
    'have',
    `{count: count} of {item: item ${anything}} [at {length: length}]`,
    'Stock on hand: so many pieces of an item, of a length.',
    'have 12 of pvc40-25 at 20 ft',
    several,
  ),
];

export const rangeFacts: readonly Entry[] = [
  fact(
    'stand',
    '{count: count} of {shelter: definition shelter}',
    'So many shelters of one kind, side by side from left to right.',
    'stand 3 of bed-arch',
    { many: true, required: true },
  ),
  fact('gap', '{value: length}', 'Clear distance between neighbours.', 'gap 2 ft'),
  fact(
    'tied',
    `by {item: item ${members}|cable} every {value: length}`,
    'Ties from each to the next.',
    'tied by lumber-1x4 every 8 ft',
  ),
  accept,
];
