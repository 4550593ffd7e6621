import {
  type BuiltState,
  crownPocket,
  type FilmPanel,
  gravity,
  pocketDepth,
  pullAt,
  rainTemperature,
} from '@tautline/structure';
import { type Point, point } from '../scene/shapes.ts';

export interface Pond {
  /** Level of the water and film below it half way between two frames, m. */
  readonly outline: readonly Point[];
  /** Mean along the house, kg/m. */
  readonly massPerLength: number;
}

/**
 * The first pocket in the film over a frame that has not given yet, with its water (N on a frame); undefined when
 * none stands.
 */
export function pondOf(film: FilmPanel, { system, result }: BuiltState, water: number): Pond | undefined {
  const elements = system.roof.map((index) => system.model.elements[index]);
  const nodes = [elements[0]?.i, ...elements.map((element) => element?.j)];
  const line = nodes.flatMap((node) => {
    const place = node === undefined ? undefined : system.nodes[node];
    const moved = node === undefined ? undefined : result.displacements[node];
    return place && moved ? [point(place.x + moved.dx, place.y + moved.dy)] : [];
  });
  const sag = pocketDepth(film, pullAt(film, rainTemperature));
  const pocket = crownPocket(line, sag, system.tributary);
  const wet = line.flatMap((at, index) => {
    const mean = pocket.depths[index] ?? 0;
    return mean > 0 ? [{ at, mean, index }] : [];
  });
  const deepest = wet.reduce((best, one) => (one.mean > best.mean ? one : best), {
    at: point(0, 0),
    mean: 0,
    index: 0,
  });
  // The volume was counted from the dry neighbour on one side to that on the other.
  const rim = [line[(wet[0]?.index ?? 0) - 1], line[(wet.at(-1)?.index ?? line.length) + 1]];
  if (pocket.volume <= 0 || deepest.mean === 0 || !rim[0] || !rim[1]) return undefined;
  // In the middle of the pocket the film lies `sag` below the frames.
  const level = deepest.at.y - sag + pocket.depth;
  const bottom = wet.map(({ at, mean }) => {
    const onFrame = Math.max(0, level - at.y);
    // The mean of a parabola is two thirds of its middle.
    return point(at.x, level - (onFrame + 1.5 * (mean - onFrame)));
  });
  return {
    outline: [point(rim[0].x, level), ...bottom, point(rim[1].x, level)],
    massPerLength: water / gravity / system.tributary,
  };
}
