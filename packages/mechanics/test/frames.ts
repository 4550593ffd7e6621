import { type PlaneModel, pinnedBow } from '../src/index.ts';

/** Pipe of EI = 300 N·m2 sprung between pinned feet 4 m apart, 6 m long. */
export function sprungBow(elements = 16): PlaneModel {
  const bow = pinnedBow({ span: 4, length: 6, points: elements + 1 });
  if (!bow.ok) throw new Error(bow.reason);
  return {
    nodes: bow.line.map(({ x, y, angle }) => ({ x, y, angle })),
    elements: Array.from({ length: elements }, (_, i) => ({
      i,
      j: i + 1,
      EA: 1e6,
      EI: 300,
      restLength: 6 / elements,
      restCurvature: 0,
    })),
    supports: pinned(0, elements),
  };
}

export const pinned = (...nodes: number[]): PlaneModel['supports'] =>
  nodes.flatMap((node) => [
    { node, dof: 'x', kind: 'fixed' } as const,
    { node, dof: 'y', kind: 'fixed' } as const,
  ]);

/** Level beam along x, pinned and on a roller. */
export function level(length: number, elements: number, EI: number): PlaneModel {
  return {
    nodes: Array.from({ length: elements + 1 }, (_, k) => ({ x: (k * length) / elements, y: 0 })),
    elements: Array.from({ length: elements }, (_, i) => ({ i, j: i + 1, EA: 1e8, EI })),
    supports: [...pinned(0), { node: elements, dof: 'y', kind: 'fixed' }],
  };
}
