/**
 * Sparse symmetric matrix, upper triangle by columns, factored as L·D·Lᵀ without pivoting, row by row
 * ("up-looking"): pattern once, numbers many times. Source: T. A. Davis, Direct Methods for Sparse Linear
 * Systems, ch. 4 (from memory). The unknowns must already be in elimination order.
 */
export interface SparseSymmetric {
  readonly size: number;
  /** start of each column in `rows` and `values`; rows ascend, the diagonal is last */
  readonly starts: Int32Array;
  readonly rows: Int32Array;
  readonly values: Float64Array;
  readonly parent: Int32Array;
  readonly lowerStarts: Int32Array;
  readonly lowerRows: Int32Array;
  readonly lower: Float64Array;
  readonly pivots: Float64Array;
  /** entries of L below the diagonal */
  readonly entries: number;
}

/** Lays out the matrix for the given rows of each column (upper triangle, diagonal included, ascending). */
export function sparseSymmetric(columns: readonly (readonly number[])[]): SparseSymmetric {
  const size = columns.length;
  const starts = new Int32Array(size + 1);
  for (let j = 0; j < size; j++) starts[j + 1] = starts[j]! + columns[j]!.length;
  const rows = new Int32Array(starts[size]!);
  for (let j = 0; j < size; j++) rows.set(columns[j]!, starts[j]!);
  const parent = new Int32Array(size).fill(-1);
  const flag = new Int32Array(size).fill(-1);
  const counts = new Int32Array(size);
  for (let j = 0; j < size; j++) {
    flag[j] = j;
    for (let p = starts[j]!; p < starts[j + 1]!; p++)
      for (let i = rows[p]!; flag[i] !== j; i = parent[i]!) {
        if (parent[i] === -1) parent[i] = j;
        counts[i]!++;
        flag[i] = j;
      }
  }
  const lowerStarts = new Int32Array(size + 1);
  for (let j = 0; j < size; j++) lowerStarts[j + 1] = lowerStarts[j]! + counts[j]!;
  const entries = lowerStarts[size]!;
  return {
    size,
    starts,
    rows,
    values: new Float64Array(starts[size]!),
    parent,
    lowerStarts,
    lowerRows: new Int32Array(entries),
    lower: new Float64Array(entries),
    pivots: new Float64Array(size),
    entries,
  };
}

const VANISHING = 3e-12;

/** Factors; the pivots' signs count negative eigenvalues. `vanished` is the first column without a pivot, or -1. */
export function factorSparse(matrix: SparseSymmetric): { negative: number; vanished: number } {
  const { size, starts, rows, values, parent, lowerStarts, lowerRows, lower, pivots } = matrix;
  const y = new Float64Array(size);
  const pattern = new Int32Array(size);
  const flag = new Int32Array(size).fill(-1);
  const filled = new Int32Array(size);
  let negative = 0;
  let vanished = -1;
  for (let k = 0; k < size; k++) {
    let top = size;
    flag[k] = k;
    for (let p = starts[k]!; p < starts[k + 1]!; p++) {
      let i = rows[p]!;
      y[i]! += values[p]!;
      let length = 0;
      for (; flag[i] !== k; i = parent[i]!) {
        pattern[length++] = i;
        flag[i] = k;
      }
      while (length > 0) pattern[--top] = pattern[--length]!;
    }
    const before = Math.abs(y[k]!);
    let pivot = y[k]!;
    y[k] = 0;
    for (; top < size; top++) {
      const i = pattern[top]!;
      const yi = y[i]!;
      y[i] = 0;
      const start = lowerStarts[i]!;
      const end = start + filled[i]!;
      for (let p = start; p < end; p++) y[lowerRows[p]!]! -= lower[p]! * yi;
      const ratio = yi / pivots[i]!;
      pivot -= ratio * yi;
      lowerRows[end] = k;
      lower[end] = ratio;
      filled[i]!++;
    }
    if (!(Math.abs(pivot) > VANISHING * before)) {
      if (vanished < 0) vanished = k;
      pivot = before > 0 ? before : 1;
    }
    if (pivot < 0) negative++;
    pivots[k] = pivot;
  }
  return { negative, vanished };
}

/** Solves with the factored matrix, in place. */
export function solveSparse(matrix: SparseSymmetric, b: Float64Array): void {
  const { size, lowerStarts, lowerRows, lower, pivots } = matrix;
  for (let j = 0; j < size; j++) {
    const bj = b[j]!;
    for (let p = lowerStarts[j]!; p < lowerStarts[j + 1]!; p++) b[lowerRows[p]!]! -= lower[p]! * bj;
  }
  for (let j = 0; j < size; j++) b[j] = b[j]! / pivots[j]!;
  for (let j = size - 1; j >= 0; j--) {
    let bj = b[j]!;
    for (let p = lowerStarts[j]!; p < lowerStarts[j + 1]!; p++) bj -= lower[p]! * b[lowerRows[p]!]!;
    b[j] = bj;
  }
}
