import type { Bows, JointUse, Rafters, Shelter } from '@tautline/shelter';
import { depthOf, type Response } from '@tautline/structure';
import type { Check, CheckInput } from '../check.ts';
import type { Found } from '../finding.ts';
import { given, judge, measured, notChecked, step } from '../judge.ts';
import { memberLimit } from '../resistance.ts';

/** Joints in which one piece is held in or on the other over a length. */
const sliding = ['socket', 'sleeve', 'lashing'];

/** Largest bending at a place along the frame, from either side, N·m. */
function bendingAt(
  responses: readonly Response[],
  part: string,
  total: number,
  at: number,
): { moment: number; response: Response } | undefined {
  let worst: { moment: number; response: Response } | undefined;
  for (const response of responses) {
    if (response.load.use === 'service' || response.status !== 'holds') continue;
    const own = response.forces.filter((force) => force.part === part);
    for (const place of [at, total - at]) {
      const nearest = Math.min(...own.map((force) => Math.abs(force.at - place)));
      for (const force of own) {
        if (Math.abs(force.at - place) > nearest + 1e-9) continue;
        const moment = Math.abs(force.moment);
        if (worst === undefined || moment > worst.moment) worst = { moment, response };
      }
    }
  }
  return worst;
}

/** The joints along a frame that hold their pieces over a length. */
export function slidingJoints(roof: Bows | Rafters): readonly JointUse[] {
  return roof.joints.filter((joint) => sliding.includes(joint.item.form));
}

/** Pressure at the ends of an overlap from bending as a couple over it, Pa. */
function endPressure(moment: number, width: number, insertion: number): number {
  return (6 * moment) / (width * insertion ** 2);
}

/** Share of its limit that a joint takes in one response; undefined where that is not known. */
export function overlapUse(
  { site }: Shelter,
  roof: Bows | Rafters,
  joint: JointUse,
  response: Response,
): number | undefined {
  const { insertion } = joint.item;
  if (!(insertion > 0)) return undefined;
  const worst = bendingAt([response], roof.id, roof.line.at(-1)!.s, joint.at);
  if (worst === undefined) return undefined;
  const limit = memberLimit(site, roof.member, response.load.duration);
  return endPressure(worst.moment, depthOf(roof.member), insertion) / limit.axial;
}

function run(input: CheckInput): Found[] {
  const { roof, site } = input.shelter;
  if (roof.type !== 'bows' && roof.type !== 'rafters') return [];
  return slidingJoints(roof).map((joint) => {
    if (!input.frame.ok) return notChecked(joint, input.frame.reason);
    const { insertion } = joint.item;
    if (!(insertion > 0))
      return notChecked(joint, `the catalogue does not say how far ${joint.item.title} reaches in`);
    const total = roof.line.at(-1)!.s;
    const worst = bendingAt(input.frame.analysis.responses, roof.id, total, joint.at);
    if (worst === undefined) return notChecked(joint, 'the frame gives way before the joint can be judged');
    const width = depthOf(roof.member);
    const pressure = endPressure(worst.moment, width, insertion);
    const limit = memberLimit(site, roof.member, worst.response.load.duration);
    return judge({
      part: joint,
      utilisation: pressure / limit.axial,
      demand: measured(pressure, 'stress'),
      capacity: measured(limit.axial, 'stress'),
      loadCase: worst.response.load.title,
      message: [
        `${joint.item.title} holds each piece over `,
        measured(insertion, 'length'),
        '; the bending there presses its ends with ',
        measured(pressure, 'stress'),
        `, where ${roof.member.title} may have `,
        measured(limit.axial, 'stress'),
        '.',
      ],
      source: 'statics',
      steps: [
        step(
          'M',
          'bending at the joint',
          'from the frame analysis',
          [given('s', 'place of the joint', joint.at, 'length')],
          worst.moment,
          'moment',
          'frame',
        ),
        step(
          'p',
          'pressure at the ends of the overlap, bending as a couple over it',
          'p = 6 M / (d l²)',
          [
            given('d', 'breadth of the member', width, 'length'),
            given('l', 'overlap on one side', insertion, 'length'),
          ],
          pressure,
          'stress',
          'statics',
        ),
        ...limit.steps,
      ],
    });
  });
}

export const spliceOverlap: Check = {
  id: 'splice-overlap',
  title: 'Overlap of splices',
  asks: 'Do sockets, sleeves and lashed overlaps hold the pieces over a length that can carry the bending?',
  matters: 'A short overlap levers itself open: it ovals the pipe, splits the bamboo, and works loose.',
  formula: 'u = 6 M / (d l² f_c)',
  symbols: [
    { symbol: 'M', meaning: 'bending at the joint', kind: 'moment' },
    { symbol: 'd', meaning: 'breadth of the member', kind: 'length' },
    { symbol: 'l', meaning: 'overlap on one side of the joint', kind: 'length' },
    { symbol: 'f_c', meaning: 'pressure the member may have', kind: 'stress' },
  ],
  sources: ['frame', 'statics'],
  leavesOut:
    'Glue and screws, which spread the pressure; splitting of bamboo along its fibres; play in the socket.',
  mayBeAccepted: 'When the joint is glued over its whole length and a bent trial piece held.',
  run,
};
