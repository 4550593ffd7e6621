/** Gutters and how water comes back to the crop. */
import type { Gutter, Irrigation } from '../model/shelter.ts';
import { factNode, wordIn } from '../spec/nodes.ts';
import type { SpecNode } from '../spec/spec.ts';
import type { Context } from './context.ts';
import { numberFact } from './notes.ts';

export function readGutter(block: SpecNode, index: number, context: Context): Gutter {
  const { notes } = context;
  const size = { above: 0, most: 2 };
  const across = numberFact(notes, block, 'across', size);
  const depth = numberFact(notes, block, 'depth', size);
  return {
    id: index === 0 ? 'gutter' : `gutter-${index + 1}`,
    origin: block.origin,
    where: wordIn(block, 'where') === 'between' ? 'between' : 'sides',
    ...(across === undefined ? {} : { across }),
    ...(depth === undefined ? {} : { depth }),
  };
}

export function readIrrigation({ shelter }: Context): Irrigation | undefined {
  return wordIn(factNode(shelter, 'irrigation')) as Irrigation | undefined;
}
