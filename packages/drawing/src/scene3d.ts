/** The whole house in space as plain numbers, for a view that draws members as instances and skins as meshes. */
import { type CableItem, type Foot, innerFilm, type MemberItem, type Shelter } from '@tautline/shelter';
import { breadthOf, depthOf } from './describe.ts';
import { offsetLine } from './scene/outline.ts';
import { halfRoof, roofStrip, sideStrip } from './skins.ts';
import { allPosts, allRails, braceRuns, type Space } from './views/members.ts';

export type { Space };

export interface Segment {
  readonly part: string;
  readonly from: Space;
  readonly to: Space;
  /** Half the depth, m; the true radius of round members. */
  readonly radius: number;
  readonly section: 'round' | 'rectangle';
  /** Half the breadth of rectangles along the house, m. */
  readonly halfBreadth: number;
  readonly underground: boolean;
}

export interface Surface {
  readonly part: string;
  readonly skin: 'film' | 'mesh' | 'sheet';
  /** x, y, z of each corner in turn, m. */
  readonly positions: readonly number[];
  /** Three corners a triangle. */
  readonly triangles: readonly number[];
}

export interface Scene3d {
  readonly segments: readonly Segment[];
  readonly surfaces: readonly Surface[];
  readonly low: Space;
  readonly high: Space;
}

/** Members of every frame and skins between the end frames. Throws RangeError on a number that is not finite. */
export function scene3d(shelter: Shelter): Scene3d {
  const segments = [
    ...roofSegments(shelter),
    ...supportSegments(shelter),
    ...alongSegments(shelter),
    ...endSegments(shelter),
    ...thingSegments(shelter),
  ];
  const surfaces = shelterSurfaces(shelter);
  const all: Space[] = segments.flatMap(({ from, to }) => [from, to]);
  for (const { positions } of surfaces)
    for (let i = 0; i < positions.length; i += 3)
      all.push([positions[i] ?? 0, positions[i + 1] ?? 0, positions[i + 2] ?? 0]);
  for (const p of all)
    for (const value of p)
      if (!Number.isFinite(value)) throw new RangeError(`the model holds the number ${value}`);
  const reach = (pick: (...values: number[]) => number): Space =>
    [0, 1, 2].map((axis) => pick(...all.map((p) => p[axis as 0 | 1 | 2]))) as unknown as Space;
  return { segments, surfaces, low: reach(Math.min), high: reach(Math.max) };
}

function segment(
  part: string,
  member: MemberItem | CableItem,
  from: Space,
  to: Space,
  underground = false,
): Segment {
  const square = member.kind !== 'cable' && member.section.shape === 'rectangle';
  return {
    part,
    from,
    to,
    radius: depthOf(member) / 2,
    section: square ? 'rectangle' : 'round',
    halfBreadth: breadthOf(member) / 2,
    underground,
  };
}

function roofSegments(shelter: Shelter): readonly Segment[] {
  const { roof } = shelter;
  if (roof.type === 'cap' || roof.type === 'inflated') return [];
  const out: Segment[] = [];
  for (const z of roof.stations) {
    roof.line.forEach((b, i) => {
      const a = roof.line[i - 1];
      if (a && Math.hypot(b.x - a.x, b.y - a.y) > 1e-5)
        out.push(segment(roof.id, roof.member, [a.x, a.y, z], [b.x, b.y, z]));
    });
    if (roof.type === 'rafters' && roof.tie) {
      const share = roof.rise === 0 ? 0 : roof.tie.height / roof.rise / 2;
      const [left, right] = [(shelter.width - roof.span) / 2, (shelter.width + roof.span) / 2];
      const y = roof.springing + roof.tie.height;
      out.push(
        segment(
          roof.tie.id,
          roof.tie.member,
          [left + share * roof.span, y, z],
          [right - share * roof.span, y, z],
        ),
      );
    }
    const [first, last] = [roof.line[0], roof.line[roof.line.length - 1]];
    if (roof.type === 'bows' && roof.foot && first && last) {
      out.push(...footSegments(roof.foot, roof.member, first.x, z, 1));
      out.push(...footSegments(roof.foot, roof.member, last.x, z, -1));
    }
  }
  return out;
}

/** What of a foot is a bar: stub, driven leg, post below ground. Pads, blocks and anchors are left out. */
function footSegments(
  foot: Foot,
  member: MemberItem,
  x: number,
  z: number,
  inward: -1 | 0 | 1,
): readonly Segment[] {
  const lean = inward === 0 ? Math.PI / 2 : (foot.lean ?? Math.PI / 2);
  const [u, v] = [Math.cos(lean) * inward, Math.sin(lean)];
  const along = (s: number): Space => [x + u * s, v * s, z];
  if (foot.kind === 'ballast' || foot.kind === 'bearing' || foot.driven <= 0) return [];
  const deep = foot.driven / Math.max(0.2, v);
  if (foot.stub) {
    const above = Math.max(0, (foot.length ?? deep) - deep);
    return [
      segment(foot.id, foot.stub, along(-deep), along(0), true),
      ...(above > 0 ? [segment(foot.id, foot.stub, along(0), along(above))] : []),
    ];
  }
  return [segment(foot.id, member, along(-deep), along(0), true)];
}

