/** What runs along the house at the frames: ridge, inner lines and purlins. */
import {
  type CableItem,
  crownOf,
  type JointItem,
  type MemberItem,
  pointOn,
  type Rail,
  staySlope,
} from '@tautline/shelter';
import { arcNear } from '../system/arc-near.ts';
import { depthOf } from '../system/member.ts';
import { type HouseBuilder, type Point, turning } from './house-builder.ts';
import { addPost, merged } from './posts-and-rails.ts';

/** Length of the hanger by which a ridge that only pushes up takes a frame, m. */
const hanger = 0.5;
const same = 1e-3;

/** Index of the slice's node on the roof line nearest to an arc length. */
export function sliceNodeAt({ slice }: HouseBuilder, s: number): number {
  let best = -1;
  for (const k of slice.roof)
    for (const n of [slice.model.elements[k]!.i, slice.model.elements[k]!.j])
      if (best < 0 || Math.abs(slice.nodes[n]!.at - s) < Math.abs(slice.nodes[best]!.at - s)) best = n;
  return best;
}

/** Purlins, each continuous over all frames, a joint at every frame. */
export function addPurlins(builder: HouseBuilder): void {
  const { shelter } = builder;
  const { line } = shelter.roof;
  for (const purlin of shelter.purlins) {
    const { member } = purlin;
    purlin.lines.forEach((place, piece) => {
      const s = place.s ?? arcNear(line, place.x, place.y);
      const { angle } = pointOn(line, s);
      const out: Point = [-Math.sin(angle), Math.cos(angle), 0];
      const at = sliceNodeAt(builder, s);
      const nodes = builder.frames.map((frame) =>
        member.kind === 'cable'
          ? frame.nodes[at]!
          : onFrame(builder, frame.nodes[at]!, [-out[0], -out[1], 0], member, purlin.joint),
      );
      builder.frames.slice(1).forEach((frame, k) => {
        const span = {
          part: purlin.id,
          piece,
          from: builder.frames[k]!.z,
          to: frame.z,
          role: 'purlin' as const,
        };
        if (member.kind === 'cable') builder.bar(nodes[k]!, nodes[k + 1]!, member, span, purlin.tension ?? 0);
        else builder.beam(nodes[k]!, nodes[k + 1]!, member, span, { towards: out });
      });
    });
    builder.notes.add('Purlins are taken as whole from end to end: their own splices are left out.');
  }
}

/** The node of what crosses a frame: the frame's own where the joint is rigid, else off its line behind a turning joint. */
function onFrame(
  builder: HouseBuilder,
  node: number,
  inwards: Point,
  member: MemberItem,
  joint: JointItem | undefined,
  spins = false,
): number {
  if (turning(joint) === undefined) return node;
  const off = Math.max(
    0.01,
    (depthOf(
      builder.shelter.roof.type === 'bows' || builder.shelter.roof.type === 'rafters'
        ? builder.shelter.roof.member
        : member,
    ) +
      depthOf(member)) /
      2,
  );
  return builder.link(node, [inwards[0] * off, inwards[1] * off, inwards[2] * off], member, joint, spins);
}

/** A ridge on its own posts, or a cable from anchor to anchor. */
export function addRidge(builder: HouseBuilder): void {
  const { ridge } = builder.shelter;
  if (ridge === undefined) return;
  if (ridge.member.kind === 'cable') addCableRidge(builder, ridge, ridge.member);
  else addRailUnder(builder, ridge, ridge.member, crownOf(builder.shelter.roof.line).s, 0);
}

/** The inner lines of a grid, each a rail on its own posts. */
export function addInner(builder: HouseBuilder): void {
  for (const rail of builder.shelter.inner ?? []) {
    const { member } = rail;
    if (member.kind === 'cable') continue;
    rail.lines.forEach(({ s }, piece) => {
      if (s !== undefined) addRailUnder(builder, rail, member, s, piece);
    });
  }
}

function nodesAt(builder: HouseBuilder, s: number): { z: number; node: number }[] {
  const at = sliceNodeAt(builder, s);
  return builder.frames.map((frame) => ({ z: frame.z, node: frame.nodes[at]! }));
}

