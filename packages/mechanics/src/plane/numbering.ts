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
  const taken = new Uint8Array(neighbours.length);
  for (let first = 0; first < neighbours.length; first++) {
    if (taken[first] === 1) continue;
    const start = farEnd(first, neighbours);
    taken[start] = 1;
    for (let at = order.push(start) - 1; at < order.length; at++) {
      const next = untaken(neighbours[order[at]!]!, taken, []);
      next.sort((a, b) => neighbours[a]!.length - neighbours[b]!.length || a - b);
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
    const seen = new Uint8Array(neighbours.length);
    seen[end] = 1;
    for (;;) {
      const next: number[] = [];
      for (const node of level) untaken(neighbours[node]!, seen, next);
      if (next.length === 0) break;
      level = next;
      deep += 1;
    }
    if (deep <= depth) return end;
    depth = deep;
    end = level.reduce((best, node) => (neighbours[node]!.length < neighbours[best]!.length ? node : best));
  }
}

/** Takes those of some nodes that are not taken yet, and puts them behind the others. */
function untaken(nodes: readonly number[], taken: Uint8Array, into: number[]): number[] {
  for (const node of nodes) {
    if (taken[node] === 1) continue;
    taken[node] = 1;
    into.push(node);
  }
  return into;
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
