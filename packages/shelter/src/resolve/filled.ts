/** Hollow members that are filled or reinforced. */

import type { MemberItem } from '../model/items.ts';
import type { Filled } from '../model/shelter.ts';
import { factNode, wordIn } from '../spec/nodes.ts';
import type { SpecNode } from '../spec/spec.ts';
import { type Context, footItemOf } from './context.ts';
import { assume, numberFact } from './notes.ts';
import { supplyOf } from './supplies.ts';

/** What a member is filled with and how high over the ground; the whole height `most` when not said, m. */
export function readFilled(block: SpecNode, most: number, context: Context): Filled | undefined {
  const fact = factNode(block, 'filled');
  const filling = wordIn(fact, 'with');
  if (!fact || filling === undefined) return undefined;
  const upTo =
    numberFact(context.notes, block, 'filled', { above: 0, most: 100 }, 'upTo') ??
    assume(context.notes, block.word, 'filled up to', most, 'length', 'filled all the way', fact.origin);
  const inner = footItemOf(factNode(fact, 'of'), context);
  const mix =
    filling === 'concrete'
      ? supplyOf(fact, { form: 'concrete', part: block.word, word: 'mix' }, context)
      : undefined;
  return {
    upTo: Math.min(upTo, most),
    with: filling as 'concrete' | 'rebar' | 'timber',
    ...(inner && inner.kind !== 'anchor' ? { member: inner as MemberItem } : {}),
    ...(mix === undefined ? {} : { mix }),
  };
}
