import type { Shelter } from '@tautline/shelter';
import { breadthOf } from '../describe.ts';
import type { Frame } from '../scene/frame.ts';
import { circle, line, point, polyline, type Shape } from '../scene/shapes.ts';
import { roofEdge } from '../skins.ts';
import type { Anchor } from './anchors.ts';
import { faceShapes, skinStyle, strapPlaces } from './skin-faces.ts';

export function skins(
  shelter: Shelter,
  frame: Frame,
  low: number,
  crown: number,
  anchors: Anchor[],
): readonly Shape[] {
  const shapes: Shape[] = [];
  const { length } = shelter;
  const { roof } = shelter;
  const half = roof.type === 'bows' || roof.type === 'rafters' ? breadthOf(roof.member) / 2 : 0;
  const gap = Math.max(5 / frame.scale, half + 3 / frame.scale);
  for (const cover of shelter.covers) {
    const style = skinStyle(cover);
    if (cover.place === 'ends') {
      for (const z of [-gap * 2, length + gap * 2])
        shapes.push(
          line(cover.id, style, frame.at(z, cover.from), frame.at(z, Math.max(cover.upTo, cover.from + 0.2))),
        );
      anchors.push({
        part: cover.id,
        at: frame.at(length + gap * 2, cover.upTo * 0.45),
        toward: point(1, 0.2),
      });
      continue;
    }
    const from = cover.place === 'sides' ? cover.from : roofEdge(shelter, cover, low);
    const to = cover.place === 'sides' ? cover.upTo : crown;
    const corners = [
      frame.at(-gap, from),
      frame.at(length + gap, from),
      frame.at(length + gap, to + (cover.place === 'roof' ? gap : 0)),
      frame.at(-gap, to + (cover.place === 'roof' ? gap : 0)),
    ];
    shapes.push(...faceShapes(cover.id, cover.skin.kind, corners));
    if (cover.place === 'roof')
      for (const z of strapPlaces(cover, shelter))
        shapes.push(line(cover.id, 'strap', frame.at(z, from), frame.at(z, to + gap)));
    anchors.push({
      part: cover.id,
      at: frame.at(length * 0.7, cover.place === 'roof' ? crown + gap : (from + to) / 2),
      toward: point(0.4, -1),
    });
  }
  for (const crop of shelter.crops) {
    if (crop.height <= 0) continue;
    shapes.push(
      polyline(
        crop.id,
        'crop',
        frame.all([point(0, 0), point(0, crop.height), point(length, crop.height), point(length, 0)]),
      ),
    );
    anchors.push({ part: crop.id, at: frame.at(length * 0.82, crop.height), toward: point(-0.5, -1) });
  }
  for (const joint of shelter.roof.type === 'bows' && shelter.roof.crownFitting
    ? [shelter.roof.crownFitting]
    : [])
    for (const z of shelter.roof.stations) shapes.push(circle(joint.id, 'joint', frame.at(z, crown), 3));
  return shapes;
}
