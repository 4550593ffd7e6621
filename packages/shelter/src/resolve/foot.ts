/** Feet: how bows, posts, guys and cable ends meet the ground. */
import type { Foot, FootKind } from '../model/shelter.ts';
import { factNode, wordIn } from '../spec/nodes.ts';
import type { SpecNode } from '../spec/spec.ts';
import { type Context, footItemOf, marksOf } from './context.ts';
import { assume, type Bounds, numberFact, problem } from './notes.ts';
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

/** Feet that keep a member from turning when nothing is said; a stub does where it is long enough for both ends. */
const clamping: readonly FootKind[] = ['driven', 'hole', 'concrete'];

/**
 * Depth from which on a foot is taken to keep a member from turning, m: full-size pipe houses pushed 30 to 40 cm into
 * the ground moved as if fixed there (Ogawa and others, J. Soc. Agric. Struct. Japan 19(3), 1989, abstract read). A
 * stub needs as much inside the member (own choice). Whether soil and stub bear the bending is asked by lateral-foot.
 */
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
  const whole = length ?? 2 * driven;
  // By its whole length, not by what is left of it inside: a stub pulled up a little is not held the better for it.
  const reaches = clamping.includes(kind) || (kind === 'stub' && whole >= 2 * clampingReach);
  const holds = reaches && driven >= clampingReach;
  const fixity = (said ??
    assume(
      notes,
      id,
      'held',
      holds ? 'clamped' : 'pinned',
      'word',
      holds
        ? 'it reaches far enough into ground and member to keep it from turning'
        : reaches
          ? 'it is too shallow to keep it from turning'
          : 'nothing keeps it from turning',
      origin,
    )) as Foot['fixity'];
  if (kind === 'stub' && fixity === 'clamped' && whole - driven < clampingReach - 1e-9) {
    problem(
      notes,
      'loose-stub',
      `too little of this stub is left to stand inside the member to keep it from turning: let ${Math.round(100 * clampingReach)} cm (a foot) of it stand there, or say 'held pinned'`,
      origin,
      'warning',
    );
  }
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
