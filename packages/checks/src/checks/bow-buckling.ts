import { type ColumnStress, columnStress, DURATIONS, type Duration } from '@tautline/loads';
import { type Bows, lengthOf, type Rafters, railsUnder, type Shelter } from '@tautline/shelter';
import { type FrameAnalysis, lockedIn, type Response, sectionOf, stateIn } from '@tautline/structure';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import type { Finding, Found } from '../finding.ts';
import { given, judge, measured, notChecked, step } from '../judge.ts';
import { closer, morePurlins, stouter } from '../levers.ts';
import { type MemberLimit, memberLimit } from '../resistance.ts';
import { leastRadius } from '../slender.ts';
import { stressAt } from '../stress.ts';

/** Places along the frame that are held to their neighbours, from end to end, m. */
function heldPlaces(shelter: Shelter, frame: Bows | Rafters): readonly number[] {
  const total = lengthOf(frame.line);
  const under = railsUnder(shelter).filter(({ tied }) => tied);
  const lines = [...shelter.purlins, ...under].flatMap((rail) =>
    rail.lines.flatMap((line) => (line.s === undefined ? [] : [line.s])),
  );
  const places = [0, ...lines.filter((s) => s > 0 && s < total), total].sort((a, b) => a - b);
  // A purlin may run beside the ridge: one place.
  return places.filter((place, index) => index === 0 || place - places[index - 1]! > 1e-3);
}

/** A stretch of the frame between two places that are held. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  /** Effective length over length: 0.8 next to a clamped foot, 1 elsewhere. */
  readonly factor: number;
}

function stretches(places: readonly number[], frame: Bows | Rafters): readonly Stretch[] {
  const clamped = frame.foot?.fixity === 'clamped';
  return places.slice(1).map((to, index) => ({
    from: places[index]!,
    to,
    factor: clamped && (index === 0 || index === places.length - 2) ? 0.8 : 1,
  }));
}

interface Buckled {
  readonly use: number;
  readonly stretch: Stretch;
  readonly response: Response;
  readonly thrust: number;
  readonly locked: number;
  readonly bending: number;
  readonly limit: MemberLimit;
  readonly column: ColumnStress;
}

/** AISC 360 H1-3: buckling out of the plane, bending in it. */
function interaction(axial: number, bending: number): number {
  return (axial < 1 ? axial * (1.5 - 0.5 * axial) : axial) + bending * bending;
}

/**
 * The stretch that is used most in a response, as a function of it; undefined where nothing but its feet holds
 * the frame along the house.
 */
export function bucklingIn(
  shelter: Shelter,
  frame: Bows | Rafters,
  states: FrameAnalysis['states'],
): ((response: Response) => Buckled | undefined) | undefined {
  const places = heldPlaces(shelter, frame);
  if (places.length === 2) return undefined;
  const { site } = shelter;
  const { member } = frame;
  const { area } = sectionOf(member);
  const metal = member.material.family === 'steel' || member.material.family === 'aluminium';
  const standing = (duration: Duration) => {
    const limit = memberLimit(site, member, duration);
    return stretches(places, frame).map((stretch) => ({
      stretch,
      limit,
      column: columnStress({
        family: member.material.family,
        basis: site.basis,
        slenderness: (stretch.factor * (stretch.to - stretch.from)) / leastRadius(member),
        modulus: limit.modulus,
        shortColumn: metal ? member.material.bendingStrength : limit.axial,
        crushing: limit.crushing,
      }),
    }));
  };
  const columns = new Map(DURATIONS.map((duration) => [duration, standing(duration)]));
  return (response) => {
    const built = lockedIn(stateIn(states, response.condition));
    let worst: Buckled | undefined;
    for (const { stretch, limit, column } of columns.get(response.load.duration)!) {
      const euler = column.steps[0]?.value ?? column.stress;
      response.forces.forEach((force, index) => {
        if (force.part !== frame.id || force.axial >= 0) return;
        if (force.at < stretch.from - 1e-6 || force.at > stretch.to + 1e-6) return;
        // What a sprung bow presses by itself cannot grow: it is set against the Euler load, without a factor.
        const locked = Math.min(-force.axial, Math.max(0, -(built[index]?.axial ?? 0)));
        const axial =
          (-force.axial - locked) / area / column.stress + locked / area / Math.max(euler, column.stress);
        const bending = stressAt(member, response, force).bendingStress;
        const use = interaction(axial, bending / limit.bending);
        if (worst === undefined || use > worst.use)
          worst = { use, stretch, response, thrust: -force.axial, locked, bending, limit, column };
      });
    }
    return worst;
  };
}

/** The response and stretch that is used most of all combinations for strength. */
function worstOf(
  responses: readonly Response[],
  used: (response: Response) => Buckled | undefined,
): Buckled | undefined {
  let worst: Buckled | undefined;
  for (const response of responses) {
    if (response.load.use === 'service' || response.status !== 'holds' || response.condition === 'built')
      continue;
    const found = used(response);
    if (found !== undefined && (worst === undefined || found.use > worst.use)) worst = found;
  }
  return worst;
}

