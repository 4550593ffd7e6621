/** The house from its right side: length to the right, height up. */
import { format } from '@tautline/quantity';
import type { Brace, Cap, Inflated, Roof, Shelter } from '@tautline/shelter';
import { breadthOf, depthOf, describeParts } from '../describe.ts';
import { placeBalloons } from '../scene/balloons.ts';
import { type Frame, frameFor, roomOf } from '../scene/frame.ts';
import { placeTexts } from '../scene/free-text.ts';
import { keptToSheet } from '../scene/kept.ts';
import { band } from '../scene/outline.ts';
import {
  type Drawing,
  line,
  type Point,
  point,
  polygon,
  type Shape,
  type ViewOptions,
} from '../scene/shapes.ts';
import { finishSheet } from '../scene/sheet.ts';
import { roofReach } from '../skins.ts';
import { type Anchor, numberParts } from './anchors.ts';
import { footShapes, groundLine } from './ground.ts';
import { allPosts, allRails, anchorOut, braceRuns } from './members.ts';
import { overlayShapes, overlayTexts, type SectionOverlays } from './overlays.ts';
import { sideDimensions } from './side-dimensions.ts';
import { skins } from './side-skins.ts';
import { thingsFromSide } from './things.ts';

/** Elevation of one long side: frames, rails, posts, braces, guys and covers, with heights and spacings. */
export const sideView = keptToSheet(drawSide);

function drawSide(
  shelter: Shelter,
  options: ViewOptions & { readonly overlays?: SectionOverlays },
  share: number,
): Drawing {
  const { roof, length } = shelter;
  const ys = roofReach(roof).map((p) => p.y);
  const crown = Math.max(...ys);
  const low = Math.min(...ys);
  const frame = frameFor(length, crown, roomOf(860, options), 330, share);
  const ends = shelter.braces.flatMap((brace) => [brace.from.z, brace.to.z, length - brace.to.z]);
  const reach = Math.max(
    0.5,
    ...allRails(shelter).map((rail) => (rail.endAnchor ? anchorOut(rail) + 0.4 : 0)),
  );
  const shapes: Shape[] = [
    ...groundLine(
      frame,
      Math.min(-reach, ...ends.map((z) => z - 0.3)),
      Math.max(length + reach, ...ends.map((z) => z + 0.3)),
    ),
  ];
  const anchors: Anchor[] = [];
  const things = thingsFromSide(shelter, frame);
  shapes.push(...things.shapes, ...skins(shelter, frame, low, crown, anchors));
  anchors.push(...things.anchors);

  allPosts(shelter).forEach((row, n) => {
    const wide = breadthOf(row.member);
    for (const z of row.stations) {
      shapes.push(...footShapes(row.foot, frame, z, wide, 0));
      shapes.push(polygon(row.id, 'post', frame.all(band([point(z, 0), point(z, row.height)], wide))));
    }
    // Rows stand behind one another: each is pointed at in another place.
    const z = row.stations[Math.min(n + 1, row.stations.length - 1)] ?? 0;
    anchors.push({ part: row.id, at: frame.at(z, row.height * 0.45), toward: point(1, 0.2) });
    anchors.push({ part: row.foot.id, at: frame.at(z, -row.foot.driven * 0.7), toward: point(1, 0.3) });
  });
  if (roof.type === 'bows' || roof.type === 'rafters') {
    const wide = Math.max(breadthOf(roof.member), 2.4 / frame.scale);
    for (const z of roof.stations) {
      if (roof.type === 'bows' && roof.foot) shapes.push(...footShapes(roof.foot, frame, z, wide, 0));
      shapes.push(polygon(roof.id, 'member', frame.all(band([point(z, low), point(z, crown)], wide))));
    }
    const z = roof.stations[roof.stations.length - 2] ?? 0;
    if (roof.type === 'bows' && roof.foot)
      anchors.push({
        part: roof.foot.id,
        at: frame.at(z, -Math.max(0.05, roof.foot.driven * 0.6)),
        toward: point(1, 0.4),
      });
    anchors.push({ part: roof.id, at: frame.at(z, low + (crown - low) * 0.6), toward: point(1, -0.3) });
  } else {
    shapes.push(
      ...(roof.type === 'cap' ? capShapes(roof, frame, low, crown) : strapShapes(roof, frame, low, crown)),
    );
    const z = roof.type === 'cap' ? roof.spacing * 0.75 : (roof.stations[1] ?? 0);
    anchors.push({ part: roof.id, at: frame.at(z, (low + crown) / 2) });
  }
  for (const rail of allRails(shelter)) {
    const thick = depthOf(rail.member);
    const heights = [...new Set(rail.lines.map(({ y }) => y))];
    for (const y of heights)
      shapes.push(
        rail.member.kind === 'cable'
          ? line(rail.id, 'cable', frame.at(0, y), frame.at(length, y))
          : polygon(
              rail.id,
              'rail',
              frame.all(band([point(0, y), point(length, y)], Math.max(thick, 2.4 / frame.scale))),
            ),
      );
    const y = heights[0] ?? 0;
    const bay = roof.spacing * (Math.floor((length * 0.4) / roof.spacing) + 0.5);
    anchors.push({ part: rail.id, at: frame.at(bay, y), toward: point(0.5, 1) });
    if (rail.endAnchor) {
      for (const [z, out] of [
        [0, -anchorOut(rail)],
        [length, length + anchorOut(rail)],
      ] as const) {
        shapes.push(line(rail.id, 'cable', frame.at(z, y), frame.at(out, 0)));
        shapes.push(...footShapes(rail.endAnchor, frame, out, thick, 0));
      }
      anchors.push({
        part: rail.endAnchor.id,
        at: frame.at(length + anchorOut(rail), -rail.endAnchor.driven * 0.8),
        toward: point(1, 0.3),
      });
    }
  }
  for (const brace of shelter.braces)
    if (brace.plane === 'along') shapes.push(...braceShapes(brace, shelter, frame, anchors));

  const { overlays } = options;
  const results = overlays ? overlayShapes(overlays, shapes, frame) : [];
  const body: Shape[] = [...shapes, ...results];
  body.push(...sideDimensions(shelter, frame, body, options.system));
  if (overlays) body.push(...placeTexts(overlayTexts(overlays, frame, options.system), body));
  const described = describeParts(shelter, options.system);
  const { key, tags } = numberParts(described, anchors);
  body.push(...placeBalloons(tags, body));
  return finishSheet(body, {
    view: 'side',
    title: `${shelter.name}: side`,
    subtitle: `Seen from the right side; ${sideWords(roof)} ${format(roof.spacing, 'length', options.system)}.${shelter.braces.some(({ plane }) => plane === 'across') ? ' What runs straight across the house is in the section.' : ''}`,
    description: described.map(({ words }) => words).join('. '),
    labels: described.map(({ part, words }) => ({ part, label: words })),
    key,
    notes: overlays?.captions ?? [],
    scale: frame.scale,
    ...options,
  });
}

