import type { Step } from '@tautline/loads';
import type { Brace, CableItem, MemberItem, Shelter } from '@tautline/shelter';
import {
  type HouseAnalysis,
  type HouseResponse,
  type LoadPath,
  type PieceForces,
  sectionOf,
} from '@tautline/structure';
import type { Check, CheckInput } from '../check.ts';
import type { Found } from '../finding.ts';
import { sideGuys } from '../guys.ts';
import { given, inWords, measured, nearLimit, notChecked, step } from '../judge.ts';
import { grownByPressure, type Limit, type Use, worstOf } from '../limit.ts';
import { memberLimit } from '../resistance.ts';
import { cableWorking } from '../rigging.ts';

function run({ shelter, house }: CheckInput): Found[] {
  if (house?.ok !== true) return [];
  const broken = house.house.responses.find((response) => response.status !== 'holds');
  return [standing(shelter, house.house, broken)];
}

/** Whether the house as a whole holds under every combination, and how far it moves along its length. */
function standing(shelter: Shelter, house: HouseAnalysis, broken: HouseResponse | undefined): Found {
  const { racking } = house;
  const part = shelter.roof;
  if (broken?.status === 'no answer')
    return notChecked(part, `the whole house found no balance under ${broken.load.title}`, 'house');
  const reached = broken?.reached ?? (racking.unheld ? 0 : 1);
  const drifted = [
    inWords(
      'd',
      'largest movement along the house under wind along it',
      'from the analysis of the whole house',
      [given('y', 'height it happens at', racking.driftHeight, 'length')],
      racking.drift,
      'length',
      'house',
    ),
  ];
  if (racking.unheld || broken !== undefined)
    return {
      verdict: 'fails',
      severity: 'error',
      part: part.id,
      origin: part.origin,
      related: [],
      message: racking.unheld
        ? ['Nothing in the model keeps the whole house from leaning over along its length.']
        : ['The whole house gives way at ', measured(reached, 'percent'), ` of ${broken!.load.title}.`],
      utilisation: 1 / Math.max(reached, 1e-3),
      source: 'house',
      steps: broken === undefined ? [] : drifted,
      ...(broken === undefined ? {} : { loadCase: broken.load.title }),
    };
  const first = firstToGiveWay(house);
  const utilisation = first === undefined ? undefined : 1 / first.givesWayAt;
  const near = utilisation !== undefined && utilisation > nearLimit;
  return {
    verdict: near ? 'near its limit' : 'passes',
    severity: near ? 'warning' : 'information',
    part: part.id,
    origin: part.origin,
    related: [],
    message: [
      'The whole house holds under every combination and moves ',
      measured(racking.drift, 'length'),
      ` along its length under ${racking.loadCase || 'wind along it'}.`,
      ...(first === undefined
        ? []
        : [' It gives way at ', measured(first.givesWayAt, 'ratio'), ` times ${first.load}.`]),
    ],
    source: 'house',
    steps: [...drifted, ...house.loadPaths.map(followed)],
    ...(utilisation === undefined ? {} : { utilisation }),
    ...(racking.loadCase === '' ? {} : { loadCase: racking.loadCase }),
  };
}

/** The load that the house stands the fewest times, of those that were seen to bring it down. */
function firstToGiveWay({ loadPaths }: HouseAnalysis): { load: string; givesWayAt: number } | undefined {
  return loadPaths
    .flatMap(({ load, givesWayAt }) => (givesWayAt === null ? [] : [{ load, givesWayAt }]))
    .sort((a, b) => a.givesWayAt - b.givesWayAt)[0];
}

/** A load followed upwards until the stiffness of the house is gone. */
function followed({ load, givesWayAt, stableAt, cap }: LoadPath): Step {
  const what =
    givesWayAt !== null
      ? 'and gives way beyond it'
      : stableAt >= cap
        ? 'the most that was looked at'
        : 'and found no balance beyond it, though its stiffness was not gone';
  return step(
    'λ',
    `times ${load} under which the house still stands, ${what}`,
    'load raised until K(u) is no longer positive definite',
    [given('λ_max', 'most that is looked at', cap, 'ratio')],
    stableAt,
    'ratio',
    'house',
  );
}

