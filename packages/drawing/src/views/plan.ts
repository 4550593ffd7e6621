/** The house from above: the length runs to the right, the left foot line lies at the bottom. */
import { format } from '@tautline/quantity';
import type { Shelter } from '@tautline/shelter';
import { breadthOf, describeParts } from '../describe.ts';
import { placeBalloons } from '../scene/balloons.ts';
import { boundsOf } from '../scene/bounds.ts';
import { frameFor, roomOf } from '../scene/frame.ts';
import { keptToSheet } from '../scene/kept.ts';
import { band } from '../scene/outline.ts';
import {
  box,
  circle,
  type Drawing,
  line,
  type Point,
  path,
  point,
  polygon,
  type Shape,
  text,
  type ViewOptions,
} from '../scene/shapes.ts';
import { finishSheet } from '../scene/sheet.ts';
import { roofReach } from '../skins.ts';
import { type Anchor, numberParts } from './anchors.ts';
import { doorsFromAbove, uprightsFromAbove } from './ends.ts';
import { allPosts, allRails, anchorOut, bracePlaces } from './members.ts';
import { planDimensions } from './plan-dimensions.ts';
import { coverShapes } from './plan-skins.ts';
import { thingsFromAbove } from './things.ts';

/** Plan of frames, rails, posts, covers and crops, with spacings and the north arrow. */
export const planView = keptToSheet(drawPlan);

function drawPlan(shelter: Shelter, options: ViewOptions, share: number): Drawing {
  const frame = frameFor(shelter.length, shelter.width, roomOf(860, options, 130), 420, share);
  const shapes: Shape[] = [];
  const anchors: Anchor[] = [];
  const { roof, width, length } = shelter;
  const xs = roofReach(roof).map((p) => p.x);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];

  shapes.push(box(shelter.id, 'footprint', frame.at(0, 0), frame.at(length, width)));
  shapes.push(...coverShapes(shelter, frame, left, right, anchors));
  const things = thingsFromAbove(shelter, frame);
  shapes.push(...things.shapes);
  anchors.push(...things.anchors);
  for (const crop of shelter.crops) {
    if (width - 2 * crop.fromSide <= 0) continue;
    const [a, b] = [frame.at(0, crop.fromSide), frame.at(length, width - crop.fromSide)];
    shapes.push(box(crop.id, 'crop', a, b));
    anchors.push({ part: crop.id, at: point(a.x + (b.x - a.x) * 0.63, b.y), toward: point(0.4, 1) });
  }
  for (const rail of allRails(shelter)) {
    rail.lines.forEach(({ x }) => {
      const ends = [point(0, x), point(length, x)];
      shapes.push(
        rail.member.kind === 'cable'
          ? line(rail.id, 'cable', ...(frame.all(ends) as [Point, Point]))
          : polygon(
              rail.id,
              'rail',
              frame.all(band(ends, Math.max(breadthOf(rail.member), 2.2 / frame.scale))),
            ),
      );
    });
    const x = rail.lines[rail.lines.length - 1]?.x ?? 0;
    const share = rail.role === 'ridge' ? 0.3 : rail.role === 'eave' ? 0.42 : 0.55;
    const bay = roof.spacing / 2;
    anchors.push({
      part: rail.id,
      at: frame.at(middleOfBay(length * share, roof.spacing, bay), x),
      toward: point(0.5, 1),
    });
    if (rail.endAnchor)
      for (const z of [-anchorOut(rail), length + anchorOut(rail)]) {
        const at = frame.at(z, x);
        shapes.push(line(rail.endAnchor.id, 'cable', frame.at(z < 0 ? 0 : length, x), at));
        shapes.push(...cross(rail.endAnchor.id, at));
        if (z > 0) anchors.push({ part: rail.endAnchor.id, at, toward: point(0.4, 1) });
      }
  }
  for (const z of roof.stations) {
    if (roof.type === 'bows' || roof.type === 'rafters') {
      const thick = Math.max(breadthOf(roof.member), 2.4 / frame.scale);
      shapes.push(polygon(roof.id, 'member', frame.all(band([point(z, left), point(z, right)], thick))));
    } else if (roof.type === 'inflated')
      shapes.push(line(roof.id, 'strap', frame.at(z, left), frame.at(z, right)));
  }
  if (roof.type === 'cap')
    roof.stations.slice(1).forEach((z, n) => {
      const [from, to] = [(roof.stations[n] ?? 0) + 0.01, z - 0.01];
      shapes.push(box(roof.id, 'sheet', frame.at(from, left), frame.at(to, right)));
      if (roof.foot.kind !== 'ballast') return;
      const middle = (from + to) / 2;
      for (const [near, far] of [
        [left, left - SACK.across],
        [right, right + SACK.across],
      ] as const)
        shapes.push(
          box(
            roof.foot.id,
            'foot',
            frame.at(middle - SACK.along / 2, near),
            frame.at(middle + SACK.along / 2, far),
          ),
        );
      anchors.push({
        part: roof.foot.id,
        at: frame.at(middle, right + SACK.across / 2),
        toward: point(1, -0.6),
      });
    });
  const typical = roof.stations[Math.floor(roof.stations.length / 3)] ?? 0;
  anchors.push({ part: roof.id, at: frame.at(typical, width * 0.76), toward: point(1, -0.5) });
  if (roof.type === 'bows' && roof.foot) {
    for (const z of roof.stations)
      for (const x of [left, right]) shapes.push(...cross(roof.foot.id, frame.at(z, x)));
    anchors.push({ part: roof.foot.id, at: frame.at(typical, right), toward: point(0.5, -1) });
  }
  for (const row of allPosts(shelter)) {
    const half = Math.max((breadthOf(row.member) / 2) * frame.scale, 3);
    for (const z of row.stations)
      for (const x of row.lines) {
        const at = frame.at(z, x);
        shapes.push(
          row.member.section.shape === 'rectangle'
            ? box(row.id, 'post', point(at.x - half, at.y - half), point(at.x + half, at.y + half))
            : circle(row.id, 'post', at, half),
        );
        if (row.foot.across)
          shapes.push(
            circle(row.foot.id, 'hole', at, Math.max((row.foot.across / 2) * frame.scale, half + 2)),
          );
        else shapes.push(...cross(row.foot.id, at));
      }
    const z = row.stations[Math.min(1, row.stations.length - 1)] ?? 0;
    anchors.push({
      part: row.id,
      at: frame.at(z, row.lines[row.lines.length - 1] ?? 0),
      toward: point(0.7, 1),
    });
  }
  for (const brace of shelter.braces) {
    for (const [a, b] of bracePlaces(shelter, brace)) {
      shapes.push(
        line(
          brace.id,
          brace.member.kind === 'cable' ? 'cable' : 'member-hidden',
          frame.at(a.x, a.y),
          frame.at(b.x, b.y),
        ),
      );
      if (brace.foot) shapes.push(...cross(brace.foot.id, frame.at(b.x, b.y)));
    }
    const [a, b] = bracePlaces(shelter, brace)[0] as readonly [Point, Point];
    anchors.push({ part: brace.id, at: frame.at((a.x + b.x) / 2, (a.y + b.y) / 2), toward: point(0.3, 1) });
  }
  for (const piece of [uprightsFromAbove(shelter, frame), doorsFromAbove(shelter, frame)]) {
    shapes.push(...piece.shapes);
    anchors.push(...piece.anchors);
  }
  const body: Shape[] = [...shapes, ...planDimensions(shelter, frame, shapes, options.system)];
  const { right: edge, top } = boundsOf(shapes);
  // Beside the house, or over it where the sheet is narrow.
  body.push(
    ...(options.wide === undefined || options.wide > 800
      ? northArrow(edge + 62, top + 34, shelter.orientation)
      : northArrow(edge - 30, boundsOf(body).top - 50, shelter.orientation)),
  );
  const described = describeParts(shelter, options.system);
  const { key, tags } = numberParts(described, anchors);
  body.push(...placeBalloons(tags, body));
  const heading = `${format(shelter.orientation, 'angle', options.system)} clockwise from north`;
  return finishSheet(body, {
    view: 'plan',
    title: `${shelter.name}: plan`,
    subtitle: `Seen from above. The house runs ${heading}.`,
    description: described.map(({ words }) => words).join('. '),
    labels: described.map(({ part, words }) => ({ part, label: words })),
    key,
    notes: [],
    scale: frame.scale,
    ...options,
  });
}

