import type { PlaneModel } from './model.ts';

/**
 * Order in which the nodes of a plane frame get their unknowns: as they are drawn, or by reverse Cuthill-McKee where
 * that stores less. Along an arch nothing beats the order of drawing; a tie across joins its far ends and would
 * fill every column between them.
 * Source: Cuthill and McKee (1969), reversed after George (1971), from memory.
 */
export function nodeOrder({ nodes, elements }: PlaneModel): readonly number[] {
  const drawn = nodes.map((_, node) => node);
  if (elements.every(({ i, j }) => Math.abs(i - j) === 1)) return drawn;
  const neighbours: number[][] = nodes.map(() => []);
  for (const { i, j } of elements) {
    neighbours[i]!.push(j);
    neighbours[j]!.push(i);
  }
  const narrow = cuthillMcKee(neighbours).reverse();
  return envelope(narrow, neighbours) < envelope(drawn, neighbours) ? narrow : drawn;
}

/** Level by level from an end of the frame, nodes with fewer neighbours first; ties go to the lower number. */
function cuthillMcKee(neighbours: readonly (readonly number[])[]): number[] {
  const order: number[] = [];
  const taken = new Set<number>();
  for (let first = 0; first < neighbours.length; first++) {
    if (taken.has(first)) continue;
    const start = farEnd(first, neighbours);
    taken.add(start);
    for (let at = order.push(start) - 1; at < order.length; at++) {
      const next = [...new Set(neighbours[order[at]!]!)].filter((node) => !taken.has(node));
      next.sort((a, b) => neighbours[a]!.length - neighbours[b]!.length || a - b);
      for (const node of next) taken.add(node);
      order.push(...next);
    }
  }
  return order;
}

/** A node as far as any from where the search began, sought a few times over: an end of the frame or near it. */
function farEnd(from: number, neighbours: readonly (readonly number[])[]): number {
  let [end, depth] = [from, -1];
  for (;;) {
    let level = [end];
    let deep = 0;
    const seen = new Set(level);
    for (;;) {
      const next = new Set(level.flatMap((node) => neighbours[node]!).filter((node) => !seen.has(node)));
      if (next.size === 0) break;
      for (const node of next) seen.add(node);
      level = [...next];
      deep += 1;
    }
    if (deep <= depth) return end;
    depth = deep;
    end = level.reduce((best, node) => (neighbours[node]!.length < neighbours[best]!.length ? node : best));
  }
}

/** Work of a factorisation in this order, in the measure of nodes: the square of each column's height. */
function envelope(order: readonly number[], neighbours: readonly (readonly number[])[]): number {
  const place = new Int32Array(order.length);
  for (const [at, node] of order.entries()) place[node] = at;
  let sum = 0;
  for (const [node, list] of neighbours.entries()) {
    const at = place[node]!;
    const top = list.reduce((least, other) => Math.min(least, place[other]!), at);
    sum += (at - top) ** 2;
  }
  return sum;
}
