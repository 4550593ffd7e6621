import { groundAllowedAt, type Step } from '@tautline/loads';
import { type EndFrames, itemValue, type Shelter } from '@tautline/shelter';
import { type HouseAnalysis, sectionOf, type UprightUnder } from '@tautline/structure';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import {
  endFootUse,
  endRailUse,
  type PieceUse,
  type RailUse,
  type UprightUse,
  uprightUse,
} from '../end-uses.ts';
import type { Finding, Found, MessagePiece } from '../finding.ts';
import { footUplift } from '../ground.ts';
import { footSideways } from '../ground-sideways.ts';
import { footSinking } from '../ground-sinking.ts';
import { given, judge, measured, notChecked, step } from '../judge.ts';
import { deeper, inConcrete, stouter, wider } from '../levers.ts';
import { setQuantity } from '../slots.ts';

function run({ shelter, house }: CheckInput): Found[] {
  const { endFrames } = shelter;
  if (house === undefined || endFrames === undefined || endFrames.uprights.length === 0) return [];
  if (!house.ok) return [notChecked(endFrames, house.reason, 'house')];
  const loaded = loadedUprights(house.house);
  const upright = uprightUse(shelter, endFrames, loaded);
  if (upright === undefined)
    return [notChecked(endFrames, 'the whole house holds under no combination', 'house')];
  const rail = endRailUse(shelter, endFrames, house.house.endRails);
  return [
    onUpright(endFrames, upright),
    ...(rail === undefined ? [] : [onRail(endFrames, rail)]),
    ...onFoot(shelter, endFrames, loaded),
  ];
}

/** Uprights under the combinations for members. */
export function loadedUprights({ uprights }: HouseAnalysis): readonly UprightUnder[] {
  return uprights.filter(({ load }) => load.use !== 'service');
}

export const railPart = (ends: EndFrames): { readonly id: string; readonly origin: EndFrames['origin'] } => ({
  id: `${ends.id}/rail`,
  origin: ends.rail?.origin ?? ends.origin,
});

function onUpright(part: EndFrames, worst: UprightUse): Found {
  const { under } = worst;
  return onPiece(part, worst, part.member, under.load.title, 'upright', [
    `The upright of ${part.member.title} in the ${under.end} end, `,
    measured(under.x, 'length'),
    ' from the left side, is stressed to ',
  ]);
}

function onRail(ends: EndFrames, worst: RailUse): Found {
  const { member } = ends.rail!;
  return onPiece(railPart(ends), worst, member, worst.piece.loadCase, 'rail', [
    `The rail of ${member.title} in the ${worst.piece.piece === 0 ? 'front' : 'back'} end is stressed to `,
  ]);
}

function onPiece(
  part: { readonly id: string; readonly origin: EndFrames['origin'] },
  { use, allowed, axial, moment, steps, slenderness }: PieceUse & { readonly slenderness: number },
  member: EndFrames['member'],
  loadCase: string,
  noun: string,
  start: readonly MessagePiece[],
): Found {
  const stress = use * allowed;
  return judge({
    part,
    utilisation: use,
    demand: measured(stress, 'stress'),
    capacity: measured(allowed, 'stress'),
    loadCase,
    message: [
      ...start,
      measured(stress, 'stress'),
      ` under ${loadCase}; it may take `,
      measured(allowed, 'stress'),
      '.',
    ],
    source: 'house',
    steps: [
      fromHouse('M', `bending of the ${noun}, both ways together`, moment, 'moment'),
      fromHouse('N', 'force along it (tension positive)', axial, 'force'),
      ...steps,
      step(
        'u',
        'utilisation, bending with pull or with thrust',
        'u = M / (W f_b) + N / (A f_t), and with thrust N / (A F_a) in its place',
        [
          given('W', 'section modulus', sectionOf(member).sectionModulus, 'section-modulus'),
          given('f_b', 'bending stress allowed', allowed, 'stress'),
          given('K L / r', 'slenderness between what holds it', slenderness, 'ratio'),
        ],
        use,
        'percent',
        'timoshenko:beam',
      ),
    ],
  });
}

function fromHouse(symbol: string, meaning: string, value: number, kind: string): Step {
  return step(symbol, meaning, 'from the analysis of the whole house', [], value, kind, 'house');
}

const does = {
  up: ['pulls its foot up with ', 'pull on the foot'],
  over: ['pushes its foot sideways with ', 'push on the foot'],
  down: ['presses its foot down with ', 'load on the foot'],
} as const;

