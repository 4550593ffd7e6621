import type { Brace, MemberItem, Shelter } from '@tautline/shelter';
import { type FrameAnalysis, type Response, sectionOf, weightPerLength } from '@tautline/structure';
import type { Check, CheckInput } from '../check.ts';
import type { Finding } from '../finding.ts';
import { given, judge, measured, step } from '../judge.ts';
import { stouter } from '../levers.ts';
import { mostPressed, type Pressed } from '../pressed.ts';
import { leastRadius } from '../slender.ts';

/** Thrusts of the ties of one kind with the bending of their own weight. */
function pressedIn(responses: readonly Response[], tie: Brace, bending: number): Pressed[] {
  return responses
    .filter((response) => response.load.use !== 'service' && response.status === 'holds')
    .flatMap((response) =>
      response.forces
        .filter((force) => force.part === tie.id && force.axial < 0)
        .map(
          (force): Pressed => ({
            thrust: -force.axial,
            bending,
            loadCase: response.load.title,
            steady: response.load.sustained,
          }),
        ),
    );
}

/** Stress by the weight of the tie itself over its span, Pa, and its slenderness the weak way. */
function ofItself(tie: Brace, member: MemberItem): { span: number; bending: number; slenderness: number } {
  const span = Math.abs(tie.to.x - tie.from.x);
  const moment = (weightPerLength(member) * span * span) / 8;
  return {
    span,
    bending: moment / sectionOf(member).sectionModulus,
    slenderness: span / leastRadius(member),
  };
}

/** Share of what it may be pressed with that a tie takes in one response; undefined where nothing presses it. */
export function tieUse(
  shelter: Shelter,
  response: Response,
  tie: Brace,
  member: MemberItem,
): number | undefined {
  const { bending, slenderness } = ofItself(tie, member);
  return mostPressed(shelter.site, member, slenderness, false, pressedIn([response], tie, bending))?.both
    .utilisation;
}

function onTie(shelter: Shelter, analysis: FrameAnalysis, tie: Brace, member: MemberItem): Finding[] {
  const section = sectionOf(member);
  const { span, bending, slenderness } = ofItself(tie, member);
  const worst = mostPressed(
    shelter.site,
    member,
    slenderness,
    false,
    pressedIn(analysis.responses, tie, bending),
  );
  if (worst === undefined) return [];
  const { load, column, both } = worst;
  const capacity = column.stress * section.area;
  return [
    judge({
      id: tieBuckling.id,
      part: tie,
      utilisation: both.utilisation,
      demand: measured(load.thrust, 'force'),
      capacity: measured(capacity, 'force'),
      loadCase: load.loadCase,
      message: [
        `Each tie of ${member.title} is pressed with `,
        measured(load.thrust, 'force'),
        ` under ${load.loadCase}; over `,
        measured(span, 'length'),
        ' it may be pressed with ',
        measured(capacity, 'force'),
        ', its own weight left aside.',
      ],
      source: column.source,
      steps: [
        step('N', 'thrust', 'from the frame analysis', [], load.thrust, 'force', 'frame'),
        step(
          'L / r',
          'slenderness',
          'L / r',
          [
            given('L', 'length between the heads', span, 'length'),
            given('r', 'radius of gyration, weak axis', leastRadius(member), 'thickness'),
          ],
          slenderness,
          'ratio',
          'euler',
        ),
        ...column.steps,
        step(
          'σ_b',
          'bending of its own weight',
          'σ_b = g L² / 8 W',
          [
            given('g', 'weight', weightPerLength(member), 'line-load'),
            given('W', 'section modulus', section.sectionModulus, 'section-modulus'),
          ],
          bending,
          'stress',
          'beam-table',
        ),
        ...worst.limit.steps,
        both.step,
      ],
    }),
  ];
}

function run(input: CheckInput): Finding[] {
  const { shelter, frame } = input;
  if (!frame.ok) return [];
  return shelter.braces.flatMap((brace) =>
    brace.role === 'tie' && brace.member.kind !== 'cable'
      ? onTie(shelter, frame.analysis, brace, brace.member)
      : [],
  );
}

export const tieBuckling: Check = {
  id: 'tie-buckling',
  title: 'Buckling of ties',
  asks: 'Does a tie that is pressed between the two sides stay straight?',
  matters:
    'Blown-up films pull the two sides together day and night, and wind on a wall does in a gust; a tie that bows out lets them come.',
  formula: 'u from N / (A F_a) and σ_b / f_b, F_a by the slenderness L / r',
  symbols: [
    { symbol: 'N', meaning: 'thrust in the tie', kind: 'force' },
    { symbol: 'F_a', meaning: 'stress at its slenderness', kind: 'stress' },
    { symbol: 'L', meaning: 'length of the tie', kind: 'length' },
    { symbol: 'r', meaning: 'radius of gyration about the weak axis', kind: 'thickness' },
  ],
  sources: [
    'frame',
    'euler',
    'aisi-s100:e2',
    'en1993-1-1:6.3.1',
    'nds:3.7',
    'en1995-1-1:6.3.2',
    'iso22156:column',
  ],
  leavesOut:
    'What hangs from the tie, how it is fixed at its ends, and how much a tie of wire or rope is pulled.',
  mayBeAccepted: 'When something holds the tie in its middle that the spec does not name.',
  run,
  levers: (input, finding, stock) => {
    const tie = input.shelter.braces.find((entry) => entry.id === finding.part);
    return tie === undefined || tie.member.kind === 'cable'
      ? []
      : [stouter({ origin: tie.origin, member: tie.member }, stock)];
  },
};
