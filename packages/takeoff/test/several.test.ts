import { describe, expect, it } from 'vitest';
import { loadHighs } from '../src/highs-door.ts';
import {
  groundOf,
  leftOnHand,
  type MaterialOptions,
  materialsExact,
  materialsExactOf,
  stockOnHand,
  takeoff,
  takeoffOfSeveral,
} from '../src/index.ts';
import { bows, cover, foot, origin, rebar, shelter } from './fixture.ts';

let solver: ReturnType<typeof loadHighs> | undefined;
const load = () => {
  solver ??= loadHighs();
  return solver;
};
const together = (all: readonly (typeof stubbed)[], options: MaterialOptions = {}) =>
  materialsExactOf(
    takeoffOfSeveral(all.map((one) => ({ name: one.name, takeoff: takeoff(one) }))),
    all.reduce((sum, one) => sum + groundOf(one), 0),
    load,
    options,
  );
const stubbed = shelter({ roof: bows({ foot: foot('stub', 0.6, { stub: rebar, length: 1.1 }) }) });
const costOf = (materials: { lines: readonly { item?: { id: string }; cost?: number }[] }, id: string) =>
  materials.lines.find((line) => line.item?.id === id)?.cost;

describe('several shelters bought together', () => {
  it('are cut from the same bars', async () => {
    // 22 stubs of 1.1 m, 5 to a bar of 6 m: 5 bars, the last with two stubs. Twice 22 are 44: 9 bars, not 10.
    const one = await materialsExact(stubbed, load);
    const two = await together([stubbed, { ...stubbed, name: 'other' }]);
    expect([costOf(one, 'rebar'), costOf(two, 'rebar')]).toEqual([5 * 6, 9 * 6]);
    expect(two.cost.protectedArea).toBe(2 * one.cost.protectedArea);
  });

  it('name the shelter of each part, and give the same as one where there is one', async () => {
    const one = await materialsExact(stubbed, load);
    const same = await together([stubbed]);
    expect(same.cost).toEqual(one.cost);
    expect(same.cutList).toEqual(one.cutList);
    const parts = same.lines.flatMap((line) => line.parts.map(({ id }) => id));
    expect(parts.every((id) => id.startsWith(`${stubbed.name}/`))).toBe(true);
  });
});

describe('what is left on hand', () => {
  const have = stockOnHand([
    { item: 'rebar', count: 7, length: 6, origin },
    { item: 'rebar', count: 2, origin },
    { item: 'hinge', count: 4, origin },
  ]);

  it('is what nothing was cut from, ends worth keeping, and pieces nobody needs', async () => {
    const materials = await together([stubbed], have);
    expect(costOf(materials, 'rebar')).toBe(0);
    const left = leftOnHand(materials, have);
    const rod = left.find(({ item }) => item === 'rebar');
    expect(rod?.untouched).toEqual([{ length: 6, count: 2 }]);
    // Two stubs out of the last bar: 6 - 2 (1.1 + 0.003) m.
    expect(rod?.offcuts[0]?.length).toBeCloseTo(3.794, 9);
    // Rods without a length cannot be cut from.
    expect([rod?.pieces, rod?.unsaidLength]).toEqual([0, 2]);
    expect(left.find(({ item }) => item === 'hinge')).toMatchObject({ pieces: 4, untouched: [] });
  });

  it('is not given to rolls of two widths at once', async () => {
    const sides = cover({ place: 'sides', rollWidth: 2 });
    const house = shelter({ covers: [cover(), sides] });
    const films = stockOnHand([{ item: 'film', count: 1, length: 20, origin }]);
    const { lines } = await together([house], films);
    const taken = lines.filter((line) => line.item?.id === 'film').flatMap((line) => line.cuts?.bars ?? []);
    expect(lines.filter((line) => line.item?.id === 'film').length).toBe(2);
    expect(taken.filter((bar) => bar.onHand).reduce((sum, bar) => sum + bar.count, 0)).toBe(1);
  });
});