/** What holds down the rim of a cap, for the picture, m. */
const SACK = { along: 0.28, across: 0.13 } as const;

/** Middle of the bay nearest to a place along the house, m. */
const middleOfBay = (z: number, spacing: number, half: number): number =>
  Math.floor(z / spacing) * spacing + half;

const cross = (part: string, { x, y }: Point): readonly Shape[] => [
  path(part, 'foot', [
    [point(x - 3.5, y - 3.5), point(x + 3.5, y + 3.5)],
    [point(x - 3.5, y + 3.5), point(x + 3.5, y - 3.5)],
  ]),
];

/** North arrow: the page's right is the house's length axis, which points `orientation` clockwise from north. */
function northArrow(x: number, y: number, orientation: number): readonly Shape[] {
  const u = point(Math.cos(orientation), -Math.sin(orientation));
  const side = point(-u.y, u.x);
  const tip = point(x + u.x * 26, y + u.y * 26);
  const tail = point(x - u.x * 20, y - u.y * 20);
  return [
    circle('north', 'footprint', point(x, y), 27),
    line('north', 'north', tail, tip),
    polygon('north', 'north', [
      tip,
      point(x + u.x * 10 + side.x * 6, y + u.y * 10 + side.y * 6),
      point(x + u.x * 10, y + u.y * 10),
    ]),
    text('north', 'note', point(x + u.x * 38, y + u.y * 38 + 4), 'N', {
      size: 12,
      anchor: 'middle',
      bold: true,
    }),
  ];
}
