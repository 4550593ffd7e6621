/** Marks for bending a straight pipe into a bow, and the bow's own shape to lay out on a floor. */
import { format, type System } from '@tautline/quantity';
import { type Bows, type CurvePoint, jointReach, type Shelter } from '@tautline/shelter';
import { depthOf, describeParts } from '../describe.ts';
import { BALLOON_RADIUS } from '../scene/balloons.ts';
import { boundsOf } from '../scene/bounds.ts';
import { type Measured, stackDimensions } from '../scene/dimension.ts';
import { frameFor, roomOf } from '../scene/frame.ts';
import { placeTexts } from '../scene/free-text.ts';
import { keptToSheet } from '../scene/kept.ts';
import { band, hatch, heightAt } from '../scene/outline.ts';
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
  type TextShape,
  text,
  type ViewOptions,
} from '../scene/shapes.ts';
import { finishSheet } from '../scene/sheet.ts';
import { table } from '../scene/table.ts';
import { exactLength } from './exact.ts';

export interface BendRun {
  /** From the left end of the pipe, m (the part driven into the ground included). */
  readonly from: number;
  readonly to: number;
  /** Turn over the run, rad; 0 where the pipe stays straight. */
  readonly turn: number;
  /** Centre-line radius, m; absent where straight. */
  readonly radius?: number;
}

/**
 * Straights and arcs along the pipe, joined where the curvature stays the same within 2 %. A pipe of
 * steadily changing curvature gives many short runs; it is not made with a bender.
 */
export function bendRuns(bows: Bows): readonly BendRun[] {
  const runs: { from: number; to: number; turn: number }[] = [];
  const straight = (run: { turn: number; from: number; to: number }): boolean =>
    Math.abs(run.turn) < 1e-4 * Math.max(1, run.to - run.from);
  const add = (from: number, to: number, turn: number): void => {
    const last = runs[runs.length - 1];
    const next = { from, to, turn };
    if (last) {
      const [a, b] = [last.turn / (last.to - last.from), turn / (to - from)];
      const same = straight(last) ? straight(next) : !straight(next) && Math.abs(a - b) <= 0.02 * Math.abs(a);
      if (same) {
        last.to = to;
        last.turn += turn;
        return;
      }
    }
    runs.push(next);
  };
  const driven = bows.legDriven;
  if (driven > 0) add(0, driven, 0);
  bows.line.forEach((b, i) => {
    const a = bows.line[i - 1];
    if (a && b.s - a.s > 1e-5) add(driven + a.s, driven + b.s, a.angle - b.angle);
  });
  const end = driven + (bows.line[bows.line.length - 1] as CurvePoint).s;
  if (driven > 0) add(end, end + driven, 0);
  return runs.map((run) =>
    straight(run) ? { ...run, turn: 0 } : { ...run, radius: Math.abs((run.to - run.from) / run.turn) },
  );
}

/**
 * Bend template. Undefined for roofs without bows and for sprung bows, whose pipe stays straight until
 * it stands.
 */
export const bendTemplateView = keptToSheet(drawBendTemplate);

