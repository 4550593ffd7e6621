import { type CableItem, type MemberItem, type Rail, railsUnder, type Shelter } from '@tautline/shelter';
import { gravity, type RailDemand, type Response, sectionOf, weightPerLength } from '@tautline/structure';
import { strongerCable } from '../anchor-levers.ts';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import type { Finding } from '../finding.ts';
import { given, measured, step } from '../judge.ts';
import type { Limit, Told, Use } from '../limit.ts';
import { eaveLoad, railDemands, railNoun } from '../rails.ts';
import { limitsUnder, type MemberLimit } from '../resistance.ts';
import { cableWorking } from '../rigging.ts';
import { setItem, setQuantity } from '../slots.ts';

/** The eave rail, where it spans from post to post and frames stand on it in between. */
function loadedEave({ eaveRail, sidePosts, roof }: Shelter): Rail | undefined {
  return sidePosts !== undefined && sidePosts.spacing > roof.spacing * 1.001 ? eaveRail : undefined;
}

function limits(input: CheckInput): Limit[] {
  const { shelter } = input;
  const eave = loadedEave(shelter);
  return [
    ...railsUnder(shelter).map((rail): Limit => {
      const use = railUse(shelter, rail);
      const { inResponse, calm } = railDemands(input, rail);
      return {
        ...ofRail(rail),
        use: (response: Response) => {
          const demand = inResponse(response);
          return demand && use(demand);
        },
        calm: calm.map(use),
      };
    }),
    ...(eave === undefined ? [] : [ofEave(shelter, eave)]),
  ];
}

function ofEave(shelter: Shelter, rail: Rail): Limit {
  const use = railUse(shelter, rail);
  return {
    ...ofRail(rail),
    use: (response: Response) => {
      const demand = eaveLoad(shelter, { responses: [response] }, () => true);
      return demand && use(demand);
    },
  };
}

const ofRail = (rail: Rail) => ({
  by: 'frame' as const,
  part: rail,
  gives:
    rail.member.kind === 'cable'
      ? `the ${railNoun(rail)} cable is overpulled`
      : `the ${railNoun(rail)} bends past its strength`,
  sacrificial: rail.sacrificial === true,
  unasked: `the frames bring no load to the ${railNoun(rail)} in this model`,
});

function railUse(shelter: Shelter, rail: Rail): (demand: RailDemand) => Use {
  const { member } = rail;
  if (member.kind === 'cable') {
    const capacity = cableWorking(member);
    return (demand) => ({
      utilisation: (demand.pull ?? 0) / capacity,
      loadCase: demand.loadCase,
      tell: () => tellCable(rail, member, demand),
    });
  }
  const limitUnder = limitsUnder(shelter.site, member);
  const { sectionModulus } = sectionOf(member);
  return (demand) => {
    const limit = limitUnder(demand);
    return {
      utilisation: (demand.moment ?? 0) / sectionModulus / limit.bending,
      loadCase: demand.loadCase,
      tell: () => tellRail(shelter, rail, member, demand, limit),
    };
  };
}

function tellRail(
  { roof }: Shelter,
  rail: Rail,
  member: MemberItem,
  demand: RailDemand,
  limit: MemberLimit,
): Told {
  const section = sectionOf(member);
  const moment = demand.moment ?? 0;
  // Lift is not relieved by what the rail weighs.
  const down = demand.load >= 0;
  const own = down ? [given('g', 'weight of the rail', weightPerLength(member), 'line-load')] : [];
  const stress = moment / section.sectionModulus;
  return {
    demand: measured(stress, 'stress'),
    capacity: measured(limit.bending, 'stress'),
    message: [
      `The ${railNoun(rail)} of ${member.title} spans `,
      measured(rail.span, 'length'),
      ' between its posts and is stressed to ',
      measured(stress, 'stress'),
      ` under ${demand.loadCase}; it may take `,
      measured(limit.bending, 'stress'),
      '.',
    ],
    source: 'beam-table',
    steps: [
      step(
        'w',
        'load along the rail, from the frames',
        'w = R / s',
        [
          given('R', 'what one frame brings', demand.load * roof.spacing, 'force'),
          given('s', 'spacing of the frames', roof.spacing, 'length'),
        ],
        demand.load,
        'line-load',
        'frame',
      ),
      step(
        'M',
        'bending of one bay',
        down ? 'M = (w + g) L² / 8' : 'M = |w| L² / 8',
        [...own, given('L', 'distance between posts', rail.span, 'length')],
        moment,
        'moment',
        'beam-table',
      ),
      step(
        'σ',
        'bending stress',
        'σ = M / W',
        [given('W', 'section modulus', section.sectionModulus, 'section-modulus')],
        stress,
        'stress',
        'timoshenko:beam',
      ),
      step(
        'f',
        'sag of one bay',
        down ? 'f = 5 (w + g) L⁴ / (384 E I)' : 'f = 5 |w| L⁴ / (384 E I)',
        [
          given('E', 'modulus', member.material.modulus, 'stress'),
          given('I', 'second moment', section.secondMoment, 'second-moment'),
        ],
        demand.sag,
        'length',
        'beam-table',
      ),
      ...limit.steps,
    ],
  };
}

