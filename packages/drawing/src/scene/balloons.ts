/**
 * Numbered balloons that tie the picture to its key. Each takes the place around its anchor where it
 * crosses the fewest strokes and touches no text; the search is fixed, so the same drawing comes out.
 */
import { outlinesOverlap } from './bounds.ts';
import { textOutlines } from './free-text.ts';
import { circle, line, type Point, point, type Shape, text } from './shapes.ts';
import { crosses, distanceTo, pairs, type Stroke, square, strokesNear, strokesOf } from './strokes.ts';

export const BALLOON_RADIUS = 9;
const REACHES = [20, 28, 38, 50, 66, 84];
const DIRECTIONS = 16;
/** No balloon of an anchor reaches further. */
const FAR = Math.max(...REACHES) + 2 * BALLOON_RADIUS;
export interface Tag {
  readonly part: string;
  readonly number: number;
  readonly anchor: Point;
  /** Preferred direction on the page. */
  readonly toward?: Point;
}

/** Balloons with leaders for all tags, placed one after the other. */
export function placeBalloons(tags: readonly Tag[], drawn: readonly Shape[]): readonly Shape[] {
  const placed: Shape[] = [];
  const texts = [...textOutlines(drawn)];
  const strokes = [...strokesOf(drawn)];
  for (const tag of tags) {
    const at = bestPlace(tag, texts, strokesNear(tag.anchor, FAR, strokes));
    const gap = Math.hypot(at.x - tag.anchor.x, at.y - tag.anchor.y) || 1;
    const u = point((tag.anchor.x - at.x) / gap, (tag.anchor.y - at.y) / gap);
    const edge = point(at.x + u.x * BALLOON_RADIUS, at.y + u.y * BALLOON_RADIUS);
    placed.push(
      line(tag.part, 'leader', edge, tag.anchor),
      circle(tag.part, 'leader', tag.anchor, 1.2),
      circle(tag.part, 'balloon', at, BALLOON_RADIUS),
      text(tag.part, 'note', point(at.x, at.y + 3.9), `${tag.number}`, {
        size: 11,
        anchor: 'middle',
        bold: true,
      }),
    );
    texts.push(square(at, BALLOON_RADIUS + 2));
    strokes.push([edge, tag.anchor]);
  }
  return placed;
}

function bestPlace(tag: Tag, texts: readonly (readonly Point[])[], strokes: readonly Stroke[]): Point {
  const start = tag.toward ? Math.atan2(tag.toward.y, tag.toward.x) : -Math.PI / 4;
  let best = tag.anchor;
  let least = Infinity;
  for (const reach of REACHES) {
    for (let i = 0; i < DIRECTIONS; i++) {
      // 0, +1, -1, +2, -2 ... steps away from the preferred direction.
      const step = (i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2);
      const angle = start + (step * 2 * Math.PI) / DIRECTIONS;
      const at = point(tag.anchor.x + reach * Math.cos(angle), tag.anchor.y + reach * Math.sin(angle));
      const around = square(at, BALLOON_RADIUS + 3);
      const leader: readonly Point[] = [at, tag.anchor];
      let cost = reach * 0.03 + Math.abs(step) * 0.15;
      if (cost >= least) continue;
      for (const box of texts) {
        if (outlinesOverlap(around, box)) cost += 100;
        else if (crossesOutline(leader, box)) cost += 20;
      }
      for (const stroke of strokes) {
        if (distanceTo(at, stroke) < BALLOON_RADIUS + 2) cost += 6;
        else if (crosses(leader[0] as Point, leader[1] as Point, stroke[0], stroke[1])) cost += 0.7;
        if (cost > least) break;
      }
      if (cost < least - 1e-9) {
        least = cost;
        best = at;
      }
    }
  }
  return best;
}

function crossesOutline(leader: readonly Point[], outline: readonly Point[]): boolean {
  return pairs([...outline, outline[0] as Point]).some(([a, b]) =>
    crosses(leader[0] as Point, leader[1] as Point, a, b),
  );
}