function supportSegments(shelter: Shelter): readonly Segment[] {
  return allPosts(shelter).flatMap((row) =>
    row.stations.flatMap((z) =>
      row.lines.flatMap((x) => [
        segment(row.id, row.member, [x, 0, z], [x, row.height, z]),
        ...footSegments(row.foot, row.member, x, z, 0),
      ]),
    ),
  );
}

function alongSegments(shelter: Shelter): readonly Segment[] {
  const { length } = shelter;
  const rails = allRails(shelter).flatMap((rail) =>
    rail.lines.map(({ x, y }) => segment(rail.id, rail.member, [x, y, 0], [x, y, length])),
  );
  const braces = shelter.braces.flatMap((brace) =>
    braceRuns(shelter, brace).map(([a, b]) => segment(brace.id, brace.member, a, b)),
  );
  return [...rails, ...braces];
}

/** Uprights and rails of both ends; a door is its opening, which the uprights show. */
function endSegments({ endFrames: ends, length }: Shelter): readonly Segment[] {
  if (!ends) return [];
  const { rail } = ends;
  return [0, length].flatMap((z) => [
    ...ends.uprights.flatMap(({ x, height }) => [
      segment(ends.id, ends.member, [x, 0, z], [x, height, z]),
      ...footSegments(ends.foot, ends.member, x, z, 0),
    ]),
    ...(rail ? [segment(ends.id, rail.member, [rail.from, rail.height, z], [rail.to, rail.height, z])] : []),
  ]);
}

/** Things under the roof as boxes of their own size: one bar each along the house. */
function thingSegments(shelter: Shelter): readonly Segment[] {
  return shelter.things.flatMap((thing) => {
    const high = Math.max(thing.height, 0.06);
    const thick = thing.kind === 'bench' && thing.height > 0 ? 0.05 : high;
    return thing.lefts.map((left): Segment => {
      const [x, y] = [left + thing.width / 2, high - thick / 2];
      return {
        part: thing.id,
        from: [x, y, thing.starts],
        to: [x, y, thing.starts + thing.length],
        radius: thick / 2,
        section: 'rectangle',
        halfBreadth: thing.width / 2,
        underground: false,
      };
    });
  });
}

function shelterSurfaces(shelter: Shelter): readonly Surface[] {
  const { roof, length } = shelter;
  const skin = offsetLine(roof.line, halfRoof(shelter));
  const flat = (points: readonly { readonly x: number; readonly y: number }[]): Flat =>
    points.map(({ x, y }) => [x, y]);
  const out = shelter.covers.flatMap((cover): readonly Surface[] => {
    const of = { part: cover.id, skin: cover.skin.kind };
    if (cover.place === 'roof') return [{ ...of, ...sweep(flat(roofStrip(shelter, skin, cover)), length) }];
    if (cover.place === 'sides')
      return ([-1, 1] as const).map((side) => ({
        ...of,
        ...sweep(flat(sideStrip(shelter, skin, side, cover, 0)), length),
      }));
    return [0, length].map((z) => ({ ...of, ...endWall(flat(roof.line), z, cover.from, cover.upTo) }));
  });
  if (roof.type === 'cap' || roof.type === 'inflated') {
    const kind = roof.type === 'cap' ? roof.sheet.kind : 'film';
    const lines = roof.type === 'inflated' ? [roof.line, innerFilm(roof)] : [roof.line];
    return [...out, ...lines.map((line) => ({ part: roof.id, skin: kind, ...sweep(flat(line), length) }))];
  }
  return out;
}

type Flat = readonly (readonly [number, number])[];
type Faces = Pick<Surface, 'positions' | 'triangles'>;

/** A profile drawn along the house. */
function sweep(profile: Flat, length: number): Faces {
  const positions = [0, length].flatMap((z) => profile.flatMap(([x, y]) => [x, y, z]));
  const n = profile.length;
  const triangles = profile.slice(1).flatMap((_, i) => [i, i + 1, n + i, i + 1, n + i + 1, n + i]);
  return { positions, triangles };
}

/** An end wall in upright strips, from its lower edge to its upper edge or the roof line, whichever is lower. */
function endWall(profile: Flat, z: number, from: number, upTo: number): Faces {
  const top = (y: number): number => Math.max(from, upTo > 0 ? Math.min(y, upTo) : y);
  const positions = profile.flatMap(([x, y]) => [x, top(y), z, x, from, z]);
  const triangles = profile.slice(1).flatMap((_, i) => {
    const [a, b] = [2 * i, 2 * i + 2];
    return [a, a + 1, b, b, a + 1, b + 1];
  });
  return { positions, triangles };
}
