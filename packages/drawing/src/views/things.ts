/** Benches, beds, tanks and obstacles: quiet outlines with their names, as each view sees them. */
import type { Shelter, Thing } from '@tautline/shelter';
import type { Frame } from '../scene/frame.ts';
import { textWidth } from '../scene/lettering.ts';
import { hatch } from '../scene/outline.ts';
import { box, line, type Point, path, point, type Shape, text } from '../scene/shapes.ts';
import type { Anchor, Piece } from './anchors.ts';

/** Height a thing is drawn with where none is said, m: a bed is a little raised, the rest lies flat. */
export const FLAT = 0.06;
/** Greatest distance of the legs of a bench, m, for the picture. */
const LEGS = 1.8;
/** Thickness of a bench top, m, for the picture. */
const top = 0.05;

/** Things of a section: their front ends, true to width and height, and the room to keep free above. */
export function thingPieces(shelter: Shelter, frame: Frame): Piece {
  const shapes: Shape[] = [];
  const anchors: Anchor[] = [];
  for (const thing of shelter.things) {
    for (const left of thing.lefts)
      shapes.push(
        ...upright(thing, frame, left, left + thing.width),
        ...nameOn(thing, frame, left, thing.width),
      );
    const right = (thing.lefts.at(-1) ?? 0) + thing.width;
    anchors.push({
      part: thing.id,
      at: frame.at(right - thing.width * 0.2, Math.max(thing.height, FLAT)),
      toward: point(0.6, -1),
    });
  }
  return { shapes, anchors };
}

/** Things of a side view: one stands before the other. */
export function thingsFromSide(shelter: Shelter, frame: Frame): Piece {
  const shapes: Shape[] = [];
  const anchors: Anchor[] = [];
  for (const thing of shelter.things) {
    shapes.push(...upright(thing, frame, thing.starts, thing.starts + thing.length));
    anchors.push({
      part: thing.id,
      at: frame.at(thing.starts + thing.length * 0.35, Math.max(thing.height, FLAT)),
      toward: point(-0.5, -1),
    });
  }
  return { shapes, anchors };
}

/** Things of a plan: the house runs to the right, its left side lies at the bottom. */
export function thingsFromAbove(shelter: Shelter, frame: Frame): Piece {
  const shapes: Shape[] = [];
  const anchors: Anchor[] = [];
  for (const thing of shelter.things) {
    for (const left of thing.lefts) {
      const [a, b] = [
        frame.at(thing.starts, left),
        frame.at(thing.starts + thing.length, left + thing.width),
      ];
      shapes.push(box(thing.id, 'thing-top', a, b));
      if (thing.kind === 'obstacle') shapes.push(...diagonals(thing, a, b));
      if (thing.kind === 'bed') shapes.push(path(thing.id, 'thing-hatch', hatch(corners(a, b), 45, 12)));
      if (thing.kind === 'tank') shapes.push(box(thing.id, 'water', inset(a, b, 4), inset(b, a, 4)));
    }
    const left = thing.lefts.at(-1) ?? 0;
    anchors.push({
      part: thing.id,
      // Away from the frames over it, which stand at even places.
      at: frame.at(middleOfBay(thing.starts + thing.length * 0.5, shelter), left + thing.width * 0.6),
      toward: point(0.5, 1),
    });
  }
  return { shapes, anchors };
}

/** Middle of the bay that a place along the house lies in, m. */
function middleOfBay(z: number, { roof: { stations } }: Shelter): number {
  const next = stations.findIndex((station) => station > z);
  const [a, b] = [stations[next - 1], stations[next]];
  return a === undefined || b === undefined ? z : (a + b) / 2;
}

/** Where the legs of a bench stand between its two ends, m: a long one on two would not stand. */
export function benchLegs(from: number, to: number): readonly number[] {
  const back = Math.min(0.1 * (to - from), 0.3);
  const gaps = Math.max(1, Math.ceil((to - from - 2 * back) / LEGS));
  return Array.from({ length: gaps + 1 }, (_, n) => from + back + (n * (to - from - 2 * back)) / gaps);
}

/** A thing seen level, between two places of the view (m). */
function upright(thing: Thing, frame: Frame, from: number, to: number): readonly Shape[] {
  const high = Math.max(thing.height, FLAT);
  const [a, b] = [frame.at(from, 0), frame.at(to, high)];
  const free = thing.clearance > 0 && thing.height > 0 ? [keptFree(thing, frame, from, to)] : [];
  if (thing.kind === 'bench' && thing.height > 0) {
    const legs = benchLegs(from, to);
    return [
      ...free,
      box(thing.id, 'thing', frame.at(from, high - top), b),
      ...legs.map((x) => line(thing.id, 'thing', frame.at(x, 0), frame.at(x, high - top))),
    ];
  }
  const outline = box(thing.id, 'thing', a, b);
  if (thing.kind === 'obstacle') return [...free, outline, ...diagonals(thing, a, b)];
  if (thing.kind === 'tank') {
    // Water stands a little below the rim: a level line with shorter ones under it.
    const level = frame.at(0, high * 0.9).y;
    const middle = (a.x + b.x) / 2;
    const strokes = [1, 0.5, 0.3, 0.12].map((share, n) => {
      const half = ((b.x - a.x) / 2) * share;
      return [point(middle - half, level + 5 * n), point(middle + half, level + 5 * n)];
    });
    return [...free, outline, path(thing.id, 'thing-hatch', strokes)];
  }
  return [...free, outline, path(thing.id, 'thing-hatch', hatch(corners(a, b), 45, 6))];
}

/** The room above a thing that was asked for, as a dashed box. */
function keptFree(thing: Thing, frame: Frame, from: number, to: number): Shape {
  const strokes = [
    [frame.at(from, thing.height), frame.at(from, thing.height + thing.clearance)],
    [frame.at(from, thing.height + thing.clearance), frame.at(to, thing.height + thing.clearance)],
    [frame.at(to, thing.height + thing.clearance), frame.at(to, thing.height)],
  ];
  return path(thing.id, 'clearance', strokes);
}

/** The name inside the front of a thing, where it has room; the key names it in any case, and a bench needs none. */
function nameOn(thing: Thing, frame: Frame, left: number, width: number): readonly Shape[] {
  if (thing.kind === 'bench') return [];
  if (textWidth(thing.name, 11) > width * frame.scale - 6 || thing.height * frame.scale < 30) return [];
  // The diagonals of an obstacle cross in its middle.
  const at = frame.at(left + width / 2, thing.height * (thing.kind === 'obstacle' ? 0.84 : 0.45));
  return [text(thing.id, 'note', point(at.x, at.y + 4), thing.name, { size: 11, anchor: 'middle' })];
}

const corners = (a: Point, b: Point): readonly Point[] => [a, point(b.x, a.y), b, point(a.x, b.y)];

const inset = (a: Point, b: Point, by: number): Point =>
  point(a.x + Math.sign(b.x - a.x) * by, a.y + Math.sign(b.y - a.y) * by);

const diagonals = (thing: Thing, a: Point, b: Point): readonly Shape[] => [
  path(thing.id, 'thing-hatch', [
    [a, b],
    [point(a.x, b.y), point(b.x, a.y)],
  ]),
];
