/** What a shelter costs, by quick cut lists, and what a change of it would cost more or less. */
import {
  applyEdits,
  newNotes,
  type Range,
  readProject,
  readYard,
  resolveRange,
  resolveShelter,
  type Shelter,
  type SpecEdit,
  type SpecWorld,
} from '@tautline/shelter';
import {
  groundOf,
  type Materials,
  materialsOf,
  rangeGround,
  rangeTakeoff,
  stockOnHand,
  takeoff,
} from '@tautline/takeoff';

export interface Bill {
  /** Sum of everything that has a price. */
  readonly total: number;
  /** ISO 4217 code, when the project names one. */
  readonly currency?: string;
  /** What is left out of the sum, in words: no price, no length sold that is long enough, not counted. */
  readonly missing: readonly string[];
}

/** Everything to buy, by quick cut lists, in the currency of the project; stock on hand is not bought. */
export function countedFor(what: Shelter | Range, world: SpecWorld): Materials {
  const notes = newNotes();
  const { currency } = readProject(world, notes);
  const [taken, ground] =
    'places' in what ? [rangeTakeoff(what), rangeGround(what)] : [takeoff(what), groundOf(what)];
  return materialsOf(taken, ground, {
    ...stockOnHand(readYard(world, notes)),
    ...(currency === undefined ? {} : { currency }),
  });
}

/** Undefined when nothing has a price. */
export function billOf(what: Shelter | Range, world: SpecWorld): Bill | undefined {
  const { cost, lines, gaps, currency } = countedFor(what, world);
  if (!lines.some((line) => line.cost !== undefined && line.cost > 0)) return undefined;
  return {
    total: cost.total,
    ...(currency === undefined ? {} : { currency }),
    missing: [...cost.missing, ...cost.tooLong, ...gaps.map(({ what }) => what)],
  };
}

/**
 * What edits add to a bill, negative when they save; undefined when the sums before and after do not count
 * the same things, so that their difference would say nothing.
 */
export function costOfEdits(
  edits: readonly SpecEdit[],
  name: string,
  world: SpecWorld,
  before: Bill | undefined,
): number | undefined {
  if (!before) return undefined;
  const changed = { ...world, definitions: applyEdits(world.definitions, edits) };
  const what =
    world.definitions.get(name)?.word === 'range'
      ? resolveRange(name, changed).range
      : resolveShelter(name, changed).shelter;
  const after = what && billOf(what, changed);
  if (!after || !same(after.missing, before.missing)) return undefined;
  return after.total - before.total;
}

const same = (a: readonly string[], b: readonly string[]): boolean =>
  JSON.stringify([...new Set(a)].sort()) === JSON.stringify([...new Set(b)].sort());
