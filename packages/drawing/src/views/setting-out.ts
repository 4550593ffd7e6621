/** Where the pegs go: running distances along one line, the diagonals that make it square, every peg's place. */
import type { System } from '@tautline/quantity';
import type { Shelter } from '@tautline/shelter';
import { describeParts } from '../describe.ts';
import { boundsOf } from '../scene/bounds.ts';
import { stackDimensions } from '../scene/dimension.ts';
import { type Frame, frameFor, roomOf } from '../scene/frame.ts';
import { clearest, textOutlines } from '../scene/free-text.ts';
import { keptToSheet } from '../scene/kept.ts';
import { textCorners } from '../scene/lettering.ts';
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
  type TextShape,
  text,
  type ViewOptions,
} from '../scene/shapes.ts';
import { finishSheet } from '../scene/sheet.ts';
import { strokesOf } from '../scene/strokes.ts';
import { tableWithin } from '../scene/table.ts';
import { exactLength } from './exact.ts';
import { allPosts, allRails, anchorOut, bracePlaces } from './members.ts';

export interface Peg {
  readonly part: string;
  /** L for the left line, R for the right, then the other lines and the guys. */
  readonly name: string;
  /** Along the house and across it from peg L1, m. */
  readonly along: number;
  readonly across: number;
}

/** Every place where something goes into or onto the ground, in walking order. Peg L1 is the origin. */
export function pegsOf(shelter: Shelter): readonly Peg[] {
  const { roof, width } = shelter;
  const rows: { readonly part: string; readonly x: number; readonly stations: readonly number[] }[] = [];
  const first = roof.line[0];
  const last = roof.line[roof.line.length - 1];
  if (!shelter.sidePosts && first && last) {
    const part = roof.type === 'bows' ? (roof.foot?.id ?? roof.id) : roof.id;
    rows.push({ part, x: first.x, stations: roof.stations }, { part, x: last.x, stations: roof.stations });
  }
  for (const row of allPosts(shelter))
    for (const x of row.lines) rows.push({ part: row.foot.id, x, stations: row.stations });
  const [left, right] = [Math.min(...rows.map(({ x }) => x)), Math.max(...rows.map(({ x }) => x))];
  const origin = Math.min(...rows.flatMap(({ stations }) => stations));
  let line = 0;
  const letter = (x: number): string =>
    x === left
      ? 'L'
      : x === right && width > 0
        ? 'R'
        : (['C', 'D', 'E', 'F', 'H', 'J', 'K'][line++] ?? `M${line}`);
  const pegs = rows.flatMap(({ part, x, stations }) => {
    const name = letter(x);
    return stations.map(
      (z, i): Peg => ({ part, name: `${name}${i + 1}`, along: z - origin, across: x - left }),
    );
  });
  let anchor = 0;
  for (const rail of allRails(shelter))
    if (rail.endAnchor)
      for (const { x } of rail.lines)
        for (const z of [-anchorOut(rail), shelter.length + anchorOut(rail)]) {
          anchor++;
          pegs.push({ part: rail.endAnchor.id, name: `A${anchor}`, along: z - origin, across: x - left });
        }
  let guy = 0;
  for (const brace of shelter.braces)
    if (brace.foot)
      for (const ends of bracePlaces(shelter, brace)) {
        const low = brace.from.y < brace.to.y ? ends[0] : ends[1];
        guy++;
        pegs.push({ part: brace.foot.id, name: `G${guy}`, along: low.x - origin, across: low.y - left });
      }
  return pegs;
}

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

/** Names and running distances, upright beside the outer lines; where pegs stand close, not every one. */
function outerNames(
  pegs: readonly Peg[],
  frame: Frame,
  system: System,
  drawn: readonly Shape[],
): readonly Shape[] {
  const shapes: Shape[] = [];
  const strokes = strokesOf(drawn);
  for (const side of ['L', 'R'] as const) {
    const row = pegs.filter(({ name }) => name.startsWith(side));
    const gap = Math.min(...row.slice(1).map((peg, i) => (peg.along - (row[i]?.along ?? 0)) * frame.scale));
    const every = Math.max(1, Math.ceil(13 / gap));
    row.forEach((peg, i) => {
      if (i % every !== 0 && i !== row.length - 1) return;
      if (i === row.length - 1 && i % every !== 0 && every > 1 && (i % every) * gap < 13) return;
      const at = frame.at(peg.along, peg.across);
      const words = side === 'L' ? `${peg.name}  ${exactLength(peg.along, system)}` : peg.name;
      const y = side === 'L' ? at.y + 11 : at.y - 11;
      // Beside the middle where the peg of a guy stands right outside.
      const tries = [0, 14, -14].map((aside) =>
        text(peg.part, 'dimension', point((side === 'L' ? at.x + 3.8 : at.x - 3) + aside, y), words, {
          size: 10.5,
          anchor: side === 'L' ? 'end' : 'start',
          turn: -90,
        }),
      );
      shapes.push(clearest(tries, textOutlines(shapes), strokes) ?? (tries[0] as TextShape));
    });
  }
  return shapes;
}

/** Names of the pegs within the outer lines and beyond them: in the corner of the mark that is clear of lines. */
function innerNames(pegs: readonly Peg[], frame: Frame, drawn: readonly Shape[]): readonly Shape[] {
  const inner = pegs.filter(({ name }) => !/^[LR]/.test(name));
  const taken = [...textOutlines(drawn)];
  const strokes = strokesOf(drawn);
  return inner.flatMap((peg) => {
    const at = frame.at(peg.along, peg.across);
    const tries = [
      [7, -6, 'start'],
      [7, 14, 'start'],
      [-7, -6, 'end'],
      [-7, 14, 'end'],
      [0, -11, 'middle'],
      [0, 19, 'middle'],
    ] as const;
    const found = clearest(
      tries.map(([dx, dy, anchor]) =>
        text(peg.part, 'dimension', point(at.x + dx, at.y + dy), peg.name, { size: 10.5, anchor }),
      ),
      taken,
      strokes,
    );
    if (found) taken.push(textCorners(found));
    return found ? [found] : [];
  });
}

/** Text along each diagonal, the first place from a quarter on that is free; the notes say it in any case. */
function diagonalTexts(
  part: string,
  drawn: readonly Shape[],
  frame: Frame,
  length: number,
  width: number,
  words: string,
): readonly Shape[] {
  const steep = (Math.atan2(width, length) * 180) / Math.PI;
  const shares = Array.from(
    { length: 41 },
    (_, i) => 0.25 + (i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2) * 0.01,
  );
  const strokes = strokesOf(drawn);
  const placed: TextShape[] = [];
  for (const up of [true, false]) {
    const turn = up ? -steep : steep;
    const tilt = (turn * Math.PI) / 180;
    const tries = shares.map((share) => {
      const on = frame.at(length * share, width * (up ? share : 1 - share));
      const at = point(on.x + 5 * Math.sin(tilt), on.y - 5 * Math.cos(tilt));
      return text(part, 'dimension', at, words, { size: 11, anchor: 'middle', turn });
    });
    const found = clearest(tries, textOutlines([...drawn, ...placed]), strokes);
    if (found) placed.push(found);
  }
  return placed;
}
