/** Feet: how bows, posts, guys and cable ends meet the ground. */
import type { Foot, FootKind } from '../model/shelter.ts';
import { factNode, wordIn } from '../spec/nodes.ts';
import type { SpecNode } from '../spec/spec.ts';
import { type Context, footItemOf, marksOf } from './context.ts';
import { assume, type Bounds, numberFact } from './notes.ts';
import { supplyOf } from './supplies.ts';

const deep: Bounds = { least: 0, most: 10 };

/** Depths taken when none is said, m: common practice, no source. */
const usualDepth: Readonly<Record<FootKind, number>> = {
  stub: 0.6,
  driven: 0.6,
  hole: 0.6,
  concrete: 0.6,
  deadman: 0.9,
  screw: 0.75,
  ballast: 0,
  bearing: 0,
  poked: 0.3,
};

/** Feet that keep a member from turning when nothing is said. */
const clamping: readonly FootKind[] = ['driven', 'hole', 'concrete'];

/** How far a stub must stand inside a bow to keep it from turning, m: common practice, no source. */
const clampingReach = 0.3;

/** The foot a block says, or one taken for it: `usual` when none is said. */
export function readFoot(block: SpecNode, id: string, usual: FootKind, context: Context): Foot {
  const { notes } = context;
  const fact = factNode(block, 'foot');
  const origin = fact?.origin ?? block.origin;
  const kind =
    (wordIn(fact, 'kind') as FootKind | undefined) ??
    assume(notes, id, 'foot', usual, 'word', 'no foot is said: common practice, no source', origin);
  const item = footItemOf(factNode(fact, 'of'), context);
  const length = numberFact(notes, fact, 'length', { above: 0, most: 20 });
  const driven =
    numberFact(notes, fact, 'deep', deep) ??
    assume(
      notes,
      id,
      'deep',
      depthFor(kind, length),
      'length',
      'no depth is said: common practice, no source',
      origin,
    );
  const across = numberFact(notes, fact, 'across', { above: 0, most: 10 });
  // What is bought by its weight says it itself.
  const mass =
    numberFact(notes, fact, 'weighs', { above: 0, most: 1e5 }) ??
    (kind === 'ballast' && item?.kind === 'anchor' ? item.mass : undefined);
  const lean = numberFact(notes, fact, 'lean', { above: 0, most: Math.PI });
  const said = wordIn(factNode(fact, 'held'));
  const holds =
    clamping.includes(kind) || (kind === 'stub' && (length ?? driven * 2) - driven >= clampingReach);
  const fixity = (said ??
    assume(
      notes,
      id,
      'held',
      holds ? 'clamped' : 'pinned',
      'word',
      holds
        ? 'it reaches far enough into ground and member to keep it from turning'
        : 'nothing keeps it from turning',
      origin,
    )) as Foot['fixity'];
  const mix =
    kind === 'concrete' && item?.kind !== 'anchor'
      ? supplyOf(fact ?? block, { form: 'concrete', part: id, word: 'mix' }, context)
      : undefined;
  return {
    id,
    origin,
    ...(fact ? marksOf(fact) : {}),
    kind,
    driven,
    fixity,
    ...(item === undefined
      ? {}
      : item.kind === 'anchor'
        ? { anchor: item }
        : isMember(item)
          ? { stub: item }
          : {}),
    ...(length === undefined ? {} : { length }),
    ...(across === undefined ? {} : { across }),
    ...(mass === undefined ? {} : { mass }),
    ...(lean === undefined ? {} : { lean }),
    ...(mix === undefined ? {} : { mix }),
  };
}

function depthFor(kind: FootKind, length: number | undefined): number {
  return length !== undefined && kind === 'stub' ? length / 2 : Math.min(usualDepth[kind], length ?? 10);
}

function isMember<T extends { readonly kind: string }>(
  item: T,
): item is Extract<T, { readonly kind: 'pipe' | 'rod' | 'pole' | 'lumber' }> {
  return ['pipe', 'rod', 'pole', 'lumber'].includes(item.kind);
}