/** Braces, guys and ties by the pull or push they take in the whole house; wires of side guys have a check of their own. */
function limits({ shelter, house }: CheckInput): Limit[] {
  if (house?.ok !== true) return [];
  const { bracing } = house.house.racking;
  const guys = sideGuys(shelter).filter(({ member }) => member.kind === 'cable');
  return shelter.braces.flatMap((brace): Limit[] => {
    const own = bracing.filter((piece) => piece.part === brace.id);
    if (guys.includes(brace) || own.length === 0) return [];
    return [
      {
        ...grownByPressure(worstPiece(shelter, brace, own), undefined),
        part: brace,
        gives: `the ${brace.role} gives in the whole house`,
        sacrificial: brace.sacrificial === true,
      },
    ];
  });
}

function worstPiece(shelter: Shelter, brace: Brace, pieces: readonly PieceForces[]): Use | undefined {
  const { from, to } = brace;
  const length = Math.hypot(to.x - from.x, to.y - from.y, to.z - from.z);
  const { pull, push } = limitsOf(shelter, brace.member, length);
  return worstOf(
    pieces.map((worst): Use => {
      const pushed = worst.push / push > worst.pull / pull;
      const demand = pushed ? worst.push : worst.pull;
      const capacity = pushed ? push : pull;
      return {
        utilisation: demand / capacity,
        loadCase: worst.loadCase,
        tell: () => ({
          demand: measured(demand, 'force'),
          capacity: measured(capacity, 'force'),
          message: [
            `In the whole house a ${brace.role} of ${brace.member.title} is ${pushed ? 'pushed' : 'pulled'} with `,
            measured(demand, 'force'),
            ` under ${worst.loadCase}; it may take `,
            measured(capacity, 'force'),
            '.',
          ],
          source: 'house',
          steps: [
            inWords(
              'N',
              'force along it',
              'from the analysis of the whole house',
              [],
              demand,
              'force',
              'house',
            ),
            ...(pushed
              ? [
                  step(
                    'N_a',
                    'push it may take before it bows out, half of Euler',
                    'N_a = π² E I / 2 l²',
                    [given('l', 'free length', length, 'length')],
                    capacity,
                    'force',
                    'timoshenko:stability',
                  ),
                ]
              : []),
          ],
        }),
      };
    }),
  );
}

/** What a brace may be pulled and pushed with, N: a cable takes no push in the analysis. */
function limitsOf(
  shelter: Shelter,
  member: Brace['member'] & (MemberItem | CableItem),
  length: number,
): { pull: number; push: number } {
  if (member.kind === 'cable') return { pull: cableWorking(member), push: Number.MAX_VALUE };
  const section = sectionOf(member);
  const pull = memberLimit(shelter.site, member, 'gust').tension * section.area;
  const { shape } = member.section;
  const weak =
    shape === 'rectangle'
      ? (Math.min(member.section.depth, member.section.breadth) ** 3 *
          Math.max(member.section.depth, member.section.breadth)) /
        12
      : section.secondMoment;
  const euler = (Math.PI ** 2 * member.material.modulus * weak) / length ** 2;
  return { pull, push: Math.min(pull, euler / 2) };
}

export const wholeHouse: Check = {
  id: 'whole-house',
  title: 'Whole house in space',
  asks: 'Does the house as a whole stand up to every combination, and do its braces, guys and ties take what it brings them?',
  matters: 'A house can fall between frames that each stand: along its length, frame after frame.',
  formula: 'u = N / N_a; det K(λ) = 0 along the load path of the whole house',
  symbols: [
    { symbol: 'N', meaning: 'largest pull or push in a brace, guy or tie', kind: 'force' },
    {
      symbol: 'N_a',
      meaning: 'what it may take: its strength, or half of Euler’s load when pushed',
      kind: 'force',
    },
    { symbol: 'λ', meaning: 'times the load at which the house loses its stiffness', kind: 'ratio' },
  ],
  sources: ['house', 'rigging', 'timoshenko:stability'],
  leavesOut:
    'Looked at only in the full analysis. Loads are raised no further than to twice. Wires of side guys (guy-pull), film as a brace, uprights of the ends (end-frame), doors, the screws and lashings at the ends of braces, braces fixed to the frames they cross.',
  mayBeAccepted: 'When end walls, or ground the house is dug into, hold it along its length.',
  needs: 'house',
  run,
  limits,
  levers: () => [],
};
