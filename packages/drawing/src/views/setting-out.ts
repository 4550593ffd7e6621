/** Where the pegs go: running distances along one line, the diagonals that make it square, every peg's place. */
import type { System } from '@tautline/quantity';
import type { Shelter } from '@tautline/shelter';
import { describeParts } from '../describe.ts';
import { boundsOf } from '../scene/bounds.ts';
import { stackDimensions } from '../scene/dimension.ts';
import { type Frame, frameFor, roomOf } from '../scene/frame.ts';
import { keptToSheet } from '../scene/kept.ts';
import {
  circle,
  type Drawing,
  line,
  type Point,
  path,
  point,
  polygon,
  polyline,
  type Shape,
  type ViewOptions,
} from '../scene/shapes.ts';
import { finishSheet } from '../scene/sheet.ts';
import { tableWithin } from '../scene/table.ts';
import { exactLength } from './exact.ts';
import { diagonalTexts, innerNames, outerNames } from './peg-names.ts';
import { type Peg, pegsOf } from './pegs.ts';

/** Setting-out plan with a table of pegs. Lengths to the millimetre or sixteenth of an inch. */
export const settingOutView = keptToSheet(drawSettingOut);

function drawSettingOut(shelter: Shelter, options: ViewOptions, share: number): Drawing {
  const { system } = options;
  const m = (si: number): string => exactLength(si, system);
  const pegs = pegsOf(shelter);
  const length = Math.max(...pegs.filter(({ name }) => /^[LR]/.test(name)).map(({ along }) => along));
  const width = Math.max(...pegs.filter(({ name }) => /^[LR]/.test(name)).map(({ across }) => across));
  const frame = frameFor(length, width, roomOf(860, options, 110), 380, share);
  const body: Shape[] = [];
  const at = (along: number, across: number): Point => frame.at(along, across);

  body.push(...thingOutlines(shelter, pegs, frame));
  body.push(polygon(shelter.id, 'footprint', [at(0, 0), at(length, 0), at(length, width), at(0, width)]));
  const diagonal = Math.hypot(length, width);
  for (const up of [true, false]) {
    const [a, b] = up ? [at(0, 0), at(length, width)] : [at(0, width), at(length, 0)];
    body.push(line(shelter.id, 'member-hidden', a, b));
  }
  for (const peg of pegs) body.push(...pegMark(peg, at(peg.along, peg.across)));
  body.push(...outerNames(pegs, frame, system, body));
  body.push(...innerNames(pegs, frame, body));
  body.push(...diagonalTexts(shelter.id, body, frame, length, width, `diagonal ${m(diagonal)}`));
  const bounds = boundsOf(body);
  body.push(
    ...stackDimensions('left', bounds.left, [
      {
        part: shelter.id,
        name: 'width',
        value: width,
        text: `width ${m(width)}`,
        from: at(0, 0),
        to: at(0, width),
      },
    ]),
    ...stackDimensions('above', bounds.top, [
      {
        part: shelter.id,
        name: 'length',
        value: length,
        text: `length ${m(length)}`,
        from: at(0, width),
        to: at(length, width),
      },
    ]),
  );
  const below = boundsOf(body);
  const rows = pegs.map((peg) => ({ part: peg.part, cells: [peg.name, m(peg.along), m(peg.across)] }));
  const corner = point(below.left, below.bottom + 26);
  body.push(...tableWithin(corner, ['peg', 'along', 'across'], rows, roomOf(960, options, 44)));
  const described = describeParts(shelter, system);
  return finishSheet(body, {
    view: 'setting-out',
    title: `${shelter.name}: setting out`,
    subtitle: 'Peg L1 is the start; distances along run from it without adding up errors.',
    description: `Pegs: ${pegs.map((peg) => `${peg.name} ${m(peg.along)} along, ${m(peg.across)} across`).join('; ')}.`,
    labels: described.map(({ part, words }) => ({ part, label: words })),
    notes: notes(shelter, width, length, diagonal, system),
    scale: frame.scale,
    ...options,
  });
}

function notes(
  shelter: Shelter,
  width: number,
  length: number,
  diagonal: number,
  system: System,
): readonly string[] {
  const unit = system === 'us' ? 0.3048 : 1;
  // Whole feet or metres where the house is large enough: easy to find on a tape.
  const fits = Math.min(width / 3, length / 4) / unit;
  const parts = (fits >= 1 ? Math.floor(fits) : Math.max(0.25, Math.floor(fits * 4) / 4)) * unit;
  const corner = (sides: number): string => exactLength(sides * parts, system);
  return [
    `Square: both diagonals measure ${exactLength(diagonal, system)}. A corner is square when ${corner(3)} on one line and ${corner(4)} on the other are ${corner(5)} apart.`,
    'Pegs mark centre lines on level ground; on a slope hold the tape level. Look for buried services before driving stakes.',
    ...thingNotes(shelter, pegsOf(shelter), system),
  ];
}

/** Where the first line of pegs stands from the left side of the footprint, and the first peg from its front, m. */
function startOf(
  shelter: Shelter,
  pegs: readonly Peg[],
): { readonly across: number; readonly along: number } {
  const first = shelter.sidePosts?.lines[0] ?? shelter.roof.line[0]?.x ?? 0;
  const [z = 0] = shelter.sidePosts?.stations ?? shelter.roof.stations;
  return pegs.length === 0 ? { across: 0, along: 0 } : { across: first, along: z };
}

/** Things under the roof, for the eye only: where they stand is in the notes. */
function thingOutlines(shelter: Shelter, pegs: readonly Peg[], frame: Frame): readonly Shape[] {
  const start = startOf(shelter, pegs);
  return shelter.things.flatMap((thing) =>
    thing.lefts.map((left) => {
      const [x, z] = [left - start.across, thing.starts - start.along];
      const [a, b] = [point(z, x), point(z + thing.length, x + thing.width)];
      return polyline(thing.id, 'thing-hatch', frame.all([a, point(b.x, a.y), b, point(a.x, b.y), a]));
    }),
  );
}

/** Where each thing stands, from the left line of pegs and from peg L1. */
function thingNotes(shelter: Shelter, pegs: readonly Peg[], system: System): readonly string[] {
  const start = startOf(shelter, pegs);
  const m = (si: number): string => exactLength(si, system);
  return shelter.things.map((thing) => {
    const across = thing.lefts.map((left) => m(left - start.across)).join(', ');
    const many = thing.lefts.length > 1 ? `${thing.lefts.length} of them, ` : '';
    return `${thing.name}: ${many}${m(thing.width)} across by ${m(thing.length)} along; near corner ${across} from the left line, ${m(thing.starts - start.along)} along.`;
  });
}

function pegMark(peg: Peg, at: Point): readonly Shape[] {
  return [
    circle(peg.part, 'peg', at, 4),
    path(peg.part, 'peg', [
      [point(at.x - 6.5, at.y), point(at.x + 6.5, at.y)],
      [point(at.x, at.y - 6.5), point(at.x, at.y + 6.5)],
    ]),
  ];
}
