/** The picture on a cover: the section with its width and height, and nothing to look up. */
import { format } from '@tautline/quantity';
import type { Shelter } from '@tautline/shelter';
import { describeParts } from '../describe.ts';
import { boundsOf } from '../scene/bounds.ts';
import { frameFor, roomOf } from '../scene/frame.ts';
import { keptToSheet } from '../scene/kept.ts';
import type { Drawing, Point, Shape, ViewOptions } from '../scene/shapes.ts';
import { onPage } from '../scene/sheet.ts';
import { surroundDimensions } from '../scene/surround.ts';
import { groundOf, sectionPieces } from './section.ts';

/** A section without numbers, key and notes. */
export const coverView = keptToSheet(drawCover);

function drawCover(shelter: Shelter, options: ViewOptions, share: number): Drawing {
  const { roof, width } = shelter;
  const crown = roof.line.reduce((best, p) => (p.y > best.y ? p : best));
  const frame = frameFor(width, crown.y, roomOf(560, options), 400, share);
  const body: Shape[] = [
    ...groundOf(shelter, frame),
    ...sectionPieces(shelter, frame).flatMap(({ shapes }) => shapes),
  ];
  const measured = (part: string, name: string, value: number, from: Point, to: Point) => ({
    part,
    name,
    value,
    text: `${name} ${format(value, 'length', options.system)}`,
    from,
    to,
  });
  body.push(
    ...surroundDimensions(boundsOf(body), {
      below: [measured(shelter.id, 'width', width, frame.at(0, 0), frame.at(width, 0))],
      right: [measured(roof.id, 'height', crown.y, frame.at(width, 0), frame.at(crown.x, crown.y))],
    }),
  );
  const described = describeParts(shelter, options.system);
  return onPage(body, {
    view: 'cover',
    title: shelter.name,
    description: described.map(({ words }) => words).join('. '),
    labels: described.map(({ part, words }) => ({ part, label: words })),
    scale: frame.scale,
  });
}
