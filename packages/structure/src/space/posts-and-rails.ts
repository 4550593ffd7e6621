import type { Posts } from '@tautline/shelter';
import { barStiffness, fillingAlong, fillingWeight } from '../system/filling.ts';
import { reaches } from '../system/reaches.ts';
import { roofEnds } from './frames.ts';
import { type HouseBuilder, turning } from './house-builder.ts';

const divisions = 6;
const same = 1e-3;

/** Stations in order, each once. */
export function merged(...lists: readonly (readonly number[])[]): number[] {
  const all = lists.flat().sort((a, b) => a - b);
  return all.filter((z, k) => k === 0 || z - all[k - 1]! > same);
}

/** Side posts and the rail along their heads, on which the frames sit. */
export function addSides(builder: HouseBuilder, heights: readonly number[]): void {
  const { shelter } = builder;
  const posts = shelter.sidePosts;
  if (posts === undefined) return;
  roofEnds(builder).forEach((end, index) => {
    const side = index === 0 ? 'left' : 'right';
    const seats = new Map(builder.frames.map((frame) => [frame.z, frame.nodes[end]!]));
    const [x, y] = builder.at(seats.get(builder.frames[0]!.z)!);
    const stations = shelter.eaveRail === undefined ? [...seats.keys()] : posts.stations;
    const share = shelter.eaveRail === undefined ? Math.min(1, shelter.roof.spacing / posts.spacing) : 1;
    const headAt = (z: number): number => {
      for (const [at, node] of seats) if (Math.abs(at - z) <= same) return node;
      const node = builder.node([x, y, z], shelter.eaveRail?.id ?? posts.id, z);
      seats.set(z, node);
      return node;
    };
    const carried = reaches(stations);
    stations.forEach((z, piece) => {
      const elements = addPost(builder, posts, headAt(z), {
        role: 'post',
        piece: 2 * piece + index,
        share,
        heights,
        top: turning(shelter.eaveRail?.joint ?? posts.topJoint),
      });
      builder.posts.push({ side, z, reach: carried[piece]!, ...elements });
    });
    const rail = shelter.eaveRail;
    if (rail === undefined || rail.member.kind === 'cable') return;
    const along = merged([...seats.keys()]);
    for (let k = 0; k + 1 < along.length; k++)
      builder.beam(
        headAt(along[k]!),
        headAt(along[k + 1]!),
        rail.member,
        { part: rail.id, role: 'eave', piece: index, from: along[k]!, to: along[k + 1]! },
        { towards: [0, 1, 0] },
      );
  });
  if (shelter.eaveRail === undefined)
    builder.notes.add('No rail along the post heads was said: each frame stands on its share of a post.');
}

export interface PostTop {
  readonly role: 'post' | 'ridge-post' | 'upright';
  readonly piece: number;
  /** Share of a post that one stands for. */
  readonly share: number;
  /** Heights at which a brace is fixed, m. */
  readonly heights: readonly number[];
  /** How its head turns along the house against what lies on it; undefined is rigid. */
  readonly top: number | undefined;
  /** The head turns freely both ways. */
  readonly loose?: boolean;
  /** Which way the depth of its section lies; across the house unless said. */
  readonly deep?: 'along' | 'across';
}

/** A post from the ground up to a node that is there already. */
export function addPost(
  builder: HouseBuilder,
  posts: Pick<Posts, 'id' | 'member' | 'foot' | 'filled'>,
  head: number,
  how: PostTop,
): { elements: number[]; foot: number } {
  const [x, top, z] = builder.at(head);
  const even = Array.from({ length: divisions }, (_, k) => (top * k) / divisions);
  const braced = how.heights.filter((h) => h > 0.05 && h < top - 0.05);
  const kept = even.filter((h) => h === 0 || braced.every((b) => Math.abs(b - h) > top / (2 * divisions)));
  const levels = merged(kept, braced);
  const nodes = levels.map((y) => builder.node([x, y, z], posts.id, y));
  nodes.push(head);
  levels.push(top);
  const elements: number[] = [];
  for (let k = 0; k + 1 < nodes.length; k++) {
    const last = k + 2 === nodes.length;
    const turn = how.loose === true ? { y: 0, z: 0 } : { y: how.top, z: undefined };
    const index = builder.beam(
      nodes[k]!,
      nodes[k + 1]!,
      posts.member,
      { part: posts.id, role: how.role, piece: how.piece, from: levels[k]!, to: levels[k + 1]! },
      // Across the house: bending about the house's length is the stiff way.
      {
        towards: how.deep === 'along' ? [0, 0, 1] : [1, 0, 0],
        ...(last && turn.y !== undefined ? { springJ: { y: turn.z, z: turn.y } } : {}),
      },
    );
    const middle = ((levels[k] ?? 0) + (levels[k + 1] ?? top)) / 2;
    const along = fillingAlong(posts.filled, posts.member, top);
    stiffen(builder, index, along, barStiffness(posts.filled, middle));
    fill(builder, index, posts, middle);
    if (how.share < 1) scale(builder, index, how.share);
    elements.push(index);
  }
  builder.foot(nodes[0]!, posts.foot, posts.member, posts.foot.id);
  return { elements, foot: nodes[0]! };
}

/** Adds what the filling of a post resists with along it (N) and in bending (N·m2). */
function stiffen(builder: HouseBuilder, index: number, along: number, bending: number): void {
  const e = builder.elements[index]!;
  builder.elements[index] = { ...e, EA: e.EA + along, EIy: e.EIy + bending, EIz: e.EIz + bending };
}

/** Adds the weight of what is inside a post at a height over the ground, m. */
function fill(
  builder: HouseBuilder,
  index: number,
  posts: Pick<Posts, 'member' | 'filled'>,
  height: number,
): void {
  const inside = fillingWeight(posts.filled, posts.member, height);
  if (inside > 0) builder.weights.set(index, (builder.weights.get(index) ?? 0) + inside);
}

function scale(builder: HouseBuilder, index: number, share: number): void {
  const e = builder.elements[index]!;
  builder.elements[index] = {
    ...e,
    EA: e.EA * share,
    EIy: e.EIy * share,
    EIz: e.EIz * share,
    GJ: e.GJ * share,
  };
  builder.weights.set(index, (builder.weights.get(index) ?? 0) * share);
}
