import { roofLineNodes } from './frame-ponding.ts';
import type { BuiltState, Response } from './response.ts';

/** Height of the bent roof line over the ground at x, m; undefined where the roof does not reach. */
export function roofHeightAt(state: BuiltState, response: Response, x: number): number | undefined {
  const { system } = state;
  const line = roofLineNodes(state).map((node) => {
    const built = state.result.displacements[node]!;
    const moved = response.displacements[node]!;
    return {
      x: system.nodes[node]!.x + built.dx + moved.dx,
      y: system.nodes[node]!.y + built.dy + moved.dy,
    };
  });
  let height: number | undefined;
  for (let k = 1; k < line.length; k++) {
    const a = line[k - 1]!;
    const b = line[k]!;
    const low = Math.min(a.x, b.x);
    const high = Math.max(a.x, b.x);
    if (x < low || x > high || high - low < 1e-12) continue;
    const y = a.y + ((x - a.x) / (b.x - a.x)) * (b.y - a.y);
    if (height === undefined || y < height) height = y;
  }
  return height;
}
