/**
 * Elimination order of a graph's nodes by minimum degree: always take the node with the fewest neighbours left,
 * and join its neighbours. On frames this decides the cost of everything after it. Ties go to the lower number.
 */
export function minimumDegree(neighbours: readonly (readonly number[])[]): Int32Array {
  const n = neighbours.length;
  const left = neighbours.map((list, node) => new Set(list.filter((other) => other !== node)));
  const byDegree: Set<number>[] = [];
  const put = (node: number) => {
    const degree = left[node]!.size;
    while (byDegree.length <= degree) byDegree.push(new Set());
    byDegree[degree]!.add(node);
  };
  for (let node = 0; node < n; node++) put(node);
  const order = new Int32Array(n);
  for (let k = 0, degree = 0; k < n; k++) {
    while (byDegree[degree]!.size === 0) degree++;
    const node = byDegree[degree]!.values().next().value as number;
    byDegree[degree]!.delete(node);
    order[k] = node;
    const ring = [...left[node]!];
    for (const a of ring) {
      byDegree[left[a]!.size]!.delete(a);
      left[a]!.delete(node);
    }
    for (let p = 0; p < ring.length; p++)
      for (let q = p + 1; q < ring.length; q++) {
        left[ring[p]!]!.add(ring[q]!);
        left[ring[q]!]!.add(ring[p]!);
      }
    for (const a of ring) {
      put(a);
      degree = Math.min(degree, left[a]!.size);
    }
    left[node]!.clear();
  }
  return order;
}