/** The foot of an upright, pulled up, pushed over or pressed in, whichever uses most of the ground. */
function onFoot(shelter: Shelter, ends: EndFrames, loaded: readonly UprightUnder[]): Found[] {
  const { site } = shelter;
  const { foot, member } = ends;
  const worst = endFootUse(shelter, ends, loaded);
  if ('reason' in worst) return [notChecked(foot, worst.reason)];
  const { use, under, how } = worst;
  const { reaction, load } = under;
  const sinking = footSinking(foot, member, site, undefined);
  const ground =
    how === 'down'
      ? sinking
      : how === 'up'
        ? footUplift(foot, member, site)
        : footSideways(foot, member, site, {
            push: reaction.horizontal,
            moment: reaction.moment,
            lift: -reaction.vertical,
            stay: load.duration,
          });
  if ('reason' in ground) return [notChecked(foot, ground.reason)];
  const demand = how === 'over' ? reaction.horizontal : Math.abs(reaction.vertical);
  const capacity = 'allowed' in ground ? ground.allowed : groundAllowedAt(ground, site.basis);
  const [verb, what] = does[how];
  return [
    judge({
      part: foot,
      utilisation: use,
      demand: measured(demand, 'force'),
      capacity: measured(capacity, 'force'),
      loadCase: load.title,
      message: [
        `The upright in the ${under.end} end ${verb}`,
        measured(demand, 'force'),
        ` under ${load.title}; in ${site.soil} the foot may be counted on for `,
        measured(capacity, 'force'),
        '.',
      ],
      source: ground.source,
      steps: [fromHouse('F', what, demand, 'force'), ...ground.steps],
    }),
    ...('reason' in sinking ? [notChecked(foot, `how it sinks: ${sinking.reason}`)] : []),
  ];
}

export const endFrame: Check = {
  id: 'end-frame',
  title: 'End frames',
  asks: 'Do the uprights and rails in the ends, and the feet of the uprights, take the wind on the end wall and what the end frame leans on them?',
  matters:
    'The end wall is the broadside of the house: when its uprights go, the film goes and the wind is inside.',
  formula: 'u = M / (W f_b) + N / (A f_t); F / F_a at the foot',
  symbols: [
    { symbol: 'M', meaning: 'bending of an upright or rail', kind: 'moment' },
    { symbol: 'N', meaning: 'force along it', kind: 'force' },
    { symbol: 'F', meaning: 'pull, push or load on its foot', kind: 'force' },
    { symbol: 'F_a', meaning: 'what the ground holds or carries', kind: 'force' },
  ],
  sources: ['house', 'timoshenko:beam', 'euler', 'meyerhof:1963'],
  leavesOut:
    'Looked at only in the full analysis. How the upright is fixed to the frame and the rail, doors and their hinges, local suction at the corners of the wall, wind that reaches the rail before the uprights: the wall is shared out among uprights and frame. Of a rail the largest bending is taken together with the largest force along it.',
  mayBeAccepted: 'When boards or sheets that the spec does not name stiffen the end wall.',
  run,
  levers,
};

/** Stouter stock, deeper and wider feet, more uprights. Each is a whole house to work out: few are tried. */
function levers({ shelter }: CheckInput, finding: Finding, stock: Stock): Lever[] {
  const { endFrames } = shelter;
  if (endFrames === undefined) return [];
  const { foot, origin, rail, uprights } = endFrames;
  const more: Lever = {
    type: 'choice',
    options: [1, 2, 4].map((extra) => ({
      title: [`Set ${uprights.length + extra} uprights in each end`],
      edits: [setQuantity(origin, 'uprights', uprights.length + extra, 'count')],
    })),
  };
  if (finding.part === foot.id)
    return [
      ...(foot.kind === 'bearing' || foot.kind === 'ballast' ? [] : [deeper(foot)]),
      ...wider(foot),
      ...(foot.kind === 'concrete' ? [] : [inConcrete(foot, [0.25, 0.4], [0.6, 1], stock)]),
    ];
  if (rail !== undefined && finding.part === railPart(endFrames).id)
    return [
      stouter({ origin: rail.origin, member: rail.member }, stock, (id) => ({
        type: 'replace',
        node: rail.origin,
        slots: { item: itemValue(id, rail.origin) },
      })),
      more,
    ];
  return [stouter(endFrames, stock), more];
}
