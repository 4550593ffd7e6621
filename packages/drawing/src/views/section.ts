/** The typical frame cut across the house: what a builder needs to see first. */
import { format } from '@tautline/quantity';
import type { Roof, Shelter } from '@tautline/shelter';
import { describeParts } from '../describe.ts';
import { placeBalloons } from '../scene/balloons.ts';
import { type Frame, frameFor, roomOf } from '../scene/frame.ts';
import { placeTexts } from '../scene/free-text.ts';
import { keptToSheet } from '../scene/kept.ts';
import { heightAt } from '../scene/outline.ts';
import { type Drawing, point, type Shape, type TextShape, text, type ViewOptions } from '../scene/shapes.ts';
import { finishSheet } from '../scene/sheet.ts';
import { numberParts, type Piece } from './anchors.ts';
import { groundLine, outAt } from './ground.ts';
import { overlayShapes, overlayTexts, type SectionOverlays, tagShapes } from './overlays.ts';
import { braceBeyond, bracePieces } from './section-braces.ts';
import { sectionDimensions } from './section-dimensions.ts';
import { postPieces, railPieces, roofPiece } from './section-frame.ts';
import { coverShapes, cropNames, cropShapes } from './section-skins.ts';
import { thingPieces } from './things.ts';

const xs = (roof: Roof): readonly number[] => roof.line.map((p) => p.x);

/**
 * Section through a typical frame, true to scale, with dimensions, a numbered key and, if given, overlays
 * of results. Throws RangeError when the model holds a number that is not finite.
 */
export const sectionView = keptToSheet(drawSection);

function drawSection(
  shelter: Shelter,
  options: ViewOptions & { readonly overlays?: SectionOverlays },
  share: number,
): Drawing {
  const { roof } = shelter;
  const top = Math.max(...roof.line.map((p) => p.y), shelter.ridge?.lines[0]?.y ?? 0);
  const frame = frameFor(shelter.width, top, roomOf(560, options), 400, share);
  const pieces = sectionPieces(shelter, frame);
  const body: Shape[] = [...groundOf(shelter, frame), ...pieces.flatMap((piece) => piece.shapes)];
  const anchors = pieces.flatMap((piece) => piece.anchors);
  const results = options.overlays ? overlayShapes(options.overlays, body, frame) : [];
  body.push(...results);
  body.push(...sectionDimensions(shelter, frame, body, options.system));
  body.push(
    ...placeTexts(
      [
        ...(options.overlays ? overlayTexts(options.overlays, frame, options.system) : []),
        ...lengthNote(roof, frame, options),
        ...cropNames(shelter, frame),
      ],
      body,
    ),
  );
  const described = describeParts(shelter, options.system);
  const { key, tags } = numberParts(described, anchors);
  if (options.overlays?.utilisation) body.push(...tagShapes(options.overlays.utilisation, anchors, body));
  body.push(...placeBalloons(tags, body));
  return finishSheet(body, {
    view: 'section',
    title: `${shelter.name}: section`,
    subtitle: `${sectionWords(roof, format(roof.spacing, 'length', options.system))}`,
    description: described.map(({ words }) => words).join('. '),
    labels: described.map(({ part, words }) => ({ part, label: words })),
    key,
    notes: [
      ...(options.overlays?.captions ?? []),
      'Sizes to centre lines unless noted. Members are drawn at their true thickness.',
    ],
    scale: frame.scale,
    ...options,
  });
}

/** All that stands in a section, what lies behind first. */
export const sectionPieces = (shelter: Shelter, frame: Frame): readonly Piece[] => [
  braceBeyond(shelter, frame),
  cropShapes(shelter, frame),
  thingPieces(shelter, frame),
  postPieces(shelter, frame),
  bracePieces(shelter, frame),
  roofPiece(shelter, frame),
  railPieces(shelter, frame),
  coverShapes(shelter, frame),
];

/** The ground under a section. */
export const groundOf = (shelter: Shelter, frame: Frame): readonly Shape[] =>
  groundLine(frame, ...groundReach(shelter));

/** The stretch of ground to show: beyond the frame and whatever is anchored outside it, m. */
function groundReach(shelter: Shelter): readonly [number, number] {
  const beyond = 0.09 * shelter.width + 0.15;
  const out = shelter.braces
    .filter(({ plane, foot }) => plane === 'across' && foot)
    .flatMap(({ from, to }) => [from.x, to.x, shelter.width - from.x, shelter.width - to.x]);
  const foot = shelter.roof.type === 'bows' ? shelter.roof.foot : undefined;
  // What leans out under the ground lies under it from end to end.
  const legs = foot ? Math.max(0, outAt(foot, foot.driven) - beyond + 0.05) : 0;
  const all = [0, shelter.width, ...xs(shelter.roof)];
  return [
    Math.min(Math.min(...all) - beyond - legs, ...out.map((x) => x - 0.3)),
    Math.max(Math.max(...all) + beyond + legs, ...out.map((x) => x + 0.3)),
  ];
}

/** What the section cuts, and how many there are of it. */
function sectionWords(roof: Roof, spacing: string): string {
  const count = roof.stations.length;
  if (roof.type === 'cap') return `A cap, seen along the row; ${count - 1} of them, each ${spacing} long.`;
  if (roof.type === 'inflated') return `Seen along the house; ${count} straps every ${spacing}.`;
  return `Typical frame, seen along the house; ${count} frames every ${spacing}.`;
}

/** How long the pipe is, over the crown. */
function lengthNote(roof: Roof, frame: Frame, options: ViewOptions): readonly TextShape[] {
  if (roof.type !== 'bows' && roof.type !== 'rafters') return [];
  const middle = (Math.min(...xs(roof)) + Math.max(...xs(roof))) / 2;
  const crown = heightAt(roof.line, middle) ?? roof.springing + roof.rise;
  const name = roof.type === 'bows' ? 'bow length' : 'rafter length';
  return [
    text(
      roof.id,
      'note',
      point(frame.at(middle, 0).x, frame.at(0, crown).y - 20),
      `${name} ${format(roof.length, 'length', options.system)}`,
      { size: 11, anchor: 'middle' },
    ),
  ];
}
