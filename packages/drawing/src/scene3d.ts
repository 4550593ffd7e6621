/** The whole house in space as plain numbers, for a view that draws members as instances and skins as meshes. */
import { type Cap, innerFilm, type Shelter } from '@tautline/shelter';
import { offsetLine } from './scene/outline.ts';
import { bar, footSegments, type Segment, segment } from './scene3d-bars.ts';
import { doorScene } from './scene3d-doors.ts';
import { endSegments, thingSegments } from './scene3d-inside.ts';
import { halfRoof, roofReach, roofStrip, sideStrip } from './skins.ts';
import { allPosts, allRails, braceRuns, type Space } from './views/members.ts';

export type { Segment, Space };

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
  const doors = doorScene(shelter);
  const segments = [
    ...roofSegments(shelter),
    ...supportSegments(shelter),
    ...alongSegments(shelter),
    ...endSegments(shelter),
    ...doors.segments,
    ...thingSegments(shelter),
  ];
  const surfaces = [
    ...shelterSurfaces(shelter),
    ...doors.leaves.map((leaf): Surface => ({ ...leaf, skin: 'sheet' })),
  ];
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

function roofSegments(shelter: Shelter): readonly Segment[] {
  const { roof } = shelter;
  if (roof.type === 'inflated') return [];
  const out: Segment[] = [];
  if (roof.type === 'cap') {
    const [left, right] = [roof.line[0], roof.line.at(-1)];
    roof.stations.slice(1).forEach((z, n) => {
      const middle = (z + (roof.stations[n] ?? 0)) / 2;
      if (left && right) out.push(...capFeet(roof, left.x, middle, 1), ...capFeet(roof, right.x, middle, -1));
    });
    return out;
  }
  const reach = roofReach(roof);
  for (const z of roof.stations) {
    reach.forEach((b, i) => {
      const a = reach[i - 1];
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

/** What holds one rim of a cap. */
const capFeet = ({ foot }: Cap, x: number, z: number, inward: -1 | 1): readonly Segment[] =>
  foot.kind === 'ballast'
    ? [bar(foot.id, [x - inward * 0.07, 0.04, z - 0.14], [x - inward * 0.07, 0.04, z + 0.14], 0.08, 0.12)]
    : [];

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
    braceRuns(shelter, brace).flatMap(([a, b]) => {
      const low = a[1] < b[1] ? a : b;
      return [
        segment(brace.id, brace.member, a, b),
        ...(brace.foot ? footSegments(brace.foot, brace.member, low[0], low[2], 0) : []),
      ];
    }),
  );
  return [...rails, ...braces];
}

function shelterSurfaces(shelter: Shelter): readonly Surface[] {
  const { roof, length } = shelter;
  const skin = offsetLine(roofReach(roof), halfRoof(shelter));
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
    // Caps stand one by one, blown-up films run through.
    const runs =
      roof.type === 'cap'
        ? roof.stations.slice(1).map((z, n) => [(roof.stations[n] ?? 0) + 0.01, z - 0.01] as const)
        : [[0, length] as const];
    const faces = runs.flatMap(([from, to]) => lines.map((line) => sweep(flat(line), to, from)));
    return [...out, ...faces.map((face) => ({ part: roof.id, skin: kind, ...face }))];
  }
  return out;
}

type Flat = readonly (readonly [number, number])[];
type Faces = Pick<Surface, 'positions' | 'triangles'>;

/** A profile drawn along the house. */
function sweep(profile: Flat, to: number, from = 0): Faces {
  const positions = [from, to].flatMap((z) => profile.flatMap(([x, y]) => [x, y, z]));
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
