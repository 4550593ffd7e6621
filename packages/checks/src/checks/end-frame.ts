import { groundAllowedAt, type Step } from '@tautline/loads';
import type { KindName } from '@tautline/quantity';
import { type EndFrames, itemValue, type Shelter } from '@tautline/shelter';
import { type HouseAnalysis, sectionOf, type UprightUnder } from '@tautline/structure';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import {
  type EndFootUse,
  endFootUse,
  endRailUse,
  type PieceUse,
  type RailUse,
  uprightUse,
} from '../end-uses.ts';
import type { Finding, MessagePiece } from '../finding.ts';
import { footUplift, groundNamed } from '../ground.ts';
import { footSideways } from '../ground-sideways.ts';
import { footSinking } from '../ground-sinking.ts';
import { given, inWords, measured, step } from '../judge.ts';
import { deeper, inConcrete, stouter, wider } from '../levers.ts';
import { grownByPressure, type Limit, type Told, type Use, unknown } from '../limit.ts';
import { setQuantity } from '../slots.ts';

function limits({ shelter, house }: CheckInput): Limit[] {
  const { endFrames } = shelter;
  if (house?.ok !== true || endFrames === undefined) return [];
  const loaded = loadedUprights(house.house);
  if (loaded.length === 0) return [unknown(endFrames, 'the whole house holds under no combination')];
  const blown = loaded.filter(({ load }) => load.wind !== undefined);
  const calm = loaded.filter(({ load }) => load.wind === undefined);
  const sacrificial = endFrames.sacrificial === true;
  const rail = endRailUse(shelter, endFrames, house.house.endRails);
  return [
    {
      ...grownByPressure(onUpright(shelter, endFrames, blown), onUpright(shelter, endFrames, calm)),
      part: endFrames,
      gives: 'the upright in an end bends past its strength',
      sacrificial,
    },
    ...(rail === undefined
      ? []
      : [
          {
            ...grownByPressure(onRail(endFrames, rail), undefined),
            part: railPart(endFrames),
            gives: 'the rail in an end bends past its strength',
            sacrificial,
          },
        ]),
    ...ofFoot(shelter, endFrames, blown, calm),
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

function onUpright(shelter: Shelter, ends: EndFrames, loaded: readonly UprightUnder[]): Use | undefined {
  const worst = uprightUse(shelter, ends, loaded);
  if (worst === undefined) return undefined;
  const { under } = worst;
  return onPiece(worst, ends.member, under.load.title, 'upright', [
    `The upright of ${ends.member.title} in the ${under.end} end, `,
    measured(under.x, 'length'),
    ' from the left side, is stressed to ',
  ]);
}

function onRail({ rail }: EndFrames, worst: RailUse): Use {
  const { member } = rail!;
  return onPiece(worst, member, worst.piece.loadCase, 'rail', [
    `The rail of ${member.title} in the ${worst.piece.piece === 0 ? 'front' : 'back'} end is stressed to `,
  ]);
}

function onPiece(
  { use, allowed, axial, moment, steps, slenderness }: PieceUse & { readonly slenderness: number },
  member: EndFrames['member'],
  loadCase: string,
  noun: string,
  start: readonly MessagePiece[],
): Use {
  const stress = use * allowed;
  const tell = (): Told => ({
    demand: measured(stress, 'stress'),
    capacity: measured(allowed, 'stress'),
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
  return { utilisation: use, loadCase, tell };
}

function fromHouse(symbol: string, meaning: string, value: number, kind: KindName): Step {
  return inWords(symbol, meaning, 'from the analysis of the whole house', [], value, kind, 'house');
}

const does = {
  up: ['pulls its foot up with ', 'pull on the foot'],
  over: ['pushes its foot sideways with ', 'push on the foot'],
  down: ['presses its foot down with ', 'load on the foot'],
} as const;

const gives = { up: 'is pulled up', over: 'is pushed over', down: 'sinks' } as const;

/** The foot of an upright, pulled up, pushed over or pressed in, whichever uses most of the ground. */
function ofFoot(
  shelter: Shelter,
  ends: EndFrames,
  blown: readonly UprightUnder[],
  calm: readonly UprightUnder[],
): Limit[] {
  const { foot, member, sacrificial } = ends;
  const windy = endFootUse(shelter, ends, blown);
  if (windy !== undefined && 'reason' in windy) return [unknown(foot, windy.reason)];
  const still = endFootUse(shelter, ends, calm);
  if (still !== undefined && 'reason' in still) return [unknown(foot, still.reason)];
  const use = (found: EndFootUse | undefined): Use | undefined =>
    found && {
      utilisation: found.use,
      loadCase: found.under.load.title,
      tell: () => tellFoot(shelter, ends, found),
    };
  const sinking = footSinking(foot, member, shelter.site, undefined);
  return [
    {
      ...grownByPressure(use(windy), use(still)),
      part: foot,
      gives: `the foot of an upright in an end ${windy === undefined ? 'gives' : gives[windy.how]}`,
      sacrificial: sacrificial === true,
    },
    ...('reason' in sinking ? [unknown(foot, `how it sinks: ${sinking.reason}`)] : []),
  ];
}

function tellFoot(shelter: Shelter, { foot, member }: EndFrames, { under, how }: EndFootUse): Told {
  const { site } = shelter;
  const { reaction, load } = under;
  const ground =
    how === 'down'
      ? footSinking(foot, member, site, undefined)
      : how === 'up'
        ? footUplift(foot, member, site, 'gust')
        : footSideways(foot, member, site, {
            push: reaction.horizontal,
            moment: reaction.moment,
            lift: -reaction.vertical,
            stay: load.duration,
          });
  const demand = how === 'over' ? Math.abs(reaction.horizontal) : Math.abs(reaction.vertical);
  const capacity =
    'reason' in ground ? 0 : 'allowed' in ground ? ground.allowed : groundAllowedAt(ground, site.basis);
  const [verb, what] = does[how];
  return {
    demand: measured(demand, 'force'),
    capacity: measured(capacity, 'force'),
    message: [
      `The upright in the ${under.end} end ${verb}`,
      measured(demand, 'force'),
      ` under ${load.title}; in ${groundNamed(site)} the foot may be counted on for `,
      measured(capacity, 'force'),
      '.',
    ],
    source: 'reason' in ground ? 'house' : ground.source,
    steps: [fromHouse('F', what, demand, 'force'), ...('reason' in ground ? [] : ground.steps)],
  };
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
  needs: 'house',
  appliesTo: ({ endFrames }) => endFrames !== undefined && endFrames.uprights.length > 0,
  limits,
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
