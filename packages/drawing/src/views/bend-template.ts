/** Marks for bending a straight pipe into a bow, and the bow's own shape to lay out on a floor. */
import { format } from '@tautline/quantity';
import type { Bows, Shelter } from '@tautline/shelter';
import { describeParts } from '../describe.ts';
import { boundsOf } from '../scene/bounds.ts';
import { roomOf } from '../scene/frame.ts';
import { keptToSheet } from '../scene/kept.ts';
import { type Drawing, point, type Shape, type ViewOptions } from '../scene/shapes.ts';
import { finishSheet } from '../scene/sheet.ts';
import { table } from '../scene/table.ts';
import { type BendRun, bendRuns } from './bend-runs.ts';
import { exactLength } from './exact.ts';
import { floorShape } from './floor-shape.ts';
import { letter, pipeBar } from './pipe-bar.ts';

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
