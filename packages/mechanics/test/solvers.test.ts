import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { minimumDegree } from '../src/minimum-degree.ts';
import { solve, solveBoth } from '../src/skyline.ts';
import { factorSparse, solveSparse, sparseSymmetric } from '../src/sparse-ldl.ts';
import { factor, multiply, place, skylineOf } from './matrices.ts';

/** A random symmetric pattern of `size` with a strong diagonal, some of it negative. */
const pattern = fc.record({
  size: fc.integer({ min: 2, max: 14 }),
  links: fc.array(fc.tuple(fc.nat(13), fc.nat(13), fc.double({ min: -1, max: 1, noNaN: true })), {
    maxLength: 30,
  }),
  signs: fc.array(fc.boolean(), { minLength: 14, maxLength: 14 }),
});

describe('solvers', () => {
  it('skyline and sparse factors solve what they factored and agree on the inertia (property)', () => {
    fc.assert(
      fc.property(pattern, ({ size, links, signs }) => {
        const dense = Array.from({ length: size }, (_, i) =>
          Array.from({ length: size }, (_, j): number => (i === j ? (signs[i] ? 20 : -20) : 0)),
        );
        for (const [p, q, v] of links) {
          const [i, j] = [p % size, q % size];
          if (i === j) continue;
          dense[i]![j]! = v;
          dense[j]![i]! = v;
        }
        const wanted = Float64Array.from({ length: size }, (_, k) => Math.sin(k + 1));
        const right = Float64Array.from(
          dense.map((row) => row.reduce((sum, v, k) => sum + v * wanted[k]!, 0)),
        );
        const sky = skylineOf(dense);
        const again = multiply(sky, wanted);
        const a = factor(sky);
        const x = right.slice();
        solve(sky, x);
        // Both at once, each as if it were alone: to the last bit.
        const [one, two] = [right.slice(), wanted.slice()];
        solveBoth(sky, one, two);
        const alone = wanted.slice();
        solve(sky, alone);
        expect([one, two]).toEqual([x, alone]);
        const columns = dense.map((_, j) =>
          dense.flatMap((row, i) => (i <= j && (row[j] !== 0 || i === j) ? [i] : [])),
        );
        const sparse = sparseSymmetric(columns);
        for (const [j, column] of columns.entries())
          for (const [k, i] of column.entries()) sparse.values[sparse.starts[j]! + k] = dense[i]![j]!;
        const b = factorSparse(sparse);
        const y = right.slice();
        solveSparse(sparse, y);
        return (
          a.negative === signs.slice(0, size).filter((s) => !s).length &&
          a.negative === b.negative &&
          [...wanted.keys()].every(
            (k) =>
              Math.abs(x[k]! - wanted[k]!) < 1e-10 &&
              Math.abs(y[k]! - wanted[k]!) < 1e-10 &&
              Math.abs(again[k]! - right[k]!) < 1e-12,
          )
        );
      }),
    );
  });

  it('a vanished pivot is found, not divided by', () => {
    const sky = skylineOf([
      [1, -1, 0],
      [-1, 1, 0],
      [0, 0, 2],
    ]);
    expect(factor(sky)).toEqual({ negative: 0, vanished: 1 });
    expect(place(sky, 0, 1)).toBe(place(sky, 1, 0));
  });

  it('minimum degree takes the leaves of a star first and every node once', () => {
    const order = minimumDegree([[1, 2, 3, 4], [0], [0], [0], [0]]);
    expect([...order].sort()).toEqual([0, 1, 2, 3, 4]);
    expect(order.indexOf(0)).toBeGreaterThan(2);
  });
});
