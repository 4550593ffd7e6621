/** Another amount in a price list changes what things cost, and nothing that is found: no frame is looked at again. */
import {
  numberIn,
  resolveRange,
  resolveShelter,
  type SpecDefinition,
  type SpecNode,
  type SpecWorld,
} from '@tautline/shelter';
import { bearingOn } from './bearing.ts';
import { ownOf } from './messages.ts';
import type { WorkedOut } from './result.ts';

/** As `bearingOn`, the same text also where price lists say other amounts for the same things. */
export const bearingButForAmounts = (name: string, world: SpecWorld): string =>
  bearingOn(name, withoutAmounts(world));

/** A result with the prices of a world that differs in amounts alone; undefined where there is nothing to keep. */
export function repriced(world: SpecWorld, before: WorkedOut): WorkedOut | undefined {
  const { evaluation, judged, shelter: name } = before;
  if (evaluation) {
    const { shelter, problems } = resolveShelter(name, world);
    return shelter && { ...before, problems, evaluation: { ...evaluation, shelter } };
  }
  if (!judged) return undefined;
  const { range, problems } = resolveRange(name, world);
  return range && { ...before, problems, judged: { ...judged, range } };
}

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
