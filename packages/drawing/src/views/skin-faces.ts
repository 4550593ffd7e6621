/** Film, mesh and sheet seen face on, so that each can be told from the others without colour. */
import type { Cover, Shelter } from '@tautline/shelter';
import { hatch } from '../scene/outline.ts';
import { type Point, path, point, polygon, type Shape, type Style } from '../scene/shapes.ts';
import { isInside } from '../scene/strokes.ts';

/** How a skin is drawn, by what it is. */
export const skinStyle = (cover: Cover): Style => styleOfSkin(cover.skin.kind);

const styleOfSkin = (kind: Cover['skin']['kind']): Style =>
  kind === 'mesh' ? 'mesh' : kind === 'sheet' ? 'sheet' : 'film';

/** Page units between the strokes of a face. */
const MESH = 9;
const CORRUGATIONS = 7;
const GLINTS = 130;

/** A face of skin on a convex outline of the page: mesh crossed, sheet with its corrugations, film with glints. */
export function faceShapes(
  part: string,
  kind: Cover['skin']['kind'],
  outline: readonly Point[],
): readonly Shape[] {
  const style = styleOfSkin(kind);
  const strokes =
    kind === 'mesh'
      ? [...hatch(outline, 45, MESH), ...hatch(outline, -45, MESH)]
      : kind === 'sheet'
        ? hatch(outline, 90, CORRUGATIONS)
        : glints(outline);
  return [path(part, kind === 'mesh' ? 'mesh-hatch' : 'film-hatch', strokes), polygon(part, style, outline)];
}

/** Pairs of short slanting strokes, evenly over a pane, as clear film throws back the light. */
function glints(outline: readonly Point[]): readonly (readonly Point[])[] {
  const [xs, ys] = [outline.map(({ x }) => x), outline.map(({ y }) => y)];
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const across = Math.max(1, Math.round((right - left) / GLINTS));
  const down = Math.max(1, Math.round((bottom - top) / GLINTS));
  const tall = Math.min(26, (bottom - top) * 0.5);
  const pairs = Array.from({ length: across * down }, (_, n) => {
    const x = left + ((right - left) * ((n % across) + 0.62)) / across;
    const y = top + ((bottom - top) * (Math.floor(n / across) + 0.45)) / down;
    return [stroke(x, y, tall), stroke(x + 6, y + tall * 0.1, tall * 0.55)];
  });
  return pairs.flat().filter((ends) => ends.every((end) => isInside(end, outline)));
}

const stroke = (x: number, y: number, tall: number): readonly Point[] => [
  point(x - tall * 0.3, y + tall / 2),
  point(x + tall * 0.3, y - tall / 2),
];

/** Places along the house where straps go over a cover, one in the middle of each of its spacings, m. */
export function strapPlaces(cover: Cover, { length }: Shelter): readonly number[] {
  if (!cover.straps) return [];
  const count = Math.ceil(length / cover.straps.spacing - 1e-9);
  return Array.from({ length: count }, (_, n) => ((n + 0.5) * length) / count);
}