const sideWords = ({ type }: Roof): string =>
  type === 'cap' ? 'length of a cap' : type === 'inflated' ? 'straps every' : 'frames every';

/** Caps in a row, each with what holds its rim. */
function capShapes(roof: Cap, frame: Frame, low: number, crown: number): readonly Shape[] {
  return roof.stations.slice(1).flatMap((z, n) => {
    const [from, to] = [(roof.stations[n] ?? 0) + 0.01, z - 0.01];
    const outline = frame.all([point(from, low), point(to, low), point(to, crown), point(from, crown)]);
    const middle = (from + to) / 2;
    const sack = [
      point(middle - 0.14, 0),
      point(middle - 0.11, 0.08),
      point(middle + 0.11, 0.08),
      point(middle + 0.14, 0),
    ];
    return [
      polygon(roof.id, 'sheet', outline),
      ...(roof.foot.kind === 'ballast' ? [polygon(roof.foot.id, 'foot', frame.all(sack))] : []),
    ];
  });
}

/** Straps over a blown-up roof. */
const strapShapes = (roof: Inflated, frame: Frame, low: number, crown: number): readonly Shape[] =>
  roof.stations.map((z) => line(roof.id, 'strap', frame.at(z, low), frame.at(z, crown)));

function braceShapes(brace: Brace, shelter: Shelter, frame: Frame, anchors: Anchor[]): readonly Shape[] {
  const shapes: Shape[] = [];
  const seen = braceRuns(shelter, brace).map(([a, b]) => [point(a[2], a[1]), point(b[2], b[1])] as const);
  // What stands on the far side lies behind its twin.
  const places = seen.map((run) => run.map(({ x, y }) => `${x.toFixed(6)},${y.toFixed(6)}`).join());
  const runs = seen.filter((_, n) => places.indexOf(places[n] ?? '') === n);
  const one = runs[0] as readonly [Point, Point];
  for (const [a, b] of runs) {
    if (brace.member.kind === 'cable')
      shapes.push(line(brace.id, 'cable', frame.at(a.x, a.y), frame.at(b.x, b.y)));
    else
      shapes.push(
        polygon(brace.id, 'post', frame.all(band([a, b], Math.max(depthOf(brace.member), 2 / frame.scale)))),
      );
    if (brace.foot)
      shapes.push(...footShapes(brace.foot, frame, a.y < b.y ? a.x : b.x, depthOf(brace.member), 0));
  }
  const at = point((one[0].x + one[1].x) / 2, (one[0].y + one[1].y) / 2);
  anchors.push({ part: brace.id, at: frame.at(at.x, at.y), toward: point(0.6, 1) });
  const low = one[0].y < one[1].y ? one[0] : one[1];
  if (brace.foot)
    anchors.push({
      part: brace.foot.id,
      at: frame.at(low.x, -brace.foot.driven * 0.7),
      toward: point(-1, 0.4),
    });
  return shapes;
}
