import type { Shelter } from '@tautline/shelter';
import { breadthOf } from '../describe.ts';
import type { Frame } from '../scene/frame.ts';
import { box, line, point, type Shape } from '../scene/shapes.ts';
import type { Anchor } from './anchors.ts';
import { skinStyle } from './skin-faces.ts';

export function coverShapes(
  shelter: Shelter,
  frame: Frame,
  left: number,
  right: number,
  anchors: Anchor[],
): readonly Shape[] {
  const shapes: Shape[] = [];
  const { roof } = shelter;
  const half = roof.type === 'bows' || roof.type === 'rafters' ? breadthOf(roof.member) / 2 : 0;
  const rail = Math.max(half, shelter.eaveRail ? breadthOf(shelter.eaveRail.member) / 2 : 0);
  // Skins are drawn clear of what they lie on.
  const gap = Math.max(6, rail * frame.scale + 4);
  const [a, b] = [frame.at(0, Math.min(0, left)), frame.at(shelter.length, Math.max(shelter.width, right))];
  for (const cover of shelter.covers) {
    const style = skinStyle(cover);
    if (cover.place === 'roof') {
      shapes.push(box(cover.id, style, point(a.x - gap, a.y + gap), point(b.x + gap, b.y - gap)));
      anchors.push({ part: cover.id, at: point(a.x + (b.x - a.x) * 0.9, b.y - gap), toward: point(0.3, -1) });
    } else if (cover.place === 'sides') {
      for (const [y, sign] of [
        [a.y, 1],
        [b.y, -1],
      ] as const) {
        const at = y + sign * (gap + 4);
        shapes.push(line(cover.id, style, point(a.x, at), point(b.x, at)));
      }
      anchors.push({
        part: cover.id,
        at: point(a.x + (b.x - a.x) * 0.8, b.y - gap - 4),
        toward: point(0.3, -1),
      });
    } else {
      for (const [x, sign] of [
        [a.x, -1],
        [b.x, 1],
      ] as const) {
        const at = x + sign * (gap + 4);
        shapes.push(line(cover.id, style, point(at, a.y), point(at, b.y)));
      }
      anchors.push({
        part: cover.id,
        at: point(b.x + gap + 4, a.y + (b.y - a.y) * 0.3),
        toward: point(1, -0.3),
      });
    }
  }
  return shapes;
}
