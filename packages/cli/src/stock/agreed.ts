/** What several files say together: prices, currency, stock on hand; and where they contradict each other. */
import type { LoadedWorkspace } from '@tautline/language';
import { newNotes, type Origin, type PricePoint, readProject, type SpecWorld } from '@tautline/shelter';
import { type PriceList, priceKey, type TakeoffLine } from '@tautline/takeoff';
import { CannotRun } from '../exit.ts';
import { shownPath } from '../files.ts';

/** One world for each file, imported ones included. */
export const worldsOf = ({ files, worldOf }: LoadedWorkspace): readonly SpecWorld[] =>
  files.flatMap(({ uri }) => worldOf(uri) ?? []);

/** A file that many import says its blocks once. */
export function onceByOrigin<T extends { readonly origin: Origin }>(all: readonly T[]): readonly T[] {
  return [...new Map(all.map((one) => [one.origin, one] as const)).values()];
}

/** The currency of all files that name one. Throws CannotRun where they name two. */
export function currencyOf(worlds: readonly SpecWorld[]): string | undefined {
  const named = new Set(worlds.flatMap((world) => readProject(world, newNotes()).currency ?? []));
  if (named.size > 1)
    throw new CannotRun(
      `The files count in ${[...named].sort().join(' and ')}: prices of two currencies cannot be added up. Name the files of one of them.`,
    );
  return [...named][0];
}

/**
 * Prices of every item by any of the files, since one file may import a price list that another does not;
 * prices of `first` go before them.
 */
export function pricesOfAll(lines: readonly TakeoffLine[], first: PriceList = new Map()): PriceList {
  const prices = new Map<string, readonly PricePoint[]>();
  for (const line of lines) {
    const key = priceKey(line);
    prices.set(key, onceByOrigin([...(prices.get(key) ?? []), ...(line.item?.prices ?? [])]));
  }
  return new Map([...prices, ...first]);
}

/** Throws CannotRun where two files describe different items under one name: what to buy could not be told. */
export function oneItemAName(lines: readonly TakeoffLine[], { placeOf }: LoadedWorkspace): void {
  const known = new Map<string, Origin>();
  for (const { item } of lines) {
    if (item === undefined) continue;
    const before = known.get(item.id) ?? item.origin;
    known.set(item.id, before);
    if (before === item.origin) continue;
    const [here, there] = [before, item.origin].map((origin) => shownPath(placeOf(origin)?.uri ?? ''));
    throw new CannotRun(
      `${here} and ${there} each describe an item '${item.id}' of their own. Give one of them another name, or count them one by one.`,
    );
  }
}
