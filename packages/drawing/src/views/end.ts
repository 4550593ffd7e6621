/** The front end seen from outside: how it is framed, clad and entered. */
import { format, type System } from '@tautline/quantity';
import type { Door, Shelter } from '@tautline/shelter';
import { describeParts } from '../describe.ts';
import { placeBalloons } from '../scene/balloons.ts';
import { boundsOf } from '../scene/bounds.ts';
import type { Measured } from '../scene/dimension.ts';
import { type Frame, frameFor, roomOf } from '../scene/frame.ts';
import { keptToSheet } from '../scene/kept.ts';
import { type Drawing, point, type Shape, type ViewOptions } from '../scene/shapes.ts';
import { finishSheet } from '../scene/sheet.ts';
import { surroundDimensions } from '../scene/surround.ts';
import { numberParts, type Piece } from './anchors.ts';
import { endPieces, framing, frontDoors } from './ends.ts';
import { groundLine } from './ground.ts';
import { endBraces } from './section-braces.ts';
import { postPieces, roofPiece } from './section-frame.ts';
import { faceShapes } from './skin-faces.ts';

/** Whether anything is said of the ends but that they are open. */
export const saysEnds = ({ endFrames, doors, covers }: Shelter): boolean =>
  endFrames !== undefined || doors !== undefined || covers.some(({ place }) => place === 'ends');

/** Elevation of the front end; undefined where nothing is said of the ends but that they are open. */
export const endView = keptToSheet(drawEnd);

function drawEnd(shelter: Shelter, options: ViewOptions, share: number): Drawing | undefined {
  if (!saysEnds(shelter)) return undefined;
  const { roof } = shelter;
  const xs = roof.line.map((p) => p.x);
  const top = Math.max(...roof.line.map((p) => p.y));
  const frame = frameFor(shelter.width, top, roomOf(560, options), 400, share);
  const beyond = 0.09 * shelter.width + 0.15;
  const pieces: readonly Piece[] = [
    endSkins(shelter, frame),
    postPieces(shelter, frame),
    endBraces(shelter, frame),
    roofPiece(shelter, frame),
    endPieces(shelter, frame),
  ];
  const body: Shape[] = [
    ...groundLine(frame, Math.min(0, ...xs) - beyond, Math.max(shelter.width, ...xs) + beyond),
    ...pieces.flatMap((piece) => piece.shapes),
  ];
  body.push(...endDimensions(shelter, frame, body, options));
  const described = describeParts(shelter, options.system);
  const { key, tags } = numberParts(
    described,
    pieces.flatMap((piece) => piece.anchors),
  );
  body.push(...placeBalloons(tags, body));
  return finishSheet(body, {
    view: 'end',
    title: `${shelter.name}: front end`,
    subtitle: 'Seen from outside, left side at the left.',
    description: described.map(({ words }) => words).join('. '),
    labels: described.map(({ part, words }) => ({ part, label: words })),
    key,
    notes: [
      'Sizes to centre lines, of doors too.',
      ...frontDoors(shelter).map((door) => clearWords(door, shelter, options.system)),
      ...((shelter.doors ?? []).length > frontDoors(shelter).length
        ? ['There is a door in the back end, too: the plan shows it.']
        : []),
    ],
    scale: frame.scale,
    ...options,
  });
}

/** How much of an opening is left to walk through. */
function clearWords(door: Door, { endFrames }: Shelter, system: System): string {
  const { side, head } = framing(door, endFrames);
  const size = (si: number): string => format(si, 'length', system);
  return `Between what frames the door ${size(door.width - 2 * side)} by ${size(door.height - head)} are left clear.`;
}

/** Film or mesh of the ends, between its lower and upper edge and under the roof line. */
function endSkins(shelter: Shelter, frame: Frame): Piece {
  const pieces = shelter.covers.flatMap((cover): Piece[] => {
    if (cover.place !== 'ends') return [];
    const under = shelter.roof.line.map(({ x, y }) =>
      point(x, Math.max(cover.from, cover.upTo > 0 ? Math.min(y, cover.upTo) : y)),
    );
    const [first, last] = [under[0], under.at(-1)];
    if (!first || !last) return [];
    const outline = frame.all([point(first.x, cover.from), ...under, point(last.x, cover.from)]);
    const at = frame.at(shelter.width * 0.22, (cover.from + cover.upTo) / 2);
    return [
      {
        shapes: faceShapes(cover.id, cover.skin.kind, outline),
        anchors: [{ part: cover.id, at, toward: point(-1, -0.4) }],
      },
    ];
  });
  return {
    shapes: pieces.flatMap(({ shapes }) => shapes),
    anchors: pieces.flatMap(({ anchors }) => anchors),
  };
}

function endDimensions(
  shelter: Shelter,
  frame: Frame,
  drawn: readonly Shape[],
  { system }: ViewOptions,
): readonly Shape[] {
  const { width, endFrames, roof } = shelter;
  const doors = frontDoors(shelter);
  const measured = (
    part: string,
    name: string,
    from: readonly [number, number],
    to: readonly [number, number],
  ): Measured => {
    const value = Math.abs(to[0] - from[0]) + Math.abs(to[1] - from[1]);
    const words = `${name} ${format(value, 'length', system)}`;
    return { part, name, value, text: words, from: frame.at(...from), to: frame.at(...to) };
  };
  const below = [
    measured(shelter.id, 'width', [0, 0], [width, 0]),
    ...doors.flatMap((door) => [
      ...(door.left > 1e-3 ? [measured(door.id, 'door from side', [0, 0], [door.left, 0])] : []),
      measured(door.id, 'door', [door.left, 0], [door.left + door.width, 0]),
    ]),
    ...(endFrames?.uprights ?? [])
      .filter(({ x }) => !doors.some(({ left, width: wide }) => near(x, left) || near(x, left + wide)))
      .map(({ x }) => measured('end-frames', 'upright', [0, 0], [x, 0])),
  ];
  const left = doors.map((door) => measured(door.id, 'door', [door.left, 0], [door.left, door.height]));
  const crown = roof.line.reduce((best, p) => (p.y > best.y ? p : best));
  const right = [
    { ...measured(roof.id, 'height', [crown.x, 0], [crown.x, crown.y]), from: frame.at(width, 0) },
    ...(endFrames?.rail
      ? [
          measured(
            'end-frames',
            'end rail',
            [endFrames.rail.to, 0],
            [endFrames.rail.to, endFrames.rail.height],
          ),
        ]
      : []),
  ];
  return surroundDimensions(boundsOf(drawn), { below, left, right });
}

const near = (a: number, b: number): boolean => Math.abs(a - b) < 1e-6;
