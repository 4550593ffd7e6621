import type { StepInput } from '@tautline/loads';
import type { Brace, MemberItem, Shelter } from '@tautline/shelter';
import { type Response, sectionOf, weightPerLength } from '@tautline/structure';
import { strongerCable } from '../anchor-levers.ts';
import type { Check, CheckInput } from '../check.ts';
import { given, inWords, measured, step } from '../judge.ts';
import { stouter } from '../levers.ts';
import { type Limit, type Told, type Use, worstOf } from '../limit.ts';
import { mostPressed, type PressedUse, pressedUse } from '../pressed.ts';
import { limitsUnder } from '../resistance.ts';
import { cableWorking } from '../rigging.ts';
import { leastRadius } from '../slender.ts';

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

function limits({ shelter, frame }: CheckInput): Limit[] {
  if (!frame.ok) return [];
  // Ties that the frame has no place for have no forces in it.
  const inFrame = new Set(frame.analysis.states.built.system.elements.map(({ part }) => part));
  return shelter.braces
    .filter(({ role, id }) => role === 'tie' && inFrame.has(id))
    .map((tie): Limit => {
      const { member } = tie;
      const pulled = pulling(shelter, tie);
      const pressed = member.kind === 'cable' ? () => undefined : pressing(shelter, tie, member);
      return {
        by: 'frame',
        part: tie,
        gives: member.kind === 'cable' ? 'the tie parts' : 'the tie buckles or parts',
        sacrificial: tie.sacrificial === true,
        use: (response) => worstOf([pressed(response), pulled(response)]),
      };
    });
}

interface MayPull {
  readonly allowed: number;
  readonly inputs: readonly StepInput[];
}

/** What a tie may be pulled with, N: a wire, or a bar that hangs by its own weight. */
function mayPull(shelter: Shelter, tie: Brace): (load: Response['load']) => MayPull {
  const { member } = tie;
  if (member.kind === 'cable') {
    const allowed = cableWorking(member);
    return () => ({ allowed, inputs: [] });
  }
  const { bending } = ofItself(tie, member);
  const limitUnder = limitsUnder(shelter.site, member);
  return (load) => {
    const limit = limitUnder(load);
    const { area } = sectionOf(member);
    return {
      allowed: Math.max(0, 1 - bending / limit.bending) * limit.tension * area,
      inputs: [
        given('σ_b', 'bending of its own weight', bending, 'stress'),
        given('f_b', 'bending stress it may have', limit.bending, 'stress'),
        given('A', 'area', area, 'area'),
        given('f_t', 'tension it may have', limit.tension, 'stress'),
      ],
    };
  };
}

function pulling(shelter: Shelter, tie: Brace): (response: Response) => Use | undefined {
  const may = mayPull(shelter, tie);
  return ({ load, forces }) => {
    const pull = Math.max(0, ...forces.map(({ part, axial }) => (part === tie.id ? axial : 0)));
    if (pull === 0) return undefined;
    const held = may(load);
    const allowed = Math.max(held.allowed, 1e-6);
    return {
      utilisation: pull / allowed,
      loadCase: load.title,
      tell: () => tellPull(tie, pull, held, load.title),
    };
  };
}

function tellPull({ member }: Brace, pull: number, { allowed, inputs }: MayPull, loadCase: string): Told {
  const wire = member.kind === 'cable';
  return {
    demand: measured(pull, 'force'),
    capacity: measured(allowed, 'force'),
    message: [
      `Each tie of ${member.title} is pulled with `,
      measured(pull, 'force'),
      ` under ${loadCase}; it may be pulled with `,
      measured(allowed, 'force'),
      '.',
    ],
    source: wire ? 'rigging' : 'frame',
    steps: [
      inWords('N', 'pull', 'from the frame analysis', [], pull, 'force', 'frame'),
      step(
        'N_t',
        'pull it may have',
        wire ? 'N_t = η F_b / n' : 'N_t = max(0, 1 - σ_b / f_b) A f_t',
        inputs,
        allowed,
        'force',
        wire ? 'rigging' : 'timoshenko:beam',
      ),
    ],
  };
}

/** Thrust with the bending of its own weight. */
function pressing(shelter: Shelter, tie: Brace, member: MemberItem): (response: Response) => Use | undefined {
  const { bending, slenderness } = ofItself(tie, member);
  const useOf = pressedUse(shelter.site, member, slenderness, false);
  return ({ forces, load }) => {
    const thrusts = forces.filter(({ part, axial }) => part === tie.id && axial < 0);
    const worst = mostPressed(
      useOf,
      thrusts.map(({ axial }) => ({
        thrust: -axial,
        bending,
        loadCase: load.title,
        duration: load.duration,
      })),
    );
    if (worst === undefined) return undefined;
    return {
      utilisation: worst.both.utilisation,
      loadCase: load.title,
      tell: () => tellPress(tie, member, worst),
    };
  };
}

function tellPress(tie: Brace, member: MemberItem, { load, column, both, limit }: PressedUse): Told {
  const section = sectionOf(member);
  const { span, bending, slenderness } = ofItself(tie, member);
  const capacity = column.stress * section.area;
  return {
    demand: measured(load.thrust, 'force'),
    capacity: measured(capacity, 'force'),
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
      inWords('N', 'thrust', 'from the frame analysis', [], load.thrust, 'force', 'frame'),
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
        'σ_b = g L² / (8 W)',
        [
          given('g', 'weight', weightPerLength(member), 'line-load'),
          given('W', 'section modulus', section.sectionModulus, 'section-modulus'),
        ],
        bending,
        'stress',
        'beam-table',
      ),
      ...limit.steps,
      both.step,
    ],
  };
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
  needs: 'frame',
  appliesTo: ({ braces }) => braces.some(({ role }) => role === 'tie'),
  limits,
  levers: (input, finding, stock) => {
    const tie = input.shelter.braces.find((entry) => entry.id === finding.part);
    if (tie === undefined) return [];
    const { member, origin } = tie;
    return [
      member.kind === 'cable' ? strongerCable({ origin, member }, stock) : stouter({ origin, member }, stock),
    ];
  },
};
