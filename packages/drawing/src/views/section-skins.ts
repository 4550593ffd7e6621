/** Film, mesh and crop in the section. */
import type { Shelter } from '@tautline/shelter';
import type { Frame } from '../scene/frame.ts';
import { hatch, offsetLine } from '../scene/outline.ts';
import { type Point, path, point, polyline, type Shape, type TextShape, text } from '../scene/shapes.ts';
import { halfRoof, roofReach, roofStrip, sideStrip } from '../skins.ts';
import type { Anchor, Piece } from './anchors.ts';
import { skinStyle } from './skin-faces.ts';
import { FLAT } from './things.ts';

/** Page units a skin is drawn off the member, so that both lines can be told apart. */
const CLEAR = 3.5;

/** The skins over the frame. End skins are not cut by a section; the plan and side show them. */
export function coverShapes(shelter: Shelter, frame: Frame): Piece {
  const shapes: Shape[] = [];
  const anchors: Anchor[] = [];
  const points = roofReach(shelter.roof);
  const out = halfRoof(shelter) + CLEAR / frame.scale;
  const skin = offsetLine(points, out);
  for (const cover of shelter.covers) {
    const style = skinStyle(cover);
    if (cover.place === 'roof') {
      const above = roofStrip(shelter, skin, cover);
      // The second film of a blown-up roof hangs below the rails and is drawn with the roof.
      const layers = shelter.roof.type === 'inflated' ? 1 : cover.layers;
      for (let layer = 0; layer < layers; layer++)
        shapes.push(polyline(cover.id, style, frame.all(offsetLine(above, (layer * 3) / frame.scale))));
      if (cover.straps)
        shapes.push(polyline(cover.id, 'strap', frame.all(offsetLine(above, (layers * 3) / frame.scale))));
      const at = above[Math.floor(above.length * 0.68)] ?? above[0];
      if (at)
        anchors.push({
          part: cover.id,
          at: frame.at(at.x, at.y),
          toward: point(1, -1),
        });
    } else if (cover.place === 'sides') {
      for (const side of [-1, 1] as const) {
        const strip = sideStrip(shelter, skin, side, cover, out / 3);
        if (strip.length < 2) continue;
        const inner = frame.all(strip);
        const outer = frame.all(strip).map(({ x, y }) => point(x + side * 5, y));
        if (style === 'mesh') {
          const outline = [...inner, ...[...outer].reverse()];
          shapes.push(path(cover.id, 'mesh-hatch', [...hatch(outline, 45, 4), ...hatch(outline, -45, 4)]));
        }
        shapes.push(polyline(cover.id, style, inner));
        if (style === 'mesh') shapes.push(polyline(cover.id, style, outer));
        const at = outer[Math.floor(outer.length / 2)];
        if (side === -1 && at) anchors.push({ part: cover.id, at, toward: point(-1, -0.5) });
      }
    }
  }
  return { shapes, anchors };
}

/** The name of each crop, over its outline. */
export const cropNames = (shelter: Shelter, frame: Frame): readonly TextShape[] =>
  shelter.crops.flatMap((crop) => {
    const [a, b] = [crop.fromSide, shelter.width - crop.fromSide];
    if (b <= a) return [];
    const at = frame.at(a + (b - a) * 0.3, crop.height > 0 ? crop.height : NO_HEIGHT);
    return [text(crop.id, 'note', point(at.x, at.y - 6), crop.name, { size: 11, anchor: 'middle' })];
  });

/** Height a crop is drawn with where none is said, m. */
const NO_HEIGHT = 0.1;

/** What grows below, as an outline; plants stand on benches and beds where there are any. */
export function cropShapes(shelter: Shelter, frame: Frame): Piece {
  const shapes: Shape[] = [];
  const anchors: Anchor[] = [];
  for (const crop of shelter.crops) {
    const height = crop.height > 0 ? crop.height : NO_HEIGHT;
    const [a, b] = [crop.fromSide, shelter.width - crop.fromSide];
    if (b <= a) continue;
    const outline = frame.all([point(a, 0), point(a, height), point(b, height), point(b, 0)]);
    for (const { from, to, y } of growingPlaces(shelter, a, b)) {
      const tall = Math.max(height - y, 0.25 * height) * frame.scale * 0.85;
      shapes.push(path(crop.id, 'crop-hatch', plants(frame.at(from, y), frame.at(to, y), tall)));
    }
    shapes.push(polyline(crop.id, 'crop', outline));
    anchors.push({
      part: crop.id,
      at: frame.at(a + (b - a) * 0.8, height),
      toward: point(0.5, -1),
    });
  }
  return { shapes, anchors };
}

/** Where plants stand between two places across the house, m: on what there is to grow on, else on the ground. */
function growingPlaces(
  shelter: Shelter,
  a: number,
  b: number,
): readonly { readonly from: number; readonly to: number; readonly y: number }[] {
  const places = shelter.things.flatMap(({ kind, lefts, width, height }) =>
    kind === 'obstacle'
      ? []
      : lefts.map((left) => ({
          from: Math.max(a, left),
          to: Math.min(b, left + width),
          y: Math.max(height, FLAT),
        })),
  );
  const within = places.filter(({ from, to }) => to - from > 1e-6);
  return within.length > 0 ? within : [{ from: a, to: b, y: 0 }];
}

/** Simple plants in a row: a stem and three pairs of leaves each. */
function plants(from: Point, to: Point, tall: number): readonly (readonly Point[])[] {
  const wide = to.x - from.x;
  const count = Math.max(1, Math.floor(wide / Math.max(18, tall * 0.3)));
  const strokes: Point[][] = [];
  for (let i = 0; i < count; i++) {
    const x = from.x + (wide * (i + 0.5)) / count;
    strokes.push([point(x, from.y), point(x, from.y - tall)]);
    for (const share of [0.35, 0.6, 0.85]) {
      const leaf = Math.min(tall * 0.22, 13, (wide / count) * 0.4) * (1.15 - share * 0.5);
      const y = from.y - tall * share;
      strokes.push([point(x - leaf, y - leaf * 0.7), point(x, y), point(x + leaf, y - leaf * 0.7)]);
    }
  }
  return strokes;
}
