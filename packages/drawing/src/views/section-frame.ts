/** Members of the typical frame as the section shows them, with places to point at. */
import { crossingsAt, innerFilm, type Rail, type Shelter } from '@tautline/shelter';
import { breadthOf, depthOf } from '../describe.ts';
import type { Frame } from '../scene/frame.ts';
import { band, pointAlong } from '../scene/outline.ts';
import {
  box,
  circle,
  line,
  type Point,
  path,
  point,
  polygon,
  polyline,
  type Shape,
} from '../scene/shapes.ts';
import type { Anchor, Piece } from './anchors.ts';
import { footShapes } from './ground.ts';
import { allPosts, allRails } from './members.ts';

/** Roof members true to their thickness, with feet, ties, filling and joints. */
export function roofPiece(shelter: Shelter, frame: Frame): Piece {
  const { roof } = shelter;
  const points = roof.line.map(({ x, y }) => point(x, y));
  const shapes: Shape[] = [];
  const anchors: Anchor[] = [];
  const third = pointAlong(points, 0.3 * lengthOf(points)).at;
  anchors.push({
    part: roof.id,
    at: frame.at(third.x, third.y),
    toward: point(0.7, 1),
  });
  if (roof.type === 'cap' || roof.type === 'inflated') {
    const covered = shelter.covers.some((cover) => cover.place === 'roof');
    if (roof.type === 'cap') shapes.push(polyline(roof.id, 'sheet', frame.all(points)));
    else if (!covered) shapes.push(polyline(roof.id, 'film', frame.all(points)));
    if (roof.type === 'inflated') {
      const inner = innerFilm(roof).map(({ x, y }) => point(x, y));
      shapes.push(polyline(roof.id, 'film', frame.all(inner)));
      const lowest = pointAlong(inner, 0.35 * lengthOf(inner)).at;
      anchors[0] = { part: roof.id, at: frame.at(lowest.x, lowest.y), toward: point(0.3, 1) };
    }
    return { shapes, anchors };
  }
  const depth = depthOf(roof.member);
  if (roof.foot) {
    const first = points[0] as Point;
    const last = points[points.length - 1] as Point;
    shapes.push(...footShapes(roof.foot, frame, first.x, depth, 1));
    shapes.push(...footShapes(roof.foot, frame, last.x, depth, -1));
    const deep = Math.max(0.05, roof.foot.driven * 0.6);
    const out = roof.foot.stub && roof.foot.lean ? deep / Math.tan(roof.foot.lean) : 0;
    anchors.push({ part: roof.foot.id, at: frame.at(last.x + out, -deep), toward: point(1, 0.4) });
  }
  shapes.push(polygon(roof.id, 'member', frame.all(band(points, depth))));
  if (depth * frame.scale > 3) shapes.push(polyline(roof.id, 'centre-line', frame.all(points)));
  if (roof.type === 'rafters' && roof.tie) {
    const y = roof.springing + roof.tie.height;
    const cut = crossingsAt(roof.line, y);
    if (cut.length >= 2) {
      const ends = [point(Math.min(...cut), y), point(Math.max(...cut), y)] as const;
      shapes.push(polygon(roof.tie.id, 'member', frame.all(band(ends, depthOf(roof.tie.member)))));
      anchors.push({
        part: roof.tie.id,
        at: frame.at(ends[1].x * 0.8 + ends[0].x * 0.2, y),
        toward: point(0.4, 1),
      });
    }
  }
  if (roof.filled) {
    const whole = lengthOf(points);
    for (const side of [points, [...points].reverse()]) {
      const filled = side.filter((_, i) => lengthOf(side.slice(0, i + 1)) <= (roof.filled?.upTo ?? 0));
      if (filled.length > 1 && whole > 0)
        shapes.push(polygon(roof.id, 'concrete', frame.all(band(filled, depth * 0.7))));
    }
  }
  for (const joint of [
    ...roof.joints,
    ...(roof.type === 'bows' ? [roof.crownFitting] : [roof.peakJoint, roof.eaveJoint]),
  ]) {
    if (!joint) continue;
    const spots = [joint.at];
    if (roof.type === 'rafters' && joint === roof.eaveJoint) spots.push(lengthOf(points) - joint.at);
    for (const spot of spots) {
      const { at, along } = pointAlong(points, spot);
      const half = Math.max(joint.item.insertion, 4 / frame.scale);
      const sleeve = stretchOf(points, spot - half, spot + half);
      shapes.push(polygon(joint.id, 'joint', frame.all(band(sleeve, depth + 3 / frame.scale))));
      shapes.push(line(joint.id, 'joint', ...across(frame, at, along, depth + 5 / frame.scale)));
      anchors.push({
        part: joint.id,
        at: frame.at(at.x, at.y),
        toward: point(at.x < shelter.width / 2 ? -1 : 1, -0.8),
      });
    }
  }
  return { shapes, anchors };
}

/** The part of a line between two lengths along it. */
function stretchOf(points: readonly Point[], from: number, to: number): readonly Point[] {
  const ends = [Math.max(0, from), Math.min(lengthOf(points), to)] as const;
  let along = 0;
  const inside = points.filter((p, i) => {
    const before = points[i - 1];
    if (before) along += Math.hypot(p.x - before.x, p.y - before.y);
    return along > ends[0] + 1e-6 && along < ends[1] - 1e-6;
  });
  return [pointAlong(points, ends[0]).at, ...inside, pointAlong(points, ends[1]).at];
}