function run(input: CheckInput): Found[] {
  const { roof } = input.shelter;
  if (roof.type !== 'bows' && roof.type !== 'rafters') return [];
  if (!input.frame.ok) return [notChecked(roof, input.frame.reason)];
  const { analysis } = input.frame;
  const used = bucklingIn(input.shelter, roof, analysis.states);
  if (used === undefined) {
    return [
      notChecked(
        roof,
        'no purlin or tied ridge holds it to its neighbours; how far the film alone keeps it from bowing out along the house is not covered',
      ),
    ];
  }
  const worst = worstOf(analysis.responses, used);
  return worst === undefined
    ? [notChecked(roof, 'no combination presses the frame along its length')]
    : [told(roof, worst)];
}

function told(roof: Bows | Rafters, worst: Buckled): Found {
  const { member } = roof;
  const { stretch, response, thrust, locked, limit, column } = worst;
  const { area } = sectionOf(member);
  const free = stretch.to - stretch.from;
  return judge({
    part: roof,
    utilisation: worst.use,
    demand: measured(thrust, 'force'),
    capacity: measured(column.stress * area, 'force'),
    loadCase: response.load.title,
    message: [
      `The ${roof.type === 'bows' ? 'bow' : 'rafter'} of ${member.title} stands free along the house over `,
      measured(free, 'length'),
      ' and is pressed with ',
      measured(thrust, 'force'),
      ' while it bends to ',
      measured(worst.bending, 'stress'),
      ` under ${response.load.title}; it may be pressed with `,
      measured(column.stress * area, 'force'),
      ', or bend to ',
      measured(limit.bending, 'stress'),
      ', each by itself.',
    ],
    source: 'aisc360:h1.3',
    steps: [
      step(
        'K L / r',
        'slenderness between two lines that hold it',
        'K L / r',
        [
          given('K', 'next to a clamped foot 0.8, else 1', stretch.factor, 'ratio'),
          given('L', 'longest stretch between feet, purlins and ridge', free, 'length'),
          given('r', 'radius of gyration, weak axis', leastRadius(member), 'thickness'),
        ],
        (stretch.factor * free) / leastRadius(member),
        'ratio',
        'euler',
      ),
      step('N', 'thrust', 'from the frame analysis', [], thrust, 'force', 'frame'),
      step('N_0', 'of it locked in when built', 'from the built state', [], locked, 'force', 'frame'),
      ...column.steps,
      ...limit.steps,
      step(
        'u',
        'thrust along with bending across',
        'x = (N - N_0)/(A F_a) + N_0/(A F_e), u = x (1.5 - 0.5 x) + (σ_b/f_b)²',
        [given('σ_b', 'bending stress there', worst.bending, 'stress')],
        worst.use,
        'percent',
        'aisc360:h1.3',
      ),
    ],
  });
}

export const bowBuckling: Check = {
  id: 'bow-buckling',
  title: 'Buckling along the house',
  asks: 'Do purlins and ridge hold the bow or rafter often enough that it does not bow out along the house?',
  matters: 'Frames that lean out of their plane fall like a row of dominoes.',
  formula:
    'u = x (1.5 - 0.5 x) + (σ_b / f_b)², x = (N - N_0) / (A F_a) + N_0 / (A F_e), F_a and F_e by the slenderness K L / r',
  symbols: [
    { symbol: 'N', meaning: 'thrust along the member', kind: 'force' },
    { symbol: 'N_0', meaning: 'thrust of a sprung bow by itself, which cannot grow', kind: 'force' },
    { symbol: 'L', meaning: 'longest stretch between lines that hold it', kind: 'length' },
    { symbol: 'r', meaning: 'radius of gyration, weak axis', kind: 'thickness' },
    { symbol: 'F_a', meaning: 'stress at that slenderness', kind: 'stress' },
  ],
  sources: [
    'frame',
    'aisc360:h1.3',
    'euler',
    'aisi-s100:e2',
    'en1993-1-1:6.3.1',
    'nds:3.7',
    'en1995-1-1:6.3.2',
    'iso22156:column',
    'practice:plastic-euler',
  ],
  leavesOut:
    'What film and lashings add; purlins are taken to be held themselves (see racking); twisting of tall narrow rafters.',
  mayBeAccepted: 'When cords or boards that the spec does not name tie the frames together.',
  run,
  levers,
};

/** One more purlin, then stouter, then closer. */
function levers(input: CheckInput, _finding: Finding, stock: Stock): Lever[] {
  const { roof } = input.shelter;
  if (roof.type !== 'bows' && roof.type !== 'rafters') return [];
  return [morePurlins(input.shelter, roof), stouter(roof, stock), closer(roof, 'frames')];
}
