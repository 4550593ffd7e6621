/** Uprights and rails in the two end frames: they stand under the end frame and take the wind on the end wall. */
import type { EndFrames } from '@tautline/shelter';
import { arcNear } from '../system/arc-near.ts';
import type { HouseSystem } from './house.ts';
import type { HouseBuilder } from './house-builder.ts';
import { addPost } from './posts-and-rails.ts';
import { sliceNodeAt } from './runners.ts';

/** A rail further than this from anything hangs in the air, m: own choice. */
const reach = 0.15;

/** Arc lengths on a frame at which uprights and the ends of rails are fixed. */
export function endWallArcs(
  { uprights, rail }: EndFrames,
  line: Parameters<typeof arcNear>[0],
  springing: number,
): number[] {
  const ends =
    rail === undefined || rail.height <= springing ? [] : [rail.from, rail.to].map((x) => [x, rail.height]);
  return [...uprights.map(({ x, height }) => [x, height]), ...ends].map(([x, y]) => arcNear(line, x!, y!));
}

/** Heights on a side post at which a rail of the end frames is fixed. */
export function endWallHeights({ rail }: EndFrames): number[] {
  return rail === undefined ? [] : [rail.height];
}

export function addEndWalls(builder: HouseBuilder): void {
  const { endFrames, roof } = builder.shelter;
  if (endFrames === undefined || endFrames.uprights.length === 0) return;
  const { member, foot, id, rail } = endFrames;
  const last = builder.frames.length - 1;
  for (const [side, frame] of [builder.frames[0]!, builder.frames[last]!].entries()) {
    const knots: { x: number; node: number }[] = [];
    endFrames.uprights.forEach(({ x, height }, k) => {
      const head = frame.nodes[sliceNodeAt(builder, arcNear(roof.line, x, height))]!;
      const post = addPost(builder, { id, member, foot }, head, {
        role: 'upright',
        piece: side * endFrames.uprights.length + k,
        share: 1,
        heights: endWallHeights(endFrames),
        top: undefined,
        loose: true,
        deep: 'along',
      });
      builder.uprights.push({ end: side === 0 ? 'front' : 'back', x: builder.at(head)[0], ...post });
      if (rail === undefined) return;
      const at = builder.elements[post.elements.find((e) => builder.meanings[e]!.to >= rail.height) ?? -1];
      if (at !== undefined) knots.push({ x, node: at.j });
    });
    if (rail !== undefined) addRail(builder, rail, frame.z, knots, id, side);
  }
  builder.notes.add('Doors in the ends hold nothing; uprights turn freely at the frame they are fixed to.');
}

function addRail(
  builder: HouseBuilder,
  rail: NonNullable<EndFrames['rail']>,
  z: number,
  knots: readonly { x: number; node: number }[],
  part: string,
  piece: number,
): void {
  const ends = [rail.from, rail.to].flatMap((x) => {
    const node = nearest(builder, x, rail.height, z);
    return node === undefined ? [] : [{ x, node }];
  });
  const row = [...ends, ...knots].sort((a, b) => a.x - b.x);
  const distinct = row.filter(({ node }, k) => k === 0 || node !== row[k - 1]!.node);
  if (ends.length < 2)
    builder.notes.add('A rail of the end frames meets nothing at its ends and hangs between the uprights.');
  for (let k = 0; k + 1 < distinct.length; k++) {
    const [a, b] = [distinct[k]!, distinct[k + 1]!];
    const free = { y: 0, z: 0 };
    builder.beam(
      a.node,
      b.node,
      rail.member,
      { part: `${part}/rail`, role: 'end-rail', piece, from: a.x, to: b.x },
      {
        towards: [0, 0, 1],
        ...(k === 0 && ends.length === 2 ? { springI: free } : {}),
        ...(k + 2 === distinct.length && ends.length === 2 ? { springJ: free } : {}),
      },
    );
  }
}

function nearest(builder: HouseBuilder, x: number, y: number, z: number): number | undefined {
  let best: { node: number; off: number } | undefined;
  builder.nodes.forEach((at, node) => {
    if (at.part === 'link') return;
    const off = Math.hypot(at.x - x, at.y - y, at.z - z);
    if (off <= reach && (best === undefined || off < best.off)) best = { node, off };
  });
  return best?.node;
}

/** Bands into which the height of an end wall is cut to share its wind out. */
const bands = 120;

/**
 * The area of the windward end wall that each element takes, m2: at every height half the way to its neighbours, for
 * the uprights, the end frame's own sides and the corner posts below it.
 */
export function endWallShares(house: HouseSystem): Map<number, number> {
  const { slice } = house;
  const frame = house.frames[0]!;
  const uprights = house.uprights.filter(({ end }) => end === 'front');
  const at = (n: number): { x: number; y: number } => slice.nodes[n]!;
  const roof = slice.roof.map((k) => {
    const { i, j } = slice.model.elements[k]!;
    return { element: frame.elements[k]!, a: at(i), b: at(j) };
  });
  const [first, last] = [roof[0]!, roof[roof.length - 1]!];
  const crown = Math.max(...roof.flatMap(({ a, b }) => [a.y, b.y]));
  const crossing = (y: number, from: readonly (typeof first)[]) =>
    from.find(({ a, b }) => Math.min(a.y, b.y) <= y && y <= Math.max(a.y, b.y));
  const xOn = ({ a, b }: typeof first, y: number): number =>
    a.y === b.y ? a.x : a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x);
  const postAt = (side: 'left' | 'right', y: number): number | undefined => {
    const post = house.posts.find((one) => one.side === side && Math.abs(one.z - frame.z) < 1e-6);
    return post?.elements.find((e) => house.elements[e]!.from <= y && y <= house.elements[e]!.to);
  };
  const shares = new Map<number, number>();
  for (let k = 0; k < bands; k++) {
    const y = (crown * (k + 0.5)) / bands;
    const left = crossing(y, roof);
    const right = crossing(y, [...roof].reverse());
    const takers = [
      {
        x: left === undefined ? first.a.x : xOn(left, y),
        element: left?.element ?? postAt('left', y) ?? first.element,
      },
      ...uprights.flatMap(({ x, elements }) => {
        const element = elements.find((e) => house.elements[e]!.from <= y && y <= house.elements[e]!.to);
        return element === undefined ? [] : [{ x, element }];
      }),
      {
        x: right === undefined ? last.b.x : xOn(right, y),
        element: right?.element ?? postAt('right', y) ?? last.element,
      },
    ].sort((a, b) => a.x - b.x);
    for (let n = 0; n + 1 < takers.length; n++) {
      const half = ((takers[n + 1]!.x - takers[n]!.x) / 2) * (crown / bands);
      for (const { element } of [takers[n]!, takers[n + 1]!])
        shares.set(element, (shares.get(element) ?? 0) + half);
    }
  }
  return shares;
}
