import { type Skyline, skyline } from '../src/skyline.ts';

export { place } from '../src/plane/system.ts';
export { factor, multiply } from '../src/skyline.ts';

/** A dense symmetric matrix in skyline storage. */
export function skylineOf(dense: readonly (readonly number[])[]): Skyline {
  const top = Int32Array.from(dense.keys(), (j) => {
    const first = dense.findIndex((row) => row[j] !== 0);
    return first < 0 ? j : Math.min(first, j);
  });
  const matrix = skyline(top);
  for (let j = 0; j < dense.length; j++)
    for (let i = top[j]!; i <= j; i++) matrix.values[matrix.diagonal[j]! - (j - i)] = dense[i]![j]!;
  return matrix;
}
