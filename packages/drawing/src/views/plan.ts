/** The house from above: the length runs to the right, the left foot line lies at the bottom. */
import { format, type System } from '@tautline/quantity';
import type { Shelter } from '@tautline/shelter';
import { breadthOf, describeParts } from '../describe.ts';
import { placeBalloons } from '../scene/balloons.ts';
import { boundsOf } from '../scene/bounds.ts';
import type { Measured } from '../scene/dimension.ts';
import { type Frame, frameFor, roomOf } from '../scene/frame.ts';
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
import { surroundDimensions } from '../scene/surround.ts';
import { roofReach } from '../skins.ts';
import { type Anchor, numberParts } from './anchors.ts';
import { doorsFromAbove, uprightsFromAbove } from './ends.ts';
import { allPosts, allRails, anchorOut, bayMeasures, bayNoun, bracePlaces, postBays } from './members.ts';
import { skinStyle } from './skin-faces.ts';
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

/** Middle of the bay nearest to a place along the house, m. */
const middleOfBay = (z: number, spacing: number, half: number): number =>
  Math.floor(z / spacing) * spacing + half;

const cross = (part: string, { x, y }: Point): readonly Shape[] => [
  path(part, 'foot', [
    [point(x - 3.5, y - 3.5), point(x + 3.5, y + 3.5)],
    [point(x - 3.5, y + 3.5), point(x + 3.5, y - 3.5)],
  ]),
];

function coverShapes(
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

function planDimensions(
  shelter: Shelter,
  frame: Frame,
  drawn: readonly Shape[],
  system: System,
): readonly Shape[] {
  const bounds = boundsOf(drawn);
  const m = (si: number): string => format(si, 'length', system);
  const measure = (
    part: string,
    name: string,
    value: number,
    from: Point,
    to: Point,
    words?: string,
  ): Measured => ({
    part,
    name,
    value,
    text: words ?? `${name} ${m(value)}`,
    from: frame.at(from.x, from.y),
    to: frame.at(to.x, to.y),
  });
  const below: Measured[] = [
    measure(shelter.id, 'length', shelter.length, point(0, 0), point(shelter.length, 0)),
    ...bayMeasures(shelter.roof.id, bayNoun(shelter.roof), shelter.roof.stations, system).map((bay) =>
      measure(bay.part, bay.name, bay.value, point(bay.from, 0), point(bay.to, 0), bay.text),
    ),
  ];
  const above = postBays(shelter, system).map((bay) =>
    measure(
      bay.part,
      bay.name,
      bay.value,
      point(bay.from, shelter.width),
      point(bay.to, shelter.width),
      bay.text,
    ),
  );
  const side = [measure(shelter.id, 'width', shelter.width, point(0, 0), point(0, shelter.width))];
  for (const crop of shelter.crops)
    if (crop.fromSide > 0)
      side.push(measure(crop.id, 'first row', crop.fromSide, point(0, 0), point(0, crop.fromSide)));
  for (const thing of shelter.things) {
    const across = thing.lefts[0] ?? 0;
    const { name, starts, length } = thing;
    if (starts > 1e-3)
      above.push(
        measure(
          thing.id,
          `${name} from front`,
          starts,
          point(0, shelter.width),
          point(starts, shelter.width),
        ),
      );
    above.push(
      measure(thing.id, name, length, point(starts, shelter.width), point(starts + length, shelter.width)),
    );
    if (across > 1e-3) side.push(measure(thing.id, 'from side', across, point(0, 0), point(0, across)));
    side.push(measure(thing.id, name, thing.width, point(0, across), point(0, across + thing.width)));
  }
  return surroundDimensions(bounds, { below, above, left: side });
}

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
