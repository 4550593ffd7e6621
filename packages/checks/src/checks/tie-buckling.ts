import type { Duration } from '@tautline/loads';
import type { Brace, MemberItem, Shelter } from '@tautline/shelter';
import { type FrameAnalysis, type Response, sectionOf, weightPerLength } from '@tautline/structure';
import { strongerCable } from '../anchor-levers.ts';
import type { Check, CheckInput } from '../check.ts';
import type { Found } from '../finding.ts';
import { given, judge, measured, step } from '../judge.ts';
import { stouter } from '../levers.ts';
import { mostPressed, type Pressed } from '../pressed.ts';
import { memberLimit } from '../resistance.ts';
import { cableWorking } from '../rigging.ts';
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
            duration: response.load.duration,
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

/** Share of what it may be pressed or pulled with that a tie takes in one response; undefined where nothing does. */
export function tieUse(shelter: Shelter, response: Response, tie: Brace): number | undefined {
  const { member } = tie;
  const pulled = mostPulled([response], tie, mayPull(shelter, tie));
  const pull = pulled === undefined ? undefined : pulled.pull / pulled.allowed;
  if (member.kind === 'cable') return pull;
  const { bending, slenderness } = ofItself(tie, member);
  const pressed = mostPressed(shelter.site, member, slenderness, false, pressedIn([response], tie, bending))
    ?.both.utilisation;
  return pull === undefined ? pressed : Math.max(pull, pressed ?? 0);
}

/** What a tie may be pulled with, N: a wire, or a bar that hangs by its own weight, by how long the load stays. */
function mayPull(shelter: Shelter, tie: Brace): (duration: Duration) => number {
  const { member } = tie;
  if (member.kind === 'cable') return () => cableWorking(member);
  const { bending } = ofItself(tie, member);
  return (duration) => {
    const limit = memberLimit(shelter.site, member, duration);
    return Math.max(0, 1 - bending / limit.bending) * limit.tension * sectionOf(member).area;
  };
}

interface Pulled {
  readonly pull: number;
  readonly allowed: number;
  readonly loadCase: string;
}

/** The pull that comes nearest to what a tie may be pulled with. */
function mostPulled(
  responses: readonly Response[],
  tie: Brace,
  may: (duration: Duration) => number,
): Pulled | undefined {
  let most: Pulled | undefined;
  for (const { load, status, forces } of responses) {
    if (load.use === 'service' || status !== 'holds') continue;
    const allowed = Math.max(may(load.duration), 1e-6);
    for (const { part, axial: pull } of forces)
      if (part === tie.id && pull > 0 && (most === undefined || pull / allowed > most.pull / most.allowed))
        most = { pull, allowed, loadCase: load.title };
  }
  return most;
}

function onPull(shelter: Shelter, analysis: FrameAnalysis, tie: Brace): Found[] {
  const worst = mostPulled(analysis.responses, tie, mayPull(shelter, tie));
  if (worst === undefined) return [];
  const { pull, allowed, loadCase } = worst;
  const wire = tie.member.kind === 'cable';
  return [
    judge({
      part: tie,
      utilisation: pull / allowed,
      demand: measured(pull, 'force'),
      capacity: measured(allowed, 'force'),
      loadCase,
      message: [
        `Each tie of ${tie.member.title} is pulled with `,
        measured(pull, 'force'),
        ` under ${loadCase}; it may be pulled with `,
        measured(allowed, 'force'),
        '.',
      ],
      source: wire ? 'rigging' : 'frame',
      steps: [
        step('N', 'pull', 'from the frame analysis', [], pull, 'force', 'frame'),
        step(
          'N_t',
          'pull it may have',
          wire ? 'N_t = η F_b / n' : 'N_t = (1 - σ_b / f_b) A f_t',
          [],
          allowed,
          'force',
          wire ? 'rigging' : 'timoshenko:beam',
        ),
      ],
    }),
  ];
}

const harder = (a: Found, b: Found): Found => ((b.utilisation ?? 0) > (a.utilisation ?? 0) ? b : a);

function onTie(shelter: Shelter, analysis: FrameAnalysis, tie: Brace, member: MemberItem): Found[] {
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

function run(input: CheckInput): Found[] {
  const { shelter, frame } = input;
  if (!frame.ok) return [];
  return shelter.braces.flatMap((brace) => {
    if (brace.role !== 'tie') return [];
    const { member } = brace;
    const all = [
      ...(member.kind === 'cable' ? [] : onTie(shelter, frame.analysis, brace, member)),
      ...onPull(shelter, frame.analysis, brace),
    ];
    return all.length === 0 ? [] : [all.reduce(harder)];
  });
}

export const tieBuckling: Check = {
  id: 'tie-buckling',
  title: 'Pull and buckling of ties',
  asks: 'Does a tie that is pressed between the two sides stay straight, and does one that is pulled hold?',
  matters:
    'Blown-up films pull the two sides together day and night, and wind on a wall does in a gust; a tie that bows out lets them come.',
  formula: 'u from N / (A F_a) and σ_b / f_b, F_a by the slenderness L / r; pulled, u = N / N_t',
  symbols: [
    { symbol: 'N', meaning: 'thrust in the tie', kind: 'force' },
    { symbol: 'N_t', meaning: 'pull that a wire, or a bar with its own weight, may have', kind: 'force' },
    { symbol: 'F_a', meaning: 'stress at its slenderness', kind: 'stress' },
    { symbol: 'L', meaning: 'length of the tie', kind: 'length' },
    { symbol: 'r', meaning: 'radius of gyration about the weak axis', kind: 'thickness' },
  ],
  sources: [
    'frame',
    'rigging',
    'timoshenko:beam',
    'euler',
    'aisi-s100:e2',
    'en1993-1-1:6.3.1',
    'nds:3.7',
    'en1995-1-1:6.3.2',
    'iso22156:column',
  ],
  leavesOut: 'What hangs from the tie, and how it is fixed at its ends.',
  mayBeAccepted: 'When something holds the tie in its middle that the spec does not name.',
  run,
  levers: (input, finding, stock) => {
    const tie = input.shelter.braces.find((entry) => entry.id === finding.part);
    if (tie === undefined) return [];
    const { member, origin } = tie;
    return [
      member.kind === 'cable' ? strongerCable({ origin, member }, stock) : stouter({ origin, member }, stock),
    ];
  },
};