/** A rail under every frame at an arc length s, on posts of its own. */
function addRailUnder(builder: HouseBuilder, ridge: Rail, member: MemberItem, s: number, line: number): void {
  const on = new Map<number, number>();
  let height = 0;
  for (const { z, node } of nodesAt(builder, s)) {
    // Off the joint's own posts the ridge cannot spin; the frame turns on it freely across the house.
    const own = ridge.tied
      ? onFrame(builder, node, [0, -1, 0], member, ridge.joint, ridge.posts !== undefined)
      : pushedUp(builder, node, member);
    on.set(z, own);
    height = builder.at(own)[1];
  }
  const x = builder.at(on.values().next().value as number)[0];
  const stations = ridge.posts?.stations ?? [];
  const nodeAt = (z: number): number => {
    for (const [at, node] of on) if (Math.abs(at - z) <= same) return node;
    const node = builder.node([x, height, z], ridge.id, z);
    on.set(z, node);
    return node;
  };
  stations.forEach((z, piece) => {
    if (ridge.posts === undefined) return;
    addPost(builder, ridge.posts, nodeAt(z), {
      role: 'ridge-post',
      piece: line * stations.length + piece,
      share: 1,
      heights: [],
      top: turning(ridge.posts.topJoint ?? ridge.joint),
    });
  });
  const along = merged([...on.keys()]);
  for (let k = 0; k + 1 < along.length; k++)
    builder.beam(
      nodeAt(along[k]!),
      nodeAt(along[k + 1]!),
      member,
      {
        part: ridge.id,
        role: 'ridge',
        piece: line,
        from: along[k]!,
        to: along[k + 1]!,
      },
      { towards: [0, 1, 0] },
    );
}

/** A stiff mast on the ridge from which the crown hangs by what only pulls: the ridge then only pushes the crown up. */
function pushedUp(builder: HouseBuilder, crown: number, member: MemberItem): number {
  const [x, y, z] = builder.at(crown);
  const below = Math.max(0.01, depthOf(member));
  const own = builder.node([x, y - below, z], 'ridge', z);
  const top = builder.node([x, y + hanger, z], 'link', 0);
  builder.beam(own, top, member, { part: 'link', role: 'link', piece: 0 });
  const mast = builder.elements.length - 1;
  const e = builder.elements[mast]!;
  builder.elements[mast] = { ...e, EA: 4 * e.EA, EIy: 20 * e.EIy, EIz: 20 * e.EIz, GJ: 20 * e.GJ };
  builder.weights.delete(mast);
  builder.add(
    { i: top, j: crown, EA: e.EA, EIy: 0, EIz: 0, GJ: 0, tensionOnly: true },
    { part: 'link', role: 'link', from: 0, to: hanger, length: hanger, piece: 0 },
  );
  builder.notes.add('The ridge only pushes up: each frame hangs in it by what cannot push.');
  return own;
}

function addCableRidge(builder: HouseBuilder, ridge: Rail, cable: CableItem): void {
  const on = new Map(nodesAt(builder, crownOf(builder.shelter.roof.line).s).map(({ z, node }) => [z, node]));
  const [x, y] = builder.at(on.values().next().value as number);
  const shared = new Set(on.values());
  const nodeAt = (z: number): number => {
    for (const [at, node] of on) if (Math.abs(at - z) <= same) return node;
    const node = builder.node([x, y, z], ridge.id, z);
    on.set(z, node);
    return node;
  };
  ridge.posts?.stations.forEach((z, piece) => {
    const head = nodeAt(z);
    addPost(builder, ridge.posts!, head, {
      role: 'ridge-post',
      piece,
      share: 1,
      heights: [],
      top: undefined,
      loose: shared.has(head) && turning(ridge.posts!.topJoint) === 0,
    });
  });
  const pull = ridge.tension ?? 0;
  const along = merged([...on.keys()]);
  for (let k = 0; k + 1 < along.length; k++)
    builder.bar(
      nodeAt(along[k]!),
      nodeAt(along[k + 1]!),
      cable,
      { part: ridge.id, role: 'ridge', piece: 0, from: along[k]!, to: along[k + 1]! },
      pull,
    );
  const part = ridge.endAnchor?.id ?? `${ridge.id}/anchor`;
  const slope = staySlope(ridge);
  for (const [z, sign] of [
    [along[0]!, -1],
    [along[along.length - 1]!, 1],
  ] as const) {
    const foot = builder.anchor([x, 0, z + (sign * y) / Math.tan(slope)], part);
    // Pulled so that its level share meets the cable's own pull: the end then stands plumb.
    builder.bar(
      nodeAt(z),
      foot,
      cable,
      { part: ridge.id, role: 'anchor', piece: sign < 0 ? 0 : 1 },
      pull / Math.cos(slope),
    );
  }
  if (!ridge.tied)
    builder.notes.add('The frames are taken as tied to the ridge cable, though only laid over it.');
}
