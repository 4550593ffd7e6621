/** What can be said but is not yet part of the model: listed, so that no report passes over it in silence. */
import { factNode, wordIn } from '../spec/nodes.ts';
import type { SpecNode } from '../spec/spec.ts';
import type { Context } from './context.ts';
import { carriesInside } from './inner-lines.ts';

/** Words of a shelter, with what is left out of the calculation. */
const leftOut: Readonly<Record<string, string>> = {
  gutter: 'the pieces of a gutter',
  irrigation: 'the pipes of the irrigation',
  season: 'the season it stands in',
  lifted: 'lifting the frames',
  worked: 'where people work from',
};

/** Facts inside blocks that are read but not calculated with. */
const leftOutInside: readonly (readonly [block: string, fact: string, what: string])[] = [
  [
    'posts',
    'filled',
    'what the filling of posts adds to their strength: it counts with its weight, the post bends as a hollow one',
  ],
  ['cover', 'rolled', 'sides that roll up'],
  ['gutter', 'fall', 'the fall of a gutter, which is calculated as level'],
  ['gutter', 'to', 'where a gutter leads its water'],
  ['cover', 'taped', 'taped laps'],
  ['cover', 'lap', 'the lap of two widths'],
  ['inflated', 'fan', 'the fan'],
];

/** Words for which something has to be bought that no take-off counts. */
const toBuy: ReadonlySet<string> = new Set([
  ...['gutter', 'irrigation'],
  ...['rolled', 'taped', 'fan', 'foot'],
]);

export function noteUnmodelled(context: Context): void {
  const { shelter, notes } = context;
  const add = (what: string, node: SpecNode, buys = toBuy.has(node.word)) =>
    notes.unmodelled.push({ what, origin: node.origin, ...(buys ? { toBuy: true } : {}) });
  for (const fact of shelter.children) {
    const what = leftOut[fact.word];
    if (what) add(what, fact);
    if (fact.word === 'posts' && wordIn(fact, 'where') === 'grid' && !carriesInside(fact, shelter)) {
      add(
        'the inner lines of the grid, which carry nothing without a rail and bows or rafters on it',
        fact,
        true,
      );
    }
    for (const [block, word, inside] of leftOutInside) {
      const said = fact.word === block ? factNode(fact, word) : undefined;
      if (said) add(inside, said);
    }
  }
}
