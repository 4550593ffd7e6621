import { type CutPlan, cutStock, cutStockQuick } from '@tautline/takeoff';
import { loadHighs } from '@tautline/takeoff/highs';
import { describe, expect, it } from 'vitest';

const load = () => loadHighs();
const bars = (plan: CutPlan): number => plan.bars.reduce((sum, bar) => sum + bar.count, 0);

/** Falkenauer's uniform bin-packing instances, OR-Library file binpack1: bins of 150, 120 items. */
const uniform = {
  u120_00:
    '42 69 67 57 93 90 38 36 45 42 33 79 27 57 44 84 86 92 46 38 85 33 82 73 49 70 59 23 57 72 74 69 33 42 28 46 30 64 29 74 41 49 55 98 80 32 25 38 82 30 35 39 57 84 62 50 55 27 30 36 20 78 47 26 45 41 58 98 91 96 73 84 37 93 91 43 73 85 81 79 71 80 76 83 41 78 70 23 42 87 43 84 60 55 49 78 73 62 36 44 94 69 32 96 70 84 58 78 25 80 58 66 83 24 98 60 42 43 43 39',
  u120_01:
    '97 57 81 62 75 81 23 43 50 38 60 58 70 88 36 90 37 45 45 39 44 53 70 24 82 81 47 97 35 65 74 68 49 55 52 94 95 29 99 20 22 25 49 46 98 59 98 60 23 72 33 98 80 95 78 57 67 53 47 53 36 38 92 30 80 32 97 39 80 72 55 41 60 67 53 65 95 20 66 78 98 47 100 85 53 53 67 27 22 61 43 52 76 64 61 29 30 46 79 66 27 79 98 90 22 75 57 67 36 70 99 48 43 45 71 100 88 48 27 39',
  u120_08:
    '100 22 25 51 95 58 97 30 79 23 53 80 20 65 64 21 26 100 81 98 70 85 92 97 86 71 91 29 63 34 67 23 33 89 94 47 100 37 40 58 73 39 49 79 54 57 98 69 67 49 38 34 96 27 92 82 69 45 69 20 75 97 51 70 29 91 98 77 48 45 43 61 36 82 89 94 26 35 58 58 57 46 44 91 49 52 65 42 33 60 37 57 91 52 95 84 72 75 89 81 67 74 87 60 32 76 85 59 62 39 64 52 88 45 29 88 85 54 40 57',
};

function binPacking(sizes: string) {
  return {
    demand: sizes.split(' ').map((size) => ({ length: Number(size), count: 1 })),
    stock: [{ length: 150 }],
    kerf: 0,
  };
}

describe('published one-dimensional cutting problems', () => {
  it('paper rolls of 5600 mm, 13 widths: 73 rolls, 0.401 % waste (encyclopaedia article "Cutting stock problem")', async () => {
    const widths = [1380, 1520, 1560, 1710, 1820, 1880, 1930, 2000, 2050, 2100, 2140, 2150, 2200];
    const counts = [22, 25, 12, 14, 18, 18, 20, 10, 12, 14, 16, 18, 20];
    const request = {
      demand: widths.map((width, index) => ({ length: width / 1000, count: counts[index] ?? 0 })),
      stock: [{ length: 5.6 }],
      kerf: 0,
    };
    const plan = await cutStock(request, load);
    expect(bars(plan)).toBe(73);
    expect(plan.optimal).toBe(true);
    expect(plan.waste).toBeCloseTo(0.00401, 5);
    expect(bars(cutStockQuick(request))).toBeGreaterThan(73);
  });

  it('rolls of 100 in, widths 45, 36, 31, 14: 453 rolls (Chvátal, Linear Programming, 1983, ch. 13; from memory)', async () => {
    const demand = [
      { length: 45, count: 97 },
      { length: 36, count: 610 },
      { length: 31, count: 395 },
      { length: 14, count: 211 },
    ];
    const plan = await cutStock({ demand, stock: [{ length: 100 }], kerf: 0 }, load);
    expect(bars(plan)).toBe(453);
    expect(plan).toMatchObject({ optimal: true, total: 45300, bound: 45300 });
  });

  it.each([
    ['u120_00', 48, 'OR-Library binpack1'],
    ['u120_01', 49, 'OR-Library binpack1'],
    [
      'u120_08',
      50,
      'Gent, Heuristic solution of open bin packing problems, 1998; from memory; binpack1 prints 51',
    ],
  ] as const)('%s: %d bins (%s)', async (name, best, _source) => {
    const plan = await cutStock(binPacking(uniform[name]), load);
    expect(bars(plan)).toBe(best);
    expect(plan.optimal).toBe(true);
  });
});