function tellCable(rail: Rail, cable: CableItem, demand: RailDemand): Told {
  const pull = demand.pull ?? 0;
  const capacity = cableWorking(cable);
  return {
    demand: measured(pull, 'force'),
    capacity: measured(capacity, 'force'),
    message: [
      `The ${railNoun(rail)} cable of ${cable.title} is pulled to `,
      measured(pull, 'force'),
      ` under ${demand.loadCase} and sags `,
      measured(demand.sag, 'length'),
      '; with clips it may take ',
      measured(capacity, 'force'),
      '.',
    ],
    source: 'rigging',
    steps: [
      step(
        'H',
        'pull of the cable',
        'H = (|w| + g) L² / (8 f)',
        [
          given('w', 'load along the cable', demand.load, 'line-load'),
          given('g', 'its own weight', cable.massPerLength * gravity, 'line-load'),
          given('L', 'distance between posts', rail.span, 'length'),
          given('T_0', 'pull when set up', rail.tension ?? 0, 'force'),
          given('f', 'sag at which it stretches so far', demand.sag, 'length'),
        ],
        pull,
        'force',
        'parabola',
      ),
      step('f', 'sag', 'f = (|w| + g) L² / (8 H)', [], demand.sag, 'length', 'parabola'),
      step(
        'H_max',
        'pull it may take',
        'H_max = 0.8 F_break / 3',
        [given('F_break', 'breaking load', cable.breakingLoad, 'force')],
        capacity,
        'force',
        'rigging',
      ),
    ],
  };
}

export const railSpan: Check = {
  id: 'rail-span',
  title: 'Ridge and rail span',
  asks: 'Does the ridge, rail or cable carry what the frames bring to it from post to post?',
  matters: 'A ridge that sags or snaps lets every bow down at once.',
  formula: 'u = M / (W f_b) for a rail, u = H / H_max for a cable',
  symbols: [
    { symbol: 'M', meaning: 'bending between two posts', kind: 'moment' },
    { symbol: 'W', meaning: 'section modulus', kind: 'section-modulus' },
    { symbol: 'H', meaning: 'pull of the cable', kind: 'force' },
  ],
  sources: ['beam-table', 'parabola', 'rigging'],
  leavesOut: 'Joints in the rail, twisting, and purlins that only tie the bows together.',
  mayBeAccepted: 'When extra props stand in the house in the wet season.',
  needs: 'frame',
  appliesTo: (shelter) => railsUnder(shelter).length > 0 || loadedEave(shelter) !== undefined,
  limits,
  levers,
};

function levers(input: CheckInput, finding: Finding, stock: Stock): Lever[] {
  const { eaveRail, sidePosts } = input.shelter;
  const rail = [eaveRail, ...railsUnder(input.shelter)].find((entry) => entry?.id === finding.part);
  if (rail === undefined) return [];
  const posts = rail === eaveRail ? sidePosts : rail.posts;
  const result: Lever[] = [];
  if (posts !== undefined) {
    result.push({
      type: 'number',
      from: posts.spacing,
      towards: posts.spacing / 5,
      steps: { metric: 0.1, us: 0.1524 },
      title: (value) => ['Set the posts ', measured(value, 'length'), ' apart'],
      edits: (value) => [setQuantity(posts.origin, 'spaced', value, 'length')],
    });
  }
  const { origin, member } = rail;
  result.push(
    member.kind === 'cable' ? strongerCable({ origin, member }, stock) : stouterOfKin(origin, member, stock),
  );
  return result;
}

/** Stock of the same kind and family that bends less, the next size first; it need not be of the same sort. */
function stouterOfKin(origin: Rail['origin'], member: MemberItem, { items }: Stock): Lever {
  const own = sectionOf(member).sectionModulus;
  const stouter = items
    .filter(
      (entry): entry is MemberItem =>
        entry.kind === member.kind &&
        'section' in entry &&
        entry.material.family === member.material.family &&
        sectionOf(entry).sectionModulus > own,
    )
    .sort((a, b) => sectionOf(a).sectionModulus - sectionOf(b).sectionModulus);
  return {
    type: 'choice',
    options: stouter.map((entry) => ({
      title: [`Use ${entry.title}`],
      edits: [setItem(origin, 'of', entry.id)],
    })),
  };
}
