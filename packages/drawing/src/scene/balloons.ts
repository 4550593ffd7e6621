/**
 * Numbered balloons that tie the picture to its key. Each takes the place around its anchor where it
 * crosses the fewest strokes and touches no text; the search is fixed, so the same drawing comes out.
 */
import { cornersOf, outlinesOverlap, plainShapes } from './bounds.ts';
import { circle, line, type Point, point, type Shape, type Style, text } from './shapes.ts';

export const BALLOON_RADIUS = 9;
const REACHES = [20, 28, 38, 50, 66, 84];
const DIRECTIONS = 16;
/** Hatches may be covered; everything else costs. */
const coverable: ReadonlySet<Style> = new Set<Style>([
  'earth-hatch',
  'mesh-hatch',
  'crop-hatch',
  'thing-hatch',
  'water-hatch',
  'moment-hatch',
  'bar-hatch',
  'offcut-hatch',
  'centre-line',
]);

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
  const plain = plainShapes(drawn);
  const texts = plain.flatMap((shape) => (shape.kind === 'text' ? [cornersOf(shape)] : []));
  const strokes = plain.flatMap((shape) => strokesOf(shape));
  for (const tag of tags) {
    const at = bestPlace(
      tag,
      texts,
      strokes.filter(([a, b]) => near(tag.anchor, a, b)),
    );
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

/** Whether a stroke can come near any place a balloon of this anchor may take. */
function near(at: Point, a: Point, b: Point): boolean {
  const far = (REACHES[REACHES.length - 1] as number) + 2 * BALLOON_RADIUS;
  return (
    Math.min(a.x, b.x) < at.x + far &&
    Math.max(a.x, b.x) > at.x - far &&
    Math.min(a.y, b.y) < at.y + far &&
    Math.max(a.y, b.y) > at.y - far
  );
}

function bestPlace(
  tag: Tag,
  texts: readonly (readonly Point[])[],
  strokes: readonly (readonly [Point, Point])[],
): Point {
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

const square = (at: Point, half: number): readonly Point[] => [
  point(at.x - half, at.y - half),
  point(at.x + half, at.y - half),
  point(at.x + half, at.y + half),
  point(at.x - half, at.y + half),
];

function strokesOf(shape: ReturnType<typeof plainShapes>[number]): readonly (readonly [Point, Point])[] {
  if (coverable.has(shape.style) || shape.kind === 'text') return [];
  if (shape.kind === 'circle') {
    const corners = square(shape.centre, shape.radius);
    return corners.map((p, i) => [p, corners[(i + 1) % 4] as Point] as const);
  }
  if (shape.kind === 'path') return shape.strokes.flatMap((stroke) => pairs(stroke));
  const points = cornersOf(shape);
  return shape.kind === 'polygon' ? pairs([...points, points[0] as Point]) : pairs(points);
}

const pairs = (points: readonly Point[]): readonly (readonly [Point, Point])[] =>
  points.slice(1).map((p, i) => [points[i] as Point, p] as const);

function crossesOutline(leader: readonly Point[], outline: readonly Point[]): boolean {
  return pairs([...outline, outline[0] as Point]).some(([a, b]) =>
    crosses(leader[0] as Point, leader[1] as Point, a, b),
  );
}

function crosses(a: Point, b: Point, c: Point, d: Point): boolean {
  const side = (p: Point, q: Point, r: Point): number =>
    (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

function distanceTo(p: Point, [a, b]: readonly [Point, Point]): number {
  const size = (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
  const t =
    size === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / size));
  return Math.hypot(p.x - a.x - t * (b.x - a.x), p.y - a.y - t * (b.y - a.y));
}
