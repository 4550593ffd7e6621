/** Members of the typical frame as the section shows them, with places to point at. */
import {
  crossingsAt,
  type Foot,
  innerFilm,
  jointReach,
  type Posts,
  type Rail,
  type Shelter,
} from '@tautline/shelter';
import { breadthOf, depthOf } from '../describe.ts';
import type { Frame } from '../scene/frame.ts';
import { band, hatch, pointAlong } from '../scene/outline.ts';
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
import { roofReach } from '../skins.ts';
import type { Anchor, Piece } from './anchors.ts';
import { footShapes, outAt, stubAbove } from './ground.ts';
import { allPosts, allRails } from './members.ts';

/** Roof members true to their thickness, with feet, ties, filling and joints. */
export function roofPiece(shelter: Shelter, frame: Frame): Piece {
  const { roof } = shelter;
  const points = roof.line.map(({ x, y }) => point(x, y));
  const reach = roofReach(roof);
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
    } else {
      const [first, last] = [points[0] as Point, points.at(-1) as Point];
      for (const [x, inward] of [
        [first.x, 1],
        [last.x, -1],
      ] as const)
        shapes.push(...rimShapes(roof.foot, frame, x, inward));
      anchors.push({ part: roof.foot.id, at: frame.at(last.x + 0.06, 0.04), toward: point(1, -0.6) });
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
    anchors.push({
      part: roof.foot.id,
      at: frame.at(last.x + outAt(roof.foot, deep), -deep),
      toward: point(1, 0.4),
    });
  }
  shapes.push(polygon(roof.id, 'member', frame.all(band(reach, depth))));
  if (depth * frame.scale > 3) shapes.push(polyline(roof.id, 'centre-line', frame.all(reach)));
  if (roof.foot && depth * frame.scale > 6)
    shapes.push(
      ...insideMember(roof.foot, frame, points),
      ...insideMember(roof.foot, frame, [...points].reverse()),
    );
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
      // A plate has no socket: it is drawn as long as the member is deep.
      const half = Math.max(
        jointReach(joint.item, roof.member),
        joint.item.form === 'plate' ? depth : 0,
        4 / frame.scale,
      );
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

/** What holds the rim of a cap: a sack or block outside it, or the foot it stands on. */
function rimShapes(foot: Foot, frame: Frame, x: number, inward: -1 | 1): readonly Shape[] {
  if (foot.kind !== 'ballast') return footShapes(foot, frame, x, 0, inward);
  const outline = [
    [0, 0],
    [0.02, 0.07],
    [0.1, 0.08],
    [0.13, 0],
  ].map(([out = 0, up = 0]) => frame.at(x - inward * out, up));
  return [polygon(foot.id, 'foot', outline), path(foot.id, 'bar-hatch', hatch(outline, 45, 6))];
}

/** The part of a stub that stands inside or beside the member follows it. */
function insideMember(foot: Foot, frame: Frame, side: readonly Point[]): readonly Shape[] {
  const above = stubAbove(foot);
  if (above === 0 || foot.lean === undefined) return [];
  const thick = Math.max(foot.stub ? depthOf(foot.stub) : 0, 2 / frame.scale);
  return [polygon(foot.id, 'hole', frame.all(band(stretchOf(side, 0, above), thick)))];
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
      if (row.filled) shapes.push(...filling(row, frame, x, depth));
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

/** What fills a post, from the ground up, with the strokes of concrete. */
function filling({ id, filled, height }: Posts, frame: Frame, x: number, depth: number): readonly Shape[] {
  const top = Math.min(height, filled?.upTo ?? 0);
  const inside = frame.all(band([point(x, 0), point(x, top)], depth * 0.7));
  return [polygon(id, 'concrete', inside), path(id, 'bar-hatch', hatch(inside, 45, 6))];
}

/** Rails cut across; purlins that are not fitted into the frames lie against their inner side. */
export function railPieces(shelter: Shelter, frame: Frame): Piece {
  const shapes: Shape[] = [];
  const anchors: Anchor[] = [];
  for (const rail of allRails(shelter)) {
    const lines = rail.lines.map((line) => seatOf(rail, shelter, line));
    for (const { x, y } of lines) shapes.push(...railEnd(rail, frame, x, y));
    const at = lines[lines.length - 1];
    if (at)
      anchors.push({
        part: rail.id,
        at: frame.at(at.x, at.y),
        toward: point(at.x > shelter.width / 2 ? -0.6 : 0.6, 1),
      });
  }
  return { shapes, anchors };
}

/** Where a rail is drawn: against the inner side of the roof for purlins that do not share its plane. */
function seatOf(rail: Rail, { roof }: Shelter, at: Rail['lines'][number]): Point {
  const fitted = rail.joint !== undefined && ['cross', 'tee', 'corner', 'peak'].includes(rail.joint.form);
  if (rail.role !== 'purlin' || fitted || (roof.type !== 'bows' && roof.type !== 'rafters')) return at;
  const line = roof.line.map(({ x, y }) => point(x, y));
  const nearest = roof.line.reduce((best, p) =>
    Math.hypot(p.x - at.x, p.y - at.y) < Math.hypot(best.x - at.x, best.y - at.y) ? p : best,
  );
  const { along } = pointAlong(line, at.s ?? nearest.s);
  const down = (depthOf(roof.member) + depthOf(rail.member)) / 2;
  return point(at.x + along.y * down, at.y - along.x * down);
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
  // A bore too small to be seen is left out.
  return section.shape === 'round-hollow' && radius > 4
    ? [ring, circle(rail.id, 'bore', at, radius - Math.max(1.4, section.wall * frame.scale))]
    : [ring];
}
