/** What bears on one shelter of a file with several: an edit in one house leaves the results of the others. */
import { numberIn, type SpecDefinition, type SpecNode, type SpecWorld } from '@tautline/shelter';
import { numbersOf, ownOf } from './messages.ts';

/** Definitions that bear only on what names them: a variant on nothing but itself, a house on its variants and ranges. */
const houses: ReadonlySet<string> = new Set(['shelter', 'variant', 'range']);

/**
 * Everything of its own that a world says and that can make a difference to the shelter, variant or range of this
 * name, as a short text: the same text, the same result.
 */
export function bearingOn(name: string, world: SpecWorld): string {
  const { definitions } = world;
  const named = new Set([name]);
  // A set that grows while it is walked: the houses that those name are named in turn.
  for (const one of named) {
    const definition = definitions.get(one);
    if (definition?.like !== undefined) named.add(definition.like);
    if (definition) addHouses(definition, definitions, named);
  }
  const bearing = ownOf(world).filter(([key, { word }]) => !houses.has(word) || named.has(key));
  return numbersOf(world, bearing);
}

/** Adds the houses a node names. Names can stand in any slot of any fact. */
function addHouses(
  node: SpecNode,
  definitions: ReadonlyMap<string, SpecDefinition>,
  into: Set<string>,
): void {
  for (const value of Object.values(node.slots)) {
    if (value.type === 'item' && houses.has(definitions.get(value.id)?.word ?? '')) into.add(value.id);
  }
  for (const child of node.children) addHouses(child, definitions, into);
}

/** As `bearingOn`, the same text also where price lists say other amounts for the same things. */
export const bearingButForAmounts = (name: string, world: SpecWorld): string =>
  bearingOn(name, withoutAmounts(world));

const worlds = new WeakMap<SpecWorld, SpecWorld>();

function withoutAmounts(world: SpecWorld): SpecWorld {
  const known = worlds.get(world);
  if (known) return known;
  const definitions = new Map(
    ownOf(world).map(([name, one]) => [name, one.word === 'prices' ? bare(one) : one]),
  );
  const made = { ...world, definitions };
  worlds.set(world, made);
  return made;
}

const lists = new WeakMap<SpecDefinition, SpecDefinition>();

function bare(list: SpecDefinition): SpecDefinition {
  const known = lists.get(list);
  if (known) return known;
  const made = { ...list, children: list.children.map(withoutAmount) };
  lists.set(list, made);
  return made;
}

/** Whether a thing has a price at all makes a difference, and a price below nothing is none. */
function withoutAmount(line: SpecNode): SpecNode {
  const amount = numberIn(line, 'amount');
  if (amount === undefined || !(amount >= 0)) return line;
  const { amount: _amount, ...slots } = line.slots;
  return { ...line, slots };
}
