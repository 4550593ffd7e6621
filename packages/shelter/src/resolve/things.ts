/** What stands under the roof without belonging to the frame: benches, beds, tanks, things to stay clear of. */
import { format, type System } from '@tautline/quantity';
import { leastClearOver, type Overhead } from '../geometry/headroom.ts';
import type { Thing } from '../model/shelter.ts';
import { factNode, factNodes, numberIn, textIn } from '../spec/nodes.ts';
import type { SpecNode } from '../spec/spec.ts';
import type { Context } from './context.ts';
import { assume, missing, numberFact, problem, someLength, within } from './notes.ts';
import { unitsOf } from './project.ts';

const kinds: readonly Thing['kind'][] = ['bench', 'bed', 'tank', 'obstacle'];

/** Side of an obstacle whose size is not said, m: a post, a tap. */
const smallThing = 0.3;

/** More of one kind side by side is taken for a slip of the pen. */
const mostAbreast = 100;

/** What becomes true of a message: lengths in the units the file is shown in. */
type Say = (si: number) => string;

export function readThings(overhead: Overhead, context: Context): readonly Thing[] {
  const system: System = unitsOf(context.world);
  const say: Say = (si) => format(si, 'length', system);
  return kinds.flatMap((kind) =>
    factNodes(context.shelter, kind).flatMap((block, index) => {
      const thing = readThing(block, kind, index, context);
      if (!thing) return [];
      insideFootprint(thing, say, context);
      underTheRoof(thing, overhead, say, context);
      return [thing];
    }),
  );
}

function readThing(block: SpecNode, kind: Thing['kind'], index: number, context: Context): Thing | undefined {
  const { notes } = context;
  const id = index === 0 ? kind : `${kind}-${index + 1}`;
  const size = sizeOf(block, id, kind, context);
  if (!size) return undefined;
  const or = (word: string, value: number, why: string) =>
    numberFact(notes, block, word, { least: 0, most: 100 }) ??
    assume(notes, id, word, value, 'length', why, block.origin);
  const count = Math.round(numberFact(notes, block, 'count', { least: 1, most: mostAbreast }) ?? 1);
  const starts =
    numberFact(notes, block, 'starts', { least: 0, most: 1000 }) ??
    assume(
      notes,
      id,
      'starts',
      Math.max(0, (context.length - size.length) / 2),
      'length',
      'in the middle of the house',
      block.origin,
    );
  const named = textIn(factNode(block, 'name'));
  return {
    id,
    origin: block.origin,
    kind,
    name: named ?? kind,
    ...size,
    lefts: leftsOf(block, id, count, size.width, context),
    starts,
    height: or(
      'height',
      0,
      kind === 'bed' ? 'a bed is level with the ground' : 'no height is said, so none is checked',
    ),
    clearance: or('clearance', 0, 'no room above it is asked for'),
  };
}

function sizeOf(
  block: SpecNode,
  id: string,
  kind: Thing['kind'],
  context: Context,
): { readonly width: number; readonly length: number } | undefined {
  const { notes } = context;
  const [width, length] = [numberIn(block, 'width'), numberIn(block, 'length')];
  if (width === undefined || length === undefined) {
    if (kind !== 'obstacle') return missing(notes, block, ['shelter', kind]);
    const side = assume(
      notes,
      id,
      'size',
      smallThing,
      'length',
      'no size is said: common practice, no source',
      block.origin,
    );
    return { width: side, length: side };
  }
  const wide = within(notes, width, `the width of the ${kind}`, someLength, block);
  const long = within(notes, length, `the length of the ${kind}`, someLength, block);
  return wide === undefined || long === undefined ? undefined : { width: wide, length: long };
}

/**
 * x of the left edge of each, m. One stands where it is said to, else in the middle. Several are spread
 * evenly, the last as far from the right side as the first from the left; without a distance the gaps
 * between them and at the sides are equal.
 */
function leftsOf(
  block: SpecNode,
  id: string,
  count: number,
  width: number,
  context: Context,
): readonly number[] {
  const gap = (context.width - count * width) / (count + 1);
  const first =
    numberFact(context.notes, block, 'from', { least: 0, most: 1000 }) ??
    assume(context.notes, id, 'from', Math.max(0, gap), 'length', 'spread evenly', block.origin);
  const step = count === 1 ? 0 : (context.width - 2 * first - width) / (count - 1);
  return Array.from({ length: count }, (_, n) => first + n * step);
}

function insideFootprint(thing: Thing, say: Say, { notes, width, length }: Context): void {
  const warn = (words: string) => problem(notes, 'outside', words, thing.origin, 'warning');
  const beyond = Math.max(...thing.lefts.map((x) => x + thing.width)) - width;
  if (beyond > 1e-6) {
    warn(
      `the ${thing.name} reaches ${say(beyond)} beyond the right side of the house: it is ${say(thing.width)} wide, so it can stand ${say(Math.max(0, width - thing.width))} from the left side at most`,
    );
  }
  const past = thing.starts + thing.length - length;
  if (past > 1e-6) {
    warn(`the ${thing.name} reaches ${say(past)} beyond the end of the house, which is ${say(length)} long`);
  }
  const [first = 0, second = first + thing.width] = thing.lefts;
  const shared = first + thing.width - second;
  if (thing.lefts.length > 1 && shared > 1e-6) {
    warn(
      `${thing.lefts.length} of the ${thing.name} do not stand side by side: each is ${say(shared)} too wide, or stands that much too far in`,
    );
  }
}

/** Whether the thing itself fits under the roof as built; what room is left once it settles, a check asks. */
function underTheRoof(thing: Thing, overhead: Overhead, say: Say, { notes }: Context): void {
  for (const x of thing.lefts) {
    const least = leastClearOver(overhead, x, x + thing.width);
    if (least === undefined || thing.height <= least.height) continue;
    problem(
      notes,
      'too-tall',
      `the ${thing.name} is ${say(thing.height)} high, but the roof or a tie over it comes down to ${say(least.height)} at ${say(least.x)} from the left side: ${say(thing.height - least.height)} too little`,
      thing.origin,
      'warning',
    );
    return;
  }
}
