/**
 * Time to factor and to solve the stiffness of a row of braced frames in space, beside SciPy's SuperLU (`splu`) and
 * CHOLMOD (scikit-sparse), where Python has them: ratios are printed, nothing passes or fails.
 */
import { spawnSync } from 'node:child_process';
import { performance } from 'node:perf_hooks';
import { minimumDegree } from '../src/minimum-degree.ts';
import { factorSparse, solveSparse, sparseSymmetric } from '../src/sparse-ldl.ts';

/** A symmetric positive definite matrix by blocks of six: arches side by side, tied along, as a house is. */
function house(frames: number, pieces: number): { columns: number[][]; values: number[][] } {
  const nodes = frames * (pieces + 1);
  const around: number[][] = Array.from({ length: nodes }, () => []);
  const tie = (a: number, b: number): void => {
    around[a]!.push(b);
    around[b]!.push(a);
  };
  for (let f = 0; f < frames; f++)
    for (let p = 0; p <= pieces; p++) {
      const node = f * (pieces + 1) + p;
      if (p < pieces) tie(node, node + 1);
      // Purlins and a ridge tie every fourth node to the next frame.
      if (f + 1 < frames && p % 4 === 0) tie(node, node + pieces + 1);
    }
  const order = minimumDegree(around);
  const place = new Int32Array(nodes);
  order.forEach((node, k) => {
    place[node] = k;
  });
  const columns: number[][] = [];
  const values: number[][] = [];
  for (const node of order)
    for (let d = 0; d < 6; d++) {
      const q = 6 * place[node]! + d;
      const rows = new Map<number, number>([[q, 6.5 + around[node]!.length * 6]]);
      for (let e = 0; e < d; e++) rows.set(6 * place[node]! + e, 0.3);
      for (const other of around[node]!)
        for (let e = 0; e < 6; e++) {
          const row = 6 * place[other]! + e;
          if (row < q) rows.set(row, e === d ? -1 : -0.2);
        }
      const list = [...rows].sort(([a], [b]) => a - b);
      columns.push(list.map(([row]) => row));
      values.push(list.map(([, value]) => value));
    }
  return { columns, values };
}

function median(list: readonly number[]): number {
  return [...list].sort((a, b) => a - b)[list.length >> 1]!;
}

function timed(work: () => void, times = 9): number {
  const took = Array.from({ length: times }, () => {
    const began = performance.now();
    work();
    return performance.now() - began;
  });
  return median(took);
}

/** The same matrix and right-hand side by Python's solvers; a line for each peer, or why there is none. */
const peers = `
import json, sys, time
import numpy as np
data = json.load(sys.stdin)
try:
    import scipy.sparse as sp
    from scipy.sparse.linalg import splu
except ImportError:
    print(json.dumps({"missing": "SciPy"})); sys.exit()
n = len(data["columns"])
rows = np.concatenate([np.array(c) for c in data["columns"]])
cols = np.repeat(np.arange(n), [len(c) for c in data["columns"]])
vals = np.concatenate([np.array(v) for v in data["values"]])
U = sp.coo_matrix((vals, (rows, cols)), shape=(n, n))
A = (U + sp.triu(U, 1).T).tocsc()
b = np.ones(n)
def timed(work):
    took = []
    for _ in range(9):
        began = time.perf_counter(); out = work(); took.append(1000 * (time.perf_counter() - began))
    return sorted(took)[4], out
out = {}
factor, lu = timed(lambda: splu(A, permc_spec="MMD_AT_PLUS_A", diag_pivot_thresh=0.0, options={"SymmetricMode": True}))
solve, x = timed(lambda: lu.solve(b))
out["SciPy splu"] = {"factor": factor, "solve": solve, "sum": float(x.sum()), "entries": int(lu.L.nnz)}
try:
    from sksparse.cholmod import analyze
    symbolic = analyze(A)
    factor, chol = timed(lambda: symbolic.cholesky(A))
    solve, x = timed(lambda: chol(b))
    out["CHOLMOD"] = {"factor": factor, "solve": solve, "sum": float(x.sum()), "entries": int(chol.L().nnz)}
except ImportError:
    pass
print(json.dumps(out))
`;

interface Peer {
  readonly factor: number;
  readonly solve: number;
  readonly sum: number;
  readonly entries: number;
}

for (const [frames, pieces] of [
  [10, 16],
  [30, 24],
] as const) {
  const { columns, values } = house(frames, pieces);
  const matrix = sparseSymmetric(columns);
  matrix.values.set(values.flat());
  const factor = timed(() => {
    factorSparse(matrix);
  });
  let sum = 0;
  const solve = timed(() => {
    const b = new Float64Array(matrix.size).fill(1);
    solveSparse(matrix, b);
    sum = b.reduce((all, value) => all + value, 0);
  });
  console.log(
    `sparse LDLᵀ, ${matrix.size} unknowns: factor ${factor.toFixed(2)} ms, solve ${solve.toFixed(2)} ms, ${matrix.entries} entries below the diagonal`,
  );
  const asked = spawnSync('python3', ['-c', peers], {
    input: JSON.stringify({ columns, values }),
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  if (asked.status !== 0) {
    console.log('  No peer: Python with NumPy and SciPy is not installed here.');
    continue;
  }
  const told = JSON.parse(asked.stdout) as Readonly<Record<string, Peer>> & { readonly missing?: string };
  if (told.missing !== undefined) console.log(`  No peer: ${told.missing} is not installed here.`);
  for (const name of ['SciPy splu', 'CHOLMOD']) {
    const peer = told[name];
    if (peer === undefined) {
      if (told.missing === undefined) console.log(`  ${name} is not installed here.`);
      continue;
    }
    const off = Math.abs(peer.sum - sum) / Math.abs(sum);
    console.log(
      `  ${name}: factor ${peer.factor.toFixed(2)} ms (ours takes ${(factor / peer.factor).toFixed(2)} times that), ` +
        `solve ${peer.solve.toFixed(2)} ms (${(solve / peer.solve).toFixed(2)} times), ${peer.entries} entries, sums differ by ${off.toExponential(1)}`,
    );
  }
}
