/** The lines skins and heads meet across the house. */
import type { Cover, Roof, Shelter } from '@tautline/shelter';
import { depthOf } from './describe.ts';
import { type Point, point } from './scene/shapes.ts';

/** Half the thickness of the roof's members, m; 0 where it has none. */
export function halfRoof(shelter: Shelter): number {
  const { roof } = shelter;
  return roof.type === 'bows' || roof.type === 'rafters' ? depthOf(roof.member) / 2 : 0;
}

/** Centre line of the roof's members with the overhang beyond the eaves; a single slope has it at its low side, m. */
export function roofReach(roof: Roof): readonly Point[] {
  const line = roof.line.map(({ x, y }) => point(x, y));
  const [first, second, last, before] = [line[0], line[1], line.at(-1), line.at(-2)];
  if (roof.type !== 'rafters' || !(roof.overhang > 0) || !first || !second || !last || !before) return line;
  const out = (end: Point, from: Point): Point => {
    const size = Math.hypot(end.x - from.x, end.y - from.y);
    const by = roof.overhang / size;
    return point(end.x + (end.x - from.x) * by, end.y + (end.y - from.y) * by);
  };
  const low = roof.form === 'gable' || first.y <= last.y;
  const high = roof.form === 'gable' || !low;
  return [...(low ? [out(first, second)] : []), ...line, ...(high ? [out(last, before)] : [])];
}

/** Height of the lower edge of a roof skin, no lower than `low`, m; one from the eave on goes out over the overhang. */
export function roofEdge(shelter: Shelter, cover: Cover, low: number): number {
  const sides = shelter.covers.find((other) => other.place === 'sides' && other.upTo > 0);
  const from = Math.max(cover.from, shelter.sidePosts ? 0 : (sides?.upTo ?? 0));
  const { roof } = shelter;
  return roof.type === 'rafters' && from <= roof.springing + 1e-6 ? low : Math.max(from, low);
}

/** The roof skin across the house: down to the side skin where bows come to the ground, else the whole line. */
export function roofStrip(shelter: Shelter, skin: readonly Point[], cover: Cover): readonly Point[] {
  const low = Math.min(...skin.map(({ y }) => y));
  const from = roofEdge(shelter, cover, low);
  return from <= low ? skin : clipAbove(skin, from);
}

/** The part of a polyline above a height, with the cut ends worked out; the whole when all is above. */
function clipAbove(points: readonly Point[], from: number): readonly Point[] {
  const kept: Point[] = [];
  points.forEach((p, i) => {
    const before = points[i - 1];
    if (before && (before.y - from) * (p.y - from) < 0) {
      const t = (from - before.y) / (p.y - before.y);
      kept.push(point(before.x + t * (p.x - before.x), from));
    }
    if (p.y >= from) kept.push(p);
  });
  return kept;
}

/** Side skin from low to high: down the posts, or along the bow where there are none. */
export function sideStrip(
  shelter: Shelter,
  skin: readonly Point[],
  side: -1 | 1,
  cover: Cover,
  clear: number,
): readonly Point[] {
  if (shelter.sidePosts) {
    const half = depthOf(shelter.sidePosts.member) / 2 + clear;
    const lines = shelter.sidePosts.lines;
    const x = side === -1 ? Math.min(...lines) - half : Math.max(...lines) + half;
    return [point(x, cover.from), point(x, (cover.from + cover.upTo) / 2), point(x, cover.upTo)];
  }
  const crown = skin.reduce((best, p, i) => (p.y > (skin[best]?.y ?? -Infinity) ? i : best), 0);
  const half = side === -1 ? skin.slice(0, crown + 1) : skin.slice(crown).reverse();
  return clipBetween(half, cover.from, cover.upTo);
}

/** Points of a rising polyline between two heights, ends interpolated. */
function clipBetween(points: readonly Point[], low: number, high: number): readonly Point[] {
  const kept: Point[] = [];
  points.forEach((p, i) => {
    const before = points[i - 1];
    if (before) {
      const cuts = [low, high].filter((y) => (before.y - y) * (p.y - y) < 0);
      cuts.sort((a, b) => Math.abs(a - before.y) - Math.abs(b - before.y));
      for (const y of cuts)
        kept.push(point(before.x + ((y - before.y) / (p.y - before.y)) * (p.x - before.x), y));
    }
    if (p.y >= low && p.y <= high) kept.push(p);
  });
  return kept;
}