function drawBendTemplate(shelter: Shelter, options: ViewOptions, share: number): Drawing | undefined {
  const { roof } = shelter;
  if (roof.type !== 'bows' || roof.shape === 'elastic') return undefined;
  const stock = stockWord(roof);
  const { system } = options;
  const m = (si: number): string => exactLength(si, system);
  const room = share * roomOf(860, options, 70);
  const runs = bendRuns(roof);
  const total = (runs[runs.length - 1] as BendRun).to;
  const body: Shape[] = [...pipeBar(roof, runs, total, system, room)];
  const rows = runs.map((run, i) => ({
    part: roof.id,
    cells: [
      `${letter(i)} to ${letter(i + 1)}`,
      m(run.from),
      m(run.to),
      m(run.to - run.from),
      run.radius === undefined
        ? 'straight'
        : `bend ${format(Math.abs(run.turn), 'angle', system)}${run.turn < 0 ? ' the other way' : ''}`,
      run.radius === undefined ? '' : m(run.radius),
    ],
  }));
  const under = boundsOf(body);
  const runTable = table(
    point(0, under.bottom + 24),
    ['run', 'starts at', 'ends at', `${stock} used`, 'do', 'centre-line radius'],
    rows,
    14,
  );
  body.push(...runTable);
  if (roof.joints.length > 0)
    body.push(
      ...table(
        room < 860
          ? point(0, boundsOf(runTable).bottom + 24)
          : point(boundsOf(runTable).right + 40, under.bottom + 24),
        ['joint', 'middle at', 'from each side'],
        roof.joints.map((joint, i) => ({
          part: joint.id,
          cells: [`J${i + 1}`, m(joint.at + roof.legDriven), m(joint.item.insertion)],
        })),
        14,
      ),
    );
  const low = boundsOf(body).bottom + 40;
  body.push(...floorShape(roof, low, options.system, Math.min(700, room - 110)));
  const described = describeParts(shelter, system).filter(
    ({ part }) => part === roof.id || part.startsWith(`${roof.id}/`),
  );
  return finishSheet(body, {
    view: 'bend-template',
    ...(options.wide === undefined ? {} : { wide: options.wide }),
    title: `${shelter.name}: bend template`,
    subtitle: `${roof.stations.length} bows of ${roof.member.title}, ${m(total)} of ${stock} each${roof.legDriven > 0 ? `, of which ${m(roof.legDriven)} at each end goes into the ground` : ''}.`,
    description: rows.map(({ cells }) => cells.filter(Boolean).join(', ')).join('; '),
    labels: described.map(({ part, words }) => ({ part, label: words })),
    notes: [
      `All marks are measured from the left end of the straight ${stock}, along its centre line.`,
      ...howToBend(roof),
      ...(roof.joints.length > 0
        ? [
            `Joints are shown as boxes on the ${stock}; lengths are of the joined ${stock}, without what goes into the sleeves.`,
          ]
        : []),
    ],
  });
}

/** What is bent. */
function stockWord({ shape, member }: Bows): string {
  if (shape === 'laminated') return 'lath';
  return member.section.shape === 'round-hollow' && member.kind !== 'pole' ? 'pipe' : 'pole';
}

/** How it is brought into shape, by what kind of bow it is. */
function howToBend({ shape, member }: Bows): readonly string[] {
  if (shape === 'laminated')
    return [
      'Set blocks along the floor shape, bend and clamp the glued laths against them, and leave them until the glue holds: check the first bow on the floor shape after it came off.',
    ];
  if (member.kind === 'pole')
    return [
      'Bend over heat or while green, tie each to the floor shape and leave it until it holds. How far it opens again differs from pole to pole.',
    ];
  return [
    'Bend one, lay it on the floor shape above, and correct the bender before the rest.',
    'Springback is not included: it differs from pipe to pipe, so overbend on a test piece until it rests at the angle given.',
  ];
}

/** A, B, ... Z, AA, AB ... */
export function letter(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : `${letter(Math.floor(index / 26) - 1)}${last}`;
}

function pipeBar(
  roof: Bows,
  runs: readonly BendRun[],
  total: number,
  system: System,
  room: number,
): readonly Shape[] {
  const scale = room / total;
  const half = 9;
  const shapes: Shape[] = [box(roof.id, 'bar', point(0, -half), point(room, half))];
  for (const run of runs)
    if (run.radius !== undefined) {
      const outline = [
        point(run.from * scale, -half),
        point(run.to * scale, -half),
        point(run.to * scale, half),
        point(run.from * scale, half),
      ];
      shapes.push(path(roof.id, 'bar-hatch', hatch(outline, 60, 5)));
    }
  const letters: TextShape[] = [];
  roof.joints.forEach((joint, i) => {
    const at = (joint.at + roof.legDriven) * scale;
    const wide = Math.max(4, jointReach(joint.item) * scale);
    shapes.push(box(joint.id, 'joint', point(at - wide, -half - 3), point(at + wide, half + 3)));
    letters.push(
      text(joint.id, 'dimension', point(at, half + 17), `J${i + 1}`, { size: 10.5, anchor: 'middle' }),
    );
  });
  const marks = [...runs.map(({ from }) => from), total];
  const drawn = spread(
    marks.map((at) => at * scale),
    2 * BALLOON_RADIUS + 3,
  );
  marks.forEach((at, i) => {
    const x = at * scale;
    const shown = drawn[i] ?? x;
    shapes.push(
      path(roof.id, 'leader', [
        [point(x, -half - 4), point(x, half + 4)],
        [point(x, -half - 4), point(shown, -half - 16)],
        [point(x, half + 4), point(shown, half + 14)],
      ]),
      circle(roof.id, 'balloon', point(shown, -half - 16 - BALLOON_RADIUS), BALLOON_RADIUS),
      text(roof.id, 'note', point(shown, -half - 12 - BALLOON_RADIUS), letter(i), {
        size: 10,
        anchor: 'middle',
        bold: true,
      }),
      text(roof.id, 'dimension', point(shown + 3.8, half + 18), exactLength(at, system), {
        size: 10.5,
        anchor: 'end',
        turn: -90,
      }),
    );
  });
  return [...shapes, ...placeTexts(letters, shapes)];
}

