import type { Duration } from '@tautline/loads';
import { type CableItem, type MemberItem, type Rail, railsUnder } from '@tautline/shelter';
import { type RailDemand, railUnder, sectionOf } from '@tautline/structure';
import { strongerCable } from '../anchor-levers.ts';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import type { Finding, Found } from '../finding.ts';
import { given, judge, measured, notChecked, step } from '../judge.ts';
import { loadedRails, railNoun } from '../rails.ts';
import { memberLimit } from '../resistance.ts';
import { cableWorking } from '../rigging.ts';
import { setItem, setQuantity } from '../slots.ts';

function run(input: CheckInput): Found[] {
  const { shelter } = input;
  const findings: Found[] = [];
  const { frame } = input;
  if (!frame.ok) findings.push(...railsUnder(shelter).map((rail) => notChecked(rail, frame.reason)));
  else
    for (const { rail, demand } of loadedRails(shelter, frame.analysis))
      findings.push(
        demand === undefined
          ? notChecked(rail, `the frames bring no load to the ${railNoun(rail)} in this model`)
          : onRail(input, rail, demand),
      );
  if (shelter.eaveRail !== undefined && shelter.sidePosts !== undefined) {
    if (!input.frame.ok) findings.push(notChecked(shelter.eaveRail, input.frame.reason));
    else if (shelter.sidePosts.spacing > shelter.roof.spacing * 1.001)
      findings.push(onRail(input, shelter.eaveRail, eaveDemand(input, shelter.eaveRail)));
  }
  return findings;
}

/** Frames that sit on the rail between posts: the posts' axial force per frame is what the rail brings them. */
function eaveDemand(input: CheckInput, rail: Rail): RailDemand {
  let push = 0;
  let loadCase = 'own weight';
  let duration: Duration = 'permanent';
  const posts = input.shelter.sidePosts!;
  const share = Math.min(1, input.shelter.roof.spacing / posts.spacing);
  if (input.frame.ok) {
    for (const response of input.frame.analysis.responses) {
      if (response.load.use === 'service') continue;
      for (const force of response.forces) {
        if (force.part !== posts.id) continue;
        const perFrame = -force.axial * share;
        if (Math.abs(perFrame) > Math.abs(push)) {
          push = perFrame;
          loadCase = response.load.title;
          duration = response.load.duration;
        }
      }
    }
  }
  return railUnder(rail, push / input.shelter.roof.spacing, loadCase, duration);
}

function onRail(input: CheckInput, rail: Rail, demand: RailDemand): Found {
  if (rail.member.kind === 'cable') return onCable(rail, rail.member, demand);
  const member = rail.member;
  const section = sectionOf(member);
  const limit = memberLimit(input.shelter.site, member, demand.duration);
  const moment = demand.moment ?? 0;
  const stress = moment / section.sectionModulus;
  return judge({
    part: rail,
    utilisation: stress / limit.bending,
    demand: measured(stress, 'stress'),
    capacity: measured(limit.bending, 'stress'),
    loadCase: demand.loadCase,
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
        [given('s', 'spacing of the frames', input.shelter.roof.spacing, 'length')],
        demand.load,
        'line-load',
        'frame',
      ),
      step(
        'M',
        'bending of one bay',
        'M = (w + g) L² / 8',
        [given('L', 'distance between posts', rail.span, 'length')],
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
      step('f', 'sag of one bay', 'f = 5 w L⁴ / 384 E I', [], demand.sag, 'length', 'beam-table'),
      ...limit.steps,
    ],
  });
}

function onCable(rail: Rail, cable: CableItem, demand: RailDemand): Found {
  const pull = demand.pull ?? 0;
  const capacity = cableWorking(cable);
  return judge({
    part: rail,
    utilisation: pull / capacity,
    demand: measured(pull, 'force'),
    capacity: measured(capacity, 'force'),
    loadCase: demand.loadCase,
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
        'H = w L² / 8 f, H = T_0 + E A (8/3) (f/L)²',
        [
          given('w', 'load along the cable', demand.load, 'line-load'),
          given('L', 'distance between posts', rail.span, 'length'),
          given('T_0', 'pull when set up', rail.tension ?? 0, 'force'),
        ],
        pull,
        'force',
        'parabola',
      ),
      step('f', 'sag', 'from the same', [], demand.sag, 'length', 'parabola'),
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
  });
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
  run,
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
