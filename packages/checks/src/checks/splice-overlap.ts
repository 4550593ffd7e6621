import {
  type Bows,
  type JointUse,
  lengthOf,
  type MemberItem,
  type Rafters,
  type Shelter,
} from '@tautline/shelter';
import { depthOf, type FrameAnalysis, type Response } from '@tautline/structure';
import type { Check, CheckInput } from '../check.ts';
import { namedJoint } from '../joint-name.ts';
import { given, inWords, measured, step } from '../judge.ts';
import { type Limit, type Told, unknown, worstOf } from '../limit.ts';
import { buildingLimit, type MemberLimit } from '../resistance.ts';
import { bendingForces, looksAt } from '../springing.ts';

/** Joints in which one piece is held in or on the other over a length. */
const sliding = ['socket', 'sleeve', 'lashing'];

/** Largest bending at a place along the frame in one response, from either side, N·m. */
function bendingAt(
  { forces }: Pick<Response, 'forces'>,
  part: string,
  total: number,
  at: number,
): number | undefined {
  const own = forces.filter((force) => force.part === part);
  let most: number | undefined;
  for (const place of [at, total - at]) {
    const nearest = Math.min(...own.map((force) => Math.abs(force.at - place)));
    for (const force of own) {
      if (Math.abs(force.at - place) > nearest + 1e-9) continue;
      most = Math.max(most ?? 0, Math.abs(force.moment));
    }
  }
  return most;
}

/** The joints along a frame that hold their pieces over a length. */
const slidingJoints = ({ roof }: Shelter): readonly JointUse[] =>
  roof.type === 'bows' || roof.type === 'rafters'
    ? roof.joints.filter((joint) => sliding.includes(joint.item.form))
    : [];

/** Pressure at the ends of an overlap from bending as a couple over it, Pa. */
function endPressure(moment: number, width: number, insertion: number): number {
  return (6 * moment) / (width * insertion ** 2);
}

function limits({ shelter, frame }: CheckInput): Limit[] {
  const { roof } = shelter;
  if (!frame.ok || (roof.type !== 'bows' && roof.type !== 'rafters')) return [];
  const { states } = frame.analysis;
  return slidingJoints(shelter).map((joint) => ofJoint(shelter, roof, joint, states));
}

function ofJoint(
  { site }: Shelter,
  roof: Bows | Rafters,
  joint: JointUse,
  states: FrameAnalysis['states'],
): Limit {
  const { insertion, title } = joint.item;
  if (!(insertion > 0)) return unknown(joint, `the catalogue does not say how far ${title} reaches in`);
  const looks = looksAt(site, roof.member, states, { sprung: states.built.system.sprung });
  const whileBuilding = buildingLimit(site, roof.member);
  const width = depthOf(roof.member);
  return {
    by: 'frame',
    part: joint,
    gives: `${namedJoint(roof, joint)} levers itself open`,
    sacrificial: roof.sacrificial === true || joint.sacrificial === true,
    onTheDay: true,
    unasked: 'the frame analysis has no forces at this joint',
    use: (response) => {
      const { load, condition } = response;
      const found = looks(response).map((look) => {
        const moment = bendingAt({ forces: bendingForces(look) }, roof.id, lengthOf(roof.line), joint.at);
        if (moment === undefined) return undefined;
        const limit = condition === 'built' ? whileBuilding : look.limit;
        const pressure = endPressure(moment, width, insertion);
        return {
          utilisation: pressure / limit.axial,
          loadCase: load.title,
          tell: () => tell(roof.member, joint, { moment, width, pressure, limit }),
        };
      });
      return worstOf(found);
    },
  };
}

function tell(
  member: MemberItem,
  { at, item: { title, insertion } }: JointUse,
  { moment, width, pressure, limit }: { moment: number; width: number; pressure: number; limit: MemberLimit },
): Told {
  return {
    demand: measured(pressure, 'stress'),
    capacity: measured(limit.axial, 'stress'),
    message: [
      `${title} holds each piece over `,
      measured(insertion, 'length'),
      '; the bending there presses its ends with ',
      measured(pressure, 'stress'),
      `, where ${member.title} may have `,
      measured(limit.axial, 'stress'),
      '.',
    ],
    source: 'statics',
    steps: [
      inWords(
        'M',
        'bending at the joint',
        'from the frame analysis',
        [given('s', 'place of the joint', at, 'length')],
        moment,
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
      ...limit.axialSteps,
    ],
  };
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
  needs: 'frame',
  appliesTo: (shelter) => slidingJoints(shelter).length > 0,
  limits,
};