/** Positions moved apart until neighbours have the gap, keeping their order and about their places. */
export function spread(places: readonly number[], gap: number): readonly number[] {
  const groups: { sum: number; count: number; low: number }[] = [];
  places.forEach((at, i) => {
    groups.push({ sum: at - i * gap, count: 1, low: at - i * gap });
    for (let k = groups.length - 1; k > 0; k--) {
      const [before, after] = [
        groups[k - 1] as (typeof groups)[number],
        groups[k] as (typeof groups)[number],
      ];
      if (before.low <= after.low) break;
      before.sum += after.sum;
      before.count += after.count;
      before.low = before.sum / before.count;
      groups.pop();
    }
  });
  return groups.flatMap(({ count, low }) => Array<number>(count).fill(low)).map((low, i) => low + i * gap);
}

/** Where a bow is lower than this, page units, its height is longer in letters and stands over it. */
const LOW = 66;

/** The bow above ground with heights over a base line at even steps from the left end. */
function floorShape(roof: Bows, top: number, system: System, room: number): readonly Shape[] {
  const xs = roof.line.map((p) => p.x);
  const ys = roof.line.map((p) => p.y);
  const [left, right, low] = [Math.min(...xs), Math.max(...xs), Math.min(...ys)];
  const high = Math.max(...ys);
  const frame = frameFor(right - left, high - low, room, 300);
  // Heights that stand over a low bow stand under the heading.
  const heading = (high - low) * frame.scale < LOW + 20 ? 76 : 20;
  const move = (p: Point): Point => point(p.x + 80, p.y + top + (high - low) * frame.scale + heading);
  const at = (x: number, y: number): Point => move(frame.at(x - left, y - low));
  const shapes: Shape[] = [
    text(roof.id, 'note', point(0, top), 'Floor shape: heights of the centre line over the base line', {
      size: 12,
      bold: true,
    }),
    polygon(
      roof.id,
      'member',
      band(
        roof.line.map((p) => at(p.x, p.y)),
        Math.max(2.4, depthOf(roof.member) * frame.scale),
      ),
    ),
    line('base-line', 'dimension', at(left, low), at(right, low)),
  ];
  const unit = system === 'us' ? 0.3048 : 1;
  const steps = system === 'us' ? [0.5, 1, 2, 4, 5, 10] : [0.1, 0.2, 0.25, 0.5, 1, 2, 5];
  const step = (steps.find((s) => s * unit * frame.scale >= 26) ?? 10) * unit;
  const crown = roof.line[ys.indexOf(high)]?.x ?? (left + right) / 2;
  const places: number[] = [];
  for (let x = left + step; x < right - step * 0.3; x += step)
    if (Math.abs(x - crown) > step * 0.4) places.push(x);
  places.push(crown);
  for (const x of places.sort((a, b) => a - b)) {
    const y = heightAt(roof.line, x);
    if (y === undefined) continue;
    const foot = at(x, low);
    shapes.push(
      line(roof.id, 'witness', foot, at(x, y)),
      text(
        roof.id,
        'dimension',
        (y - low) * frame.scale < LOW
          ? point(foot.x + 3.6, at(x, y).y - 10 - depthOf(roof.member) * frame.scale * 2)
          : point(foot.x - 3, foot.y - 8),
        exactLength(y - low, system),
        { size: 10, turn: -90 },
      ),
      text(roof.id, 'dimension', point(foot.x + 3.6, foot.y + 6), exactLength(x - left, system), {
        size: 10,
        anchor: 'end',
        turn: -90,
      }),
    );
  }
  const whole = (name: string, value: number, from: Point, to: Point): Measured => ({
    part: roof.id,
    name,
    value,
    text: `${name} ${exactLength(value, system)}`,
    from,
    to,
  });
  const { bottom, right: edge } = boundsOf(shapes.filter(({ kind }) => kind !== 'text'));
  shapes.push(
    ...stackDimensions('below', Math.max(bottom, at(left, low).y + 62), [
      whole('base', right - left, at(left, low), at(right, low)),
    ]),
    ...stackDimensions('right', edge, [whole('height', high - low, at(right, low), at(crown, high))]),
  );
  return shapes;
}
