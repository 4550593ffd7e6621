/** All shelters of the files counted as one purchase, against all that lies on hand. */
import type { LoadedShelter, LoadedWorkspace } from '@tautline/language';
import {
  newNotes,
  type OnHand,
  type Origin,
  type PriceListNote,
  readPriceLists,
  readYard,
  resolveRange,
  resolveShelter,
} from '@tautline/shelter';
import {
  type Counted,
  type Left,
  leftOnHand,
  type Materials,
  materialsExactOf,
  type PriceList,
  stockOnHand,
  type Taken,
  takenBy,
  takeoffOfSeveral,
} from '@tautline/takeoff';
import { CannotRun } from '../exit.ts';
import { shownPath } from '../files.ts';
import { loadSolver } from '../solver.ts';
import { currencyOf, onceByOrigin, oneItemAName, pricesOfAll, worldsOf } from './agreed.ts';

export interface Pooled {
  /** Names of what was counted. */
  readonly counted: readonly string[];
  readonly leftOut: readonly { readonly name: string; readonly file: string; readonly why: string }[];
  readonly materials: Materials;
  readonly have: readonly OnHand[];
  readonly left: readonly Left[];
  readonly priceLists: readonly PriceListNote[];
}

export interface PooledOptions {
  /** Names of the only shelters to count; all when absent. */
  readonly only?: readonly string[];
  /** Shelters that stand on this day, ISO, are left out; none when absent. */
  readonly standingOn?: string;
  /** Prices that go before those of the files. */
  readonly prices?: PriceList;
  /** s */
  readonly frameLife?: number;
}

type Asked = Counted & Taken;

/** Throws CannotRun when nothing can be counted, or the files do not go together: two currencies, one name for two items. */
export async function pooled(workspace: LoadedWorkspace, options: PooledOptions): Promise<Pooled> {
  const { taken, leftOut } = countedIn(workspace, options);
  if (taken.length === 0)
    throw new CannotRun(
      ['There is nothing to count.', ...leftOut.map(({ name, why }) => `${name}: ${why}.`)].join('\n'),
    );
  const worlds = worldsOf(workspace);
  const together = takeoffOfSeveral(taken);
  oneItemAName(together.lines, workspace);
  const have = onceByOrigin(worlds.flatMap((world) => readYard(world, newNotes())));
  const hands = stockOnHand(have);
  const currency = currencyOf(worlds);
  const materials = await materialsExactOf(
    together,
    taken.reduce((sum, one) => sum + one.ground, 0),
    loadSolver,
    {
      ...hands,
      prices: pricesOfAll(together.lines, options.prices),
      ...(currency === undefined ? {} : { currency }),
      ...(options.frameLife === undefined ? {} : { frameLife: options.frameLife }),
    },
  );
  return {
    counted: taken.map(({ name }) => name),
    leftOut,
    materials,
    have,
    left: leftOnHand(materials, hands),
    priceLists: onceByOrigin(worlds.flatMap((world) => readPriceLists(world))),
  };
}

/**
 * What to count. A range brings the shelters that stand in it, as often as they do; they are not counted again
 * by themselves. Variants are other ways to build the same shelter, and count only where they are named.
 */
function countedIn(
  { shelters }: LoadedWorkspace,
  { only, standingOn }: PooledOptions,
): { readonly taken: readonly Asked[]; readonly leftOut: Pooled['leftOut'] } {
  const unknown = only?.find((name) => !shelters.some((one) => one.name === name));
  if (unknown !== undefined) {
    const names = shelters.map(({ name }) => name).join(', ');
    throw new CannotRun(`There is no shelter or range '${unknown}' here; there are ${names || 'none'}.`);
  }
  const asked = shelters.filter(({ name }) => only?.includes(name) ?? true);
  const inRanges = new Set<Origin>();
  const taken: Asked[] = [];
  const leftOut: { name: string; file: string; why: string }[] = [];
  const leave = ({ name, uri }: LoadedShelter, why: string): void => {
    leftOut.push({ name, file: shownPath(uri), why });
  };
  for (const loaded of asked.filter(({ kind }) => kind === 'range')) {
    const { range, problems } = resolveRange(loaded.name, loaded.world);
    if (range === undefined) {
      leave(loaded, reasonIn(problems));
      continue;
    }
    for (const { shelter } of range.places) inRanges.add(shelter.origin);
    taken.push({ name: loaded.name, ...takenBy(range) });
  }
  for (const loaded of asked.filter(({ kind }) => kind !== 'range')) {
    if (inRanges.has(loaded.origin)) continue;
    if (loaded.kind === 'variant' && only === undefined) {
      leave(loaded, 'a variant, another way to build a shelter: name it with --shelter to count it');
      continue;
    }
    const { shelter, problems } = resolveShelter(loaded.name, loaded.world);
    if (shelter === undefined) leave(loaded, reasonIn(problems));
    else if (standingOn !== undefined && shelter.built !== undefined && shelter.built <= standingOn)
      leave(loaded, `it stands since ${shelter.built}: --built counts it, too`);
    else taken.push({ name: loaded.name, ...takenBy(shelter) });
  }
  return { taken, leftOut };
}

const reasonIn = (problems: readonly { readonly severity: string; readonly message: string }[]): string =>
  problems.find(({ severity }) => severity === 'error')?.message ?? 'its spec is incomplete';
