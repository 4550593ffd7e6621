/**
 * Symmetric matrix stored by columns from the first non-zero row to the diagonal ("skyline"),
 * factored in place as L·D·Lᵀ without pivoting, so that the signs of D count the negative
 * eigenvalues (Sylvester's law of inertia). Natural order: number the unknowns along the structure.
 */
export interface Skyline {
  readonly size: number;
  /** position of the diagonal of each column in `values` */
  readonly diagonal: Int32Array;
  /** first stored row of each column */
  readonly top: Int32Array;
  /** one more than is stored: what has no place in the matrix may be added to the last */
  readonly values: Float64Array;
  /** work arrays of the factorisation: original diagonal */
  readonly before: Float64Array;
}

/** Skyline for the given first rows (`top[j] <= j`). */
export function skyline(top: Int32Array): Skyline {
  const size = top.length;
  const diagonal = new Int32Array(size);
  let next = 0;
  for (let j = 0; j < size; j++) {
    next += j - top[j]! + 1;
    diagonal[j] = next - 1;
  }
  return {
    size,
    diagonal,
    top,
    values: new Float64Array(next + 1),
    before: new Float64Array(size),
  };
}

/** What the factorisation met on the diagonal. */
export interface Pivots {
  readonly negative: number;
  /** first column whose pivot vanished against its own diagonal: a mechanism there; -1 when none */
  readonly vanished: number;
}

/** A pivot this small against its own diagonal is a zero: rounding leaves 1e-16, soft frames 1e-7. */
const VANISHING = 3e-12;

/** Factors in place. A vanished pivot is replaced by its diagonal so that the solve stays finite. */
export function factor(matrix: Skyline): Pivots {
  const { size, diagonal, top, values, before } = matrix;
  let negative = 0;
  let vanished = -1;
  for (let j = 0; j < size; j++) {
    const first = top[j]!;
    const base = diagonal[j]! - j;
    let pivot = values[base + j]!;
    before[j] = pivot;
    let i = first + 1;
    // Two rows at a time: their sums run side by side, and only the last term of the second waits for the first.
    for (; i + 1 < j; i += 2) {
      const upper = diagonal[i]! - i;
      const lower = diagonal[i + 1]! - i - 1;
      let k = Math.max(top[i]!, first);
      let l = Math.max(top[i + 1]!, first);
      let sum = values[base + i]!;
      let next = values[base + i + 1]!;
      for (const end = Math.min(l, i); k < end; k++) sum -= values[upper + k]! * values[base + k]!;
      for (; l < k; l++) next -= values[lower + l]! * values[base + l]!;
      for (; k < i; k++) {
        const value = values[base + k]!;
        sum -= values[upper + k]! * value;
        next -= values[lower + k]! * value;
      }
      values[base + i] = sum;
      values[base + i + 1] = l <= i ? next - values[lower + i]! * sum : next;
    }
    if (i < j) {
      const upper = diagonal[i]! - i;
      let sum = values[base + i]!;
      for (let k = Math.max(top[i]!, first); k < i; k++) sum -= values[upper + k]! * values[base + k]!;
      values[base + i] = sum;
    }
    for (let i = first; i < j; i++) {
      const product = values[base + i]!;
      const ratio = product / values[diagonal[i]!]!;
      pivot -= product * ratio;
      values[base + i] = ratio;
    }
    const size0 = Math.abs(before[j]!);
    if (!(Math.abs(pivot) > VANISHING * size0)) {
      if (vanished < 0) vanished = j;
      pivot = size0 > 0 ? size0 : 1;
    }
    if (pivot < 0) negative++;
    values[base + j] = pivot;
  }
  return { negative, vanished };
}

/** Solves with a factored matrix; `b` is overwritten with the solution. */
export function solve(matrix: Skyline, b: Float64Array): void {
  const { size, diagonal, top, values } = matrix;
  for (let j = 0; j < size; j++) {
    const base = diagonal[j]! - j;
    let sum = b[j]!;
    for (let i = top[j]!; i < j; i++) sum -= values[base + i]! * b[i]!;
    b[j] = sum;
  }
  for (let j = 0; j < size; j++) b[j] = b[j]! / values[diagonal[j]!]!;
  for (let j = size - 1; j >= 0; j--) {
    const base = diagonal[j]! - j;
    const value = b[j]!;
    for (let i = top[j]!; i < j; i++) b[i] = b[i]! - values[base + i]! * value;
  }
}

/** The same for two right sides at once, which takes hardly longer than one. */
export function solveBoth(matrix: Skyline, a: Float64Array, b: Float64Array): void {
  const { size, diagonal, top, values } = matrix;
  for (let j = 0; j < size; j++) {
    const base = diagonal[j]! - j;
    let one = a[j]!;
    let two = b[j]!;
    for (let i = top[j]!; i < j; i++) {
      const entry = values[base + i]!;
      one -= entry * a[i]!;
      two -= entry * b[i]!;
    }
    a[j] = one;
    b[j] = two;
  }
  for (let j = 0; j < size; j++) {
    const pivot = values[diagonal[j]!]!;
    a[j] = a[j]! / pivot;
    b[j] = b[j]! / pivot;
  }
  for (let j = size - 1; j >= 0; j--) {
    const base = diagonal[j]! - j;
    const one = a[j]!;
    const two = b[j]!;
    for (let i = top[j]!; i < j; i++) {
      const entry = values[base + i]!;
      a[i] = a[i]! - entry * one;
      b[i] = b[i]! - entry * two;
    }
  }
}

/** matrix · v, for a matrix that is not factored yet. */
export function multiply(matrix: Skyline, v: Float64Array): Float64Array {
  const { size, diagonal, top, values } = matrix;
  const out = new Float64Array(size);
  for (let j = 0; j < size; j++) {
    const base = diagonal[j]! - j;
    let sum = values[base + j]! * v[j]!;
    for (let i = top[j]!; i < j; i++) {
      sum += values[base + i]! * v[i]!;
      out[i] = out[i]! + values[base + i]! * v[j]!;
    }
    out[j] = out[j]! + sum;
  }
  return out;
}
