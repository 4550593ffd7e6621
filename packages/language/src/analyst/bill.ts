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
import { type Materials, materialsOf, stockOnHand, takenBy } from '@tautline/takeoff';
import { reason } from './reason.ts';

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
  const { takeoff, ground } = takenBy(what);
  return materialsOf(takeoff, ground, {
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

/** What a question for a bill is answered. */
export interface Billed {
  readonly bill?: Bill;
  /** Set when the sum itself broke off: a fault of the program, never hidden. */
  readonly failure?: string;
}

/** The bill of the shelter or range of that name; none when nothing has a price or it cannot be resolved. Never throws. */
export function billed(name: string, world: SpecWorld): Billed {
  try {
    const bill = billOfNamed(name, world);
    return bill ? { bill } : {};
  } catch (error) {
    return { failure: reason(error) };
  }
}

/** The same as `billOf` by name; undefined also where it cannot be resolved. */
export function billOfNamed(name: string, world: SpecWorld): Bill | undefined {
  const what = namedIn(world, name);
  return what && billOf(what, world);
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
  const after = billOfNamed(name, changed);
  if (!after || !same(after.missing, before.missing)) return undefined;
  return after.total - before.total;
}

const namedIn = (world: SpecWorld, name: string): Shelter | Range | undefined =>
  world.definitions.get(name)?.word === 'range'
    ? resolveRange(name, world).range
    : resolveShelter(name, world).shelter;

const same = (a: readonly string[], b: readonly string[]): boolean =>
  JSON.stringify([...new Set(a)].sort()) === JSON.stringify([...new Set(b)].sort());
