/** What the files say of the project, of the price lists and of stock on hand. */
import type { Origin } from '../model/origin.ts';
import { dateIn, factNode, factNodes, itemIn, numberIn, textIn, wordIn } from '../spec/nodes.ts';
import type { SpecWorld } from '../spec/spec.ts';
import { type Notes, newNotes, problem } from './notes.ts';
import { definitionsOf } from './world.ts';

export interface Project {
  readonly title?: string;
  /** ISO 4217 code; absent when none is said, or one that is not three letters. */
  readonly currency?: string;
  readonly units?: 'metric' | 'us';
}

/** Where the prices of a list come from. */
export interface PriceListNote {
  readonly from?: string;
  /** ISO date the prices were asked. */
  readonly asked?: string;
  readonly origin: Origin;
}

/** So many of an item that the grower already has. */
export interface OnHand {
  readonly item: string;
  readonly count: number;
  /** m; absent for things counted in pieces. */
  readonly length?: number;
  readonly origin: Origin;
}

/** Settings of the project. The nearest file that says one goes before the files it imports. */
export function readProject(world: SpecWorld, notes: Notes): Project {
  const blocks = definitionsOf('project', world);
  const first = (word: string) =>
    blocks.flatMap((block) => factNode(block, word) ?? []).find((fact) => fact.slots['value']);
  const title = textIn(first('title'));
  const money = first('currency');
  const code = wordIn(money)?.toUpperCase();
  const currency = code !== undefined && /^[A-Z]{3}$/.test(code) ? code : undefined;
  if (money && currency === undefined) {
    problem(
      notes,
      'wrong-word',
      'a currency is said by its three-letter ISO 4217 code, as in `currency USD`',
      money.origin,
    );
  }
  const units = wordIn(first('units'));
  return {
    ...(title === undefined ? {} : { title }),
    ...(currency === undefined ? {} : { currency }),
    ...(units === 'metric' || units === 'us' ? { units } : {}),
  };
}

/** The units a world is shown in: those the project says, else those its file is written in, else metric. */
export function unitsOf(world: SpecWorld): 'metric' | 'us' {
  const known = units.get(world) ?? readProject(world, newNotes()).units ?? world.written ?? 'metric';
  units.set(world, known);
  return known;
}

/** Asked for with every supply that is not said. */
const units = new WeakMap<SpecWorld, 'metric' | 'us'>();

/** Where the prices come from, one note a list. The prices themselves stand in the items. */
export function readPriceLists(world: SpecWorld): readonly PriceListNote[] {
  return definitionsOf('prices', world).map((list) => {
    const from = textIn(factNode(list, 'from'));
    const asked = dateIn(factNode(list, 'asked'));
    return {
      ...(from === undefined ? {} : { from }),
      ...(asked === undefined ? {} : { asked }),
      origin: list.origin,
    };
  });
}

/** Stock on hand of every yard block. A count that is no whole number, or a length of nothing, is a problem. */
export function readYard(world: SpecWorld, notes: Notes): readonly OnHand[] {
  return definitionsOf('yard', world)
    .flatMap((yard) => factNodes(yard, 'have'))
    .flatMap((fact) => {
      const item = itemIn(fact);
      const count = numberIn(fact, 'count');
      const length = numberIn(fact, 'length');
      if (item === undefined || count === undefined) return [];
      if (!Number.isInteger(count) || count < 0) {
        problem(notes, 'out-of-range', 'what you have is counted in whole pieces', fact.origin);
        return [];
      }
      if (length !== undefined && !(length > 0 && Number.isFinite(length))) {
        problem(notes, 'out-of-range', 'the length must be more than nothing', fact.origin);
        return [];
      }
      return { item, count, origin: fact.origin, ...(length === undefined ? {} : { length }) };
    });
}
