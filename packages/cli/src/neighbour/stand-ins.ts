/** Which of a neighbour's items stands in for which of a shelter's: each tried, with the checks run again. */
import { type Evaluation, evaluate } from '@tautline/checks';
import { type FindingChange, findingChanges, sourcesOf } from '@tautline/review';
import {
  applyEdits,
  type Item,
  newNotes,
  type OnHand,
  resolveItems,
  resolveShelter,
  type SpecWorld,
  standIns,
  swapEdits,
} from '@tautline/shelter';
import {
  type MaterialLine,
  type Materials,
  materialsExact,
  type PriceList,
  stockOnHand,
} from '@tautline/takeoff';
import { loadSolver } from '../solver.ts';

/** A shelter worked out with one choice of items. */
export interface Built {
  readonly world: SpecWorld;
  readonly evaluation: Evaluation;
  readonly materials: Materials;
}

export interface StandIn {
  readonly to: Item;
  /** Fittings that change with it. */
  readonly along: readonly { readonly from: string; readonly to: string }[];
  /** Fittings made for the old item that nothing in stock replaces. */
  readonly without: readonly string[];
  /** Why the shelter cannot be built with it as the spec says; then the rest is empty. */
  readonly problem?: string;
  readonly findings: readonly FindingChange[];
  /** Whether a check fails that did not before. */
  readonly fails: boolean;
  readonly built?: Built;
}

export interface Need {
  readonly item: Item;
  /** Lines of the original take-off: one, or one for each width of a film. */
  readonly lines: readonly MaterialLine[];
  /** `all`: nothing of it has to be bought. */
  readonly has: 'all' | 'some' | 'none';
  /** Tried where something has to be bought, the nearest first. */
  readonly tried: readonly StandIn[];
  /** The nearest with which nothing fails that did not before. */
  readonly best?: StandIn;
}

export interface Neighbour {
  readonly before: Built;
  readonly needs: readonly Need[];
  /** All that stand in at once; absent where none does. */
  readonly together?: {
    readonly swaps: readonly { readonly from: string; readonly to: string }[];
    readonly findings: readonly FindingChange[];
    readonly fails: boolean;
    readonly problem?: string;
    readonly built?: Built;
  };
}

export interface NeighbourOptions {
  readonly name: string;
  readonly have: readonly OnHand[];
  /** ISO day that ages are counted to. */
  readonly on: string;
  readonly prices?: PriceList;
  readonly currency?: string;
}

/** So many of their items are tried for each item: the nearest in stuff and size. */
const mostTried = 3;

/** Why it cannot be worked out as written, where it cannot. */
export async function neighbourOf(world: SpecWorld, options: NeighbourOptions): Promise<Neighbour | string> {
  const before = await builtOf(world, options);
  if (typeof before === 'string') return before;
  const stock = resolveItems(world, newNotes());
  const theirs = stock.filter(({ id }) => options.have.some((one) => one.item === id && one.count > 0));
  const needs: Need[] = [];
  for (const item of itemsOf(before.materials)) {
    const lines = before.materials.lines.filter((line) => line.item?.id === item.id);
    const has = hasOf(lines);
    const tried: StandIn[] = [];
    if (has !== 'all')
      for (const to of standIns(item, theirs).slice(0, mostTried)) {
        const one = await tryOut(before, item, to, stock, options);
        if (one !== undefined) tried.push(one);
      }
    const best = tried.find(({ fails, built }) => built !== undefined && !fails);
    needs.push({ item, lines, has, tried, ...(best === undefined ? {} : { best }) });
  }
  const together = await allTogether(before, needs, stock, options);
  return { before, needs, ...(together === undefined ? {} : { together }) };
}

async function builtOf(
  world: SpecWorld,
  { name, have, on, prices, currency }: NeighbourOptions,
): Promise<Built | string> {
  const { shelter, problems } = resolveShelter(name, world);
  if (shelter === undefined)
    return problems.find(({ severity }) => severity === 'error')?.message ?? 'its spec is incomplete';
  return {
    world,
    evaluation: evaluate(shelter, { on, gusts: false }),
    materials: await materialsExact(shelter, loadSolver, {
      ...stockOnHand(have),
      ...(prices === undefined ? {} : { prices }),
      ...(currency === undefined ? {} : { currency }),
    }),
  };
}

function itemsOf({ lines }: Materials): readonly Item[] {
  return [...new Map(lines.flatMap(({ item }) => (item ? [[item.id, item] as const] : []))).values()];
}

function hasOf(lines: readonly MaterialLine[]): Need['has'] {
  const bought = lines.some((line) =>
    line.cuts ? line.cuts.bought.length + line.cuts.impossible.length > 0 : (line.buy ?? line.total) > 0,
  );
  const taken = lines.some(
    (line) => (line.fromHand ?? 0) > 0 || line.cuts?.bars.some(({ onHand }) => onHand),
  );
  return bought ? (taken ? 'some' : 'none') : 'all';
}

/** Undefined where the spec does not name the item: then it is not the spec's to change. */
async function tryOut(
  before: Built,
  from: Item,
  to: Item,
  stock: readonly Item[],
  options: NeighbourOptions,
): Promise<StandIn | undefined> {
  const swap = swapped(before.world, from, to, stock, options.name);
  if (swap === undefined) return undefined;
  const built = await builtOf(swap.world, options);
  return { to, along: swap.along, without: swap.without, ...outcome(before, built) };
}

function swapped(world: SpecWorld, from: Item, to: Item, stock: readonly Item[], name: string) {
  const block = sourcesOf({ name, world }).shelter;
  if (block === undefined) return undefined;
  const { edits, along, left } = swapEdits(block, from, to, stock);
  if (edits.length === 0) return undefined;
  return {
    world: { ...world, definitions: applyEdits(world.definitions, edits) },
    along: along.map((one) => ({ from: one.from.id, to: one.to.id })),
    without: left.map(({ id }) => id),
  };
}

function outcome(
  before: Built,
  built: Built | string,
): Pick<StandIn, 'problem' | 'findings' | 'fails' | 'built'> {
  if (typeof built === 'string') return { problem: built, findings: [], fails: true };
  const findings = findingChanges(before.evaluation.findings, built.evaluation.findings);
  const fails = findings.some(
    ({ change, before: was, after: is }) =>
      is?.severity === 'error' && (change === 'came' || was?.severity !== 'error'),
  );
  return { findings, fails, built };
}

async function allTogether(
  before: Built,
  needs: readonly Need[],
  stock: readonly Item[],
  options: NeighbourOptions,
): Promise<Neighbour['together']> {
  const swaps: { from: string; to: string }[] = [];
  let { world } = before;
  for (const { item, best } of needs) {
    // A fitting may have gone along with its pipe already.
    const next = best && swapped(world, item, best.to, stock, options.name);
    if (!next) continue;
    world = next.world;
    swaps.push({ from: item.id, to: best.to.id }, ...next.along);
  }
  if (swaps.length === 0) return undefined;
  return { swaps, ...outcome(before, await builtOf(world, options)) };
}
