/**
 * What stock items came to when they were read, kept by the definitions they were read from. While somebody types in
 * a shelter its stock says the same, and reading it anew would be half the work of resolving; and an item that
 * several parts are made of is one object.
 */
import type { Item } from '../model/items.ts';
import { factNode, factNodes, itemIn } from '../spec/nodes.ts';
import type { SpecDefinition, SpecNode, SpecWorld } from '../spec/spec.ts';
import { assume, type Notes, newNotes, problem } from './notes.ts';
import { definitionsOf } from './world.ts';

/** Lines of all price lists by the item they name. */
export type Listed = ReadonlyMap<string, readonly SpecNode[]>;

interface Reading {
  /** All names that were looked up, and what stood there. */
  readonly from: Looked;
  readonly listed: Listed;
  readonly item: Item | undefined;
  readonly notes: Notes;
}

type Looked = readonly (readonly [name: string, definition: SpecDefinition | undefined])[];

/** The last reading of each definition. */
const readings = new WeakMap<SpecDefinition, Reading>();

/**
 * The item of a definition: read, or found where everything it says, is like, is made of and costs is what it was.
 * What was noted then is noted again.
 */
export function readOnce(
  definition: SpecDefinition,
  world: SpecWorld,
  notes: Notes,
  read: (notes: Notes, listed: Listed) => Item | undefined,
): Item | undefined {
  const listed = listedPrices(world);
  let reading = readings.get(definition);
  if (reading === undefined || reading.listed !== listed || !standsIn(world, reading.from)) {
    const own = newNotes();
    reading = { from: lookedUp(definition, world), listed, item: read(own, listed), notes: own };
    readings.set(definition, reading);
  }
  const { problems, assumed } = reading.notes;
  for (const { id, message, origin, severity } of problems) problem(notes, id, message, origin, severity);
  for (const { part, fact, value, kind, why, origin } of assumed)
    assume(notes, part, fact, value, kind, why, origin);
  return reading.item;
}

const standsIn = ({ definitions }: SpecWorld, from: Looked): boolean =>
  from.every(([name, definition]) => definitions.get(name) === definition);

/** What an item is like, the material that it or one of those names, and what that is like. */
function lookedUp(definition: SpecDefinition, { definitions }: SpecWorld): Looked {
  const looked = new Map<string, SpecDefinition | undefined>();
  const follow = (first: string | undefined): void => {
    let name = first;
    while (name !== undefined && !looked.has(name)) {
      const found = definitions.get(name);
      looked.set(name, found);
      name = found?.like;
    }
  };
  follow(definition.like);
  for (const one of [definition, ...looked.values()]) follow(itemIn(factNode(one, 'material')));
  return [...looked];
}

/** The last prices that were gathered, by the first list. */
const gathered = new WeakMap<
  SpecDefinition,
  { readonly lists: readonly SpecDefinition[]; readonly listed: Listed }
>();
const unlisted: Listed = new Map();

/** Lines of all price lists, the same object as long as the lists say the same. */
function listedPrices(world: SpecWorld): Listed {
  const lists = definitionsOf('prices', world);
  const [first] = lists;
  if (first === undefined) return unlisted;
  const known = gathered.get(first);
  if (known && known.lists.length === lists.length && known.lists.every((list, n) => list === lists[n]))
    return known.listed;
  const listed = new Map<string, SpecNode[]>();
  for (const list of lists) {
    for (const fact of factNodes(list, 'price')) {
      const item = itemIn(fact);
      if (item === undefined) continue;
      const lines = listed.get(item) ?? [];
      lines.push(fact);
      listed.set(item, lines);
    }
  }
  gathered.set(first, { lists, listed });
  return listed;
}
