/** What comes of using another stock item in the place of one: tried, like every change that is offered. */
import type { Finding } from '@tautline/checks';
import {
  applyEdits,
  newNotes,
  resolveItems,
  type SpecEdit,
  type SpecWorld,
  standIns,
  swapEdits,
} from '@tautline/shelter';
import { billOfNamed, costOfEdits } from './bill.ts';
import type { WorkedOut } from './result.ts';
import { type Working, workOut } from './work-out.ts';

export interface SwapRequest {
  readonly on?: string;
  /** The item that gives way. */
  readonly from: string;
  /** Which of the items that could stand in, nearest first, from 0. */
  readonly nth: number;
}

/** A change, and what it does. Plain data. */
export interface Swapped {
  readonly to: string;
  readonly title: string;
  readonly edits: readonly SpecEdit[];
  /** Fittings that change with it, in words: `coupler-32 for coupler-25`. */
  readonly along: readonly string[];
  /** Fittings made for the old item that nothing in stock replaces. */
  readonly left: readonly string[];
  /** Ids of checks that then fail or come near no more, and of those that newly do; each once. */
  readonly gone: readonly string[];
  readonly came: readonly string[];
  /** Those that come near and failed before, and those that fail and came near before. */
  readonly eased: readonly string[];
  readonly worsened: readonly string[];
  /** Checks that fail afterwards. */
  readonly failing: number;
  readonly cost?: { readonly change: number; readonly currency?: string };
}

/** Undefined when there are no more items that could stand in, or the shelter cannot be built with this one. */
export function swapNow(
  world: SpecWorld,
  before: WorkedOut,
  { from, nth, on }: SwapRequest,
  working: Working = {},
): Swapped | undefined {
  const { shelter: name, evaluation } = before;
  const block = world.definitions.get(name);
  if (!evaluation || !block) return undefined;
  try {
    const stock = resolveItems(world, newNotes());
    const item = stock.find(({ id }) => id === from);
    const to = item && standIns(item, stock)[nth];
    if (!to) return undefined;
    const { edits, along, left } = swapEdits(block, item, to, stock);
    if (edits.length === 0) return undefined;
    const changed = { ...world, definitions: applyEdits(world.definitions, edits) };
    const after = workOut(changed, name, on, working);
    if (!after.evaluation) return undefined;
    const moves = movesOf(levels(evaluation.findings), levels(after.evaluation.findings));
    const bill = billOfNamed(name, world);
    const change = costOfEdits(edits, name, world, bill);
    const currency = bill?.currency;
    return {
      to: to.id,
      title: to.title,
      edits,
      along: along.map((one) => `${one.to.id} for ${one.from.id}`),
      left: left.map(({ id }) => id),
      ...moves,
      failing: after.evaluation.findings.filter(({ severity }) => severity === 'error').length,
      ...(change === undefined ? {} : { cost: { change, ...(currency === undefined ? {} : { currency }) } }),
    };
  } catch {
    // A change that cannot be tried out is not offered.
    return undefined;
  }
}

interface Level {
  readonly id: string;
  readonly fails: boolean;
}

/** Findings a reader is shown, by check and part. */
const levels = (findings: readonly Finding[]): ReadonlyMap<string, Level> =>
  new Map(
    findings
      .filter(({ verdict, accepted }) => accepted === undefined && /^(fails|near)/.test(verdict))
      .map(({ id, part, verdict }) => [`${id}/${part}`, { id, fails: verdict === 'fails' }]),
  );

function movesOf(
  then: ReadonlyMap<string, Level>,
  now: ReadonlyMap<string, Level>,
): Pick<Swapped, 'gone' | 'came' | 'eased' | 'worsened'> {
  const idsIn = (side: typeof then, wanted: (key: string, level: Level) => boolean): string[] => [
    ...new Set([...side].filter(([key, level]) => wanted(key, level)).map(([, { id }]) => id)),
  ];
  return {
    gone: idsIn(then, (key) => !now.has(key)),
    came: idsIn(now, (key) => !then.has(key)),
    eased: idsIn(now, (key, { fails }) => !fails && then.get(key)?.fails === true),
    worsened: idsIn(now, (key, { fails }) => fails && then.get(key)?.fails === false),
  };
}
