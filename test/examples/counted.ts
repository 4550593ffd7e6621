/** What a hand count is compared with: pieces and counts by item, bars by item. */

import { newNotes, readYard } from '@tautline/shelter';
import { type Materials, materialsExact, stockOnHand, takeoff } from '@tautline/takeoff';
import { loadHighs } from '@tautline/takeoff/highs';
import { fromText } from './loaded.ts';

export const FOOT = 0.3048;

export interface Counted {
  /** Pieces of an item, each `count x length` with lengths in m to the millimetre, longest first. */
  readonly pieces: (item: string) => readonly string[];
  /** Count of an item, or of a thing with this title. */
  readonly count: (item: string) => number | undefined;
  /** Bars, rolls and straps to buy, and taken from stock on hand. */
  readonly bars: (item: string) => { readonly bought: number; readonly onHand: number };
  readonly materials: Materials;
  /** Ids of all lines, so that nothing is counted that the hand count does not know. */
  readonly items: readonly string[];
}

export async function counted(text: string): Promise<Counted> {
  const { shelter, loaded } = await fromText(text);
  const { lines } = takeoff(shelter);
  const solver = await loadHighs();
  const materials = await materialsExact(
    shelter,
    async () => solver,
    stockOnHand(readYard(loaded.world, newNotes())),
  );
  const named = (line: { readonly item?: { readonly id: string }; readonly title: string }): string =>
    line.item?.id ?? line.title;
  const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);
  return {
    materials,
    items: [...new Set(lines.map(named))].sort(),
    pieces: (item) => {
      const all = lines.filter((line) => named(line) === item).flatMap((line) => line.pieces ?? []);
      const lengths = new Map<string, number>();
      for (const { length, count } of [...all].sort((a, b) => b.length - a.length)) {
        const key = length.toFixed(3);
        lengths.set(key, (lengths.get(key) ?? 0) + count);
      }
      return [...lengths].map(([length, count]) => `${count} x ${length}`);
    },
    count: (item) => {
      const found = lines.filter((line) => named(line) === item && line.kind === 'count');
      return found.length === 0 ? undefined : sum(found.map((line) => line.total));
    },
    bars: (item) => {
      const bars = materials.cutList.filter((list) => list.item.id === item).flatMap(({ plan }) => plan.bars);
      return {
        bought: sum(bars.filter((bar) => !bar.onHand).map((bar) => bar.count)),
        onHand: sum(bars.filter((bar) => bar.onHand).map((bar) => bar.count)),
      };
    },
  };
}
