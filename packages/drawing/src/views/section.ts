/** The typical frame cut across the house: what a builder needs to see first. */
import { format } from '@tautline/quantity';
import type { Roof, Shelter } from '@tautline/shelter';
import { describeParts } from '../describe.ts';
import { placeBalloons } from '../scene/balloons.ts';
import { boundsOf } from '../scene/bounds.ts';
import { type Frame, frameFor } from '../scene/frame.ts';
import { placeTexts } from '../scene/free-text.ts';
import { heightAt } from '../scene/outline.ts';
import { type Drawing, point, type Shape, text, type ViewOptions } from '../scene/shapes.ts';
import { finishSheet } from '../scene/sheet.ts';
import { numberParts, type Piece } from './anchors.ts';
import { groundLine } from './ground.ts';
import { overlayShapes, overlayTexts, type SectionOverlays, tagShapes } from './overlays.ts';
import { sectionDimensions } from './section-dimensions.ts';
import { bracePieces, postPieces, railPieces, roofPiece } from './section-frame.ts';
import { coverShapes, cropShapes } from './section-skins.ts';
import { thingPieces } from './things.ts';

const xs = (roof: Roof): readonly number[] => roof.line.map((p) => p.x);

/**
 * Section through a typical frame, true to scale, with dimensions, a numbered key and, if given, overlays
 * of results. Throws RangeError when the model holds a number that is not finite.
 */
export function sectionView(
  shelter: Shelter,
  options: ViewOptions & { readonly overlays?: SectionOverlays },
): Drawing {
  const { roof } = shelter;
  const top = Math.max(...roof.line.map((p) => p.y), shelter.ridge?.lines[0]?.y ?? 0);
  const frame = frameFor(shelter.width, top, 560, 400);
  const overhang = 0.09 * shelter.width + 0.15;
  const ground = groundLine(
    frame,
    Math.min(0, ...xs(roof)) - overhang,
    Math.max(shelter.width, ...xs(roof)) + overhang,
  );
  const pieces: readonly Piece[] = [
    cropShapes(shelter, frame),
    thingPieces(shelter, frame),
    postPieces(shelter, frame),
    railPieces(shelter, frame),
    bracePieces(shelter, frame),
    roofPiece(shelter, frame),
    coverShapes(shelter, frame),
  ];
  const body: Shape[] = [...ground, ...pieces.flatMap((piece) => piece.shapes)];
  const anchors = pieces.flatMap((piece) => piece.anchors);
  const results = options.overlays ? overlayShapes(options.overlays, body, frame) : [];
  body.push(...results);
  body.push(...sectionDimensions(shelter, frame, boundsOf(body), options.system));
  body.push(...lengthNote(roof, frame, options));
  if (options.overlays) body.push(...placeTexts(overlayTexts(options.overlays, frame, options.system), body));
  const described = describeParts(shelter, options.system);
  const { key, tags } = numberParts(described, anchors);
  if (options.overlays?.utilisation) body.push(...tagShapes(options.overlays.utilisation, anchors, body));
  body.push(...placeBalloons(tags, body));
  return finishSheet(body, {
    view: 'section',
    title: `${shelter.name}: section`,
    subtitle: `Typical frame, seen along the house; ${roof.stations.length} frames every ${format(roof.spacing, 'length', options.system)}.`,
    description: described.map(({ words }) => words).join('. '),
    labels: described.map(({ part, words }) => ({ part, label: words })),
    key,
    notes: [
      ...(options.overlays?.captions ?? []),
      'Sizes to centre lines unless noted. Members are drawn at their true thickness.',
    ],
    scale: frame.scale,
    system: options.system,
  });
}

/** How long the pipe is, over the crown. */
function lengthNote(roof: Roof, frame: Frame, options: ViewOptions): readonly Shape[] {
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