function across(frame: Frame, at: Point, along: Point, width: number): readonly [Point, Point] {
  return [
    frame.at(at.x - (along.y * width) / 2, at.y + (along.x * width) / 2),
    frame.at(at.x + (along.y * width) / 2, at.y - (along.x * width) / 2),
  ];
}

function lengthOf(points: readonly Point[]): number {
  let sum = 0;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1] as Point, points[i] as Point];
    sum += Math.hypot(b.x - a.x, b.y - a.y);
  }
  return sum;
}

/** Posts of every row with their feet. */
export function postPieces(shelter: Shelter, frame: Frame): Piece {
  const shapes: Shape[] = [];
  const anchors: Anchor[] = [];
  for (const row of allPosts(shelter)) {
    const depth = depthOf(row.member);
    for (const x of row.lines) {
      const inward = x < shelter.width / 2 ? 1 : -1;
      shapes.push(...footShapes(row.foot, frame, x, depth, row.where === 'centre' ? 0 : inward));
      shapes.push(polygon(row.id, 'post', frame.all(band([point(x, 0), point(x, row.height)], depth))));
      if (row.filled) shapes.push(line(row.id, 'centre-line', frame.at(x, 0), frame.at(x, row.height)));
    }
    const last = row.lines[row.lines.length - 1] ?? 0;
    anchors.push({
      part: row.id,
      at: frame.at(last, row.height * 0.35),
      toward: point(-1, 0.3),
    });
    anchors.push({
      part: row.foot.id,
      at: frame.at(last, -row.foot.driven * 0.6),
      toward: point(1, 0.3),
    });
  }
  return { shapes, anchors };
}

/** Rails cut across. */
export function railPieces(shelter: Shelter, frame: Frame): Piece {
  const shapes: Shape[] = [];
  const anchors: Anchor[] = [];
  for (const rail of allRails(shelter)) {
    rail.lines.forEach(({ x, y }) => {
      shapes.push(...railEnd(rail, frame, x, y));
    });
    const at = rail.lines[rail.lines.length - 1];
    if (at)
      anchors.push({
        part: rail.id,
        at: frame.at(at.x, at.y),
        toward: point(at.x > shelter.width / 2 ? -0.6 : 0.6, 1),
      });
  }
  return { shapes, anchors };
}

/** A rail cut across: ring, disc or board with a cross. */
function railEnd(rail: Rail, frame: Frame, x: number, y: number): readonly Shape[] {
  const { member } = rail;
  const at = frame.at(x, y);
  if (member.kind === 'cable')
    return [circle(rail.id, 'cable', at, Math.max(2.6, (member.diameter / 2) * frame.scale))];
  const { section } = member;
  if (section.shape === 'rectangle') {
    const half = [(breadthOf(member) / 2) * frame.scale, (depthOf(member) / 2) * frame.scale] as const;
    const [w, h] = [Math.max(2, half[0]), Math.max(2, half[1])];
    const [a, b] = [point(at.x - w, at.y - h), point(at.x + w, at.y + h)];
    return [
      box(rail.id, 'rail', a, b),
      path(rail.id, 'bar-hatch', [
        [a, b],
        [point(a.x, b.y), point(b.x, a.y)],
      ]),
    ];
  }
  const radius = Math.max(3, (section.outside / 2) * frame.scale);
  const ring = circle(rail.id, 'rail', at, radius);
  return section.shape === 'round-hollow'
    ? [ring, circle(rail.id, 'joint', at, Math.max(1.2, radius - Math.max(1.2, section.wall * frame.scale)))]
    : [ring];
}

/** Braces, guys and ties; those along the house are seen on end and drawn dashed. */
export function bracePieces(shelter: Shelter, frame: Frame): Piece {
  const shapes: Shape[] = [];
  const anchors: Anchor[] = [];
  for (const brace of shelter.braces) {
    const both = brace.plane === 'across' && brace.from.x !== brace.to.x && brace.count > 1;
    const mirrored = (x: number): number => shelter.width - x;
    const runs = [[point(brace.from.x, brace.from.y), point(brace.to.x, brace.to.y)] as const];
    const first = runs[0] as readonly [Point, Point];
    if (
      both ||
      (brace.plane === 'along' && brace.count > 1 && Math.abs(brace.from.x - shelter.width / 2) > 1e-6)
    )
      runs.push([point(mirrored(first[0].x), first[0].y), point(mirrored(first[1].x), first[1].y)]);
    for (const [a, b] of runs) {
      if (brace.plane === 'along')
        shapes.push(line(brace.id, 'member-hidden', frame.at(a.x, a.y), frame.at(b.x, b.y)));
      else if (brace.member.kind === 'cable')
        shapes.push(line(brace.id, 'cable', frame.at(a.x, a.y), frame.at(b.x, b.y)));
      else shapes.push(polygon(brace.id, 'post', frame.all(band([a, b], depthOf(brace.member)))));
    }
    const [a, b] = runs[runs.length - 1] as readonly [Point, Point];
    anchors.push({
      part: brace.id,
      at: frame.at((a.x + b.x) / 2, (a.y + b.y) / 2),
      toward: point(-1, 0.5),
    });
    if (brace.foot && brace.plane === 'across') {
      const low = brace.from.y < brace.to.y ? brace.from : brace.to;
      shapes.push(...footShapes(brace.foot, frame, low.x, depthOf(brace.member), 0));
      anchors.push({
        part: brace.foot.id,
        at: frame.at(low.x, -brace.foot.driven * 0.7),
        toward: point(-1, 0.4),
      });
    }
  }
  return { shapes, anchors };
}
