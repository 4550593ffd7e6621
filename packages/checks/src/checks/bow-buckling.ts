import { type ColumnStress, columnStress } from '@tautline/loads';
import { type Bows, lengthOf, type Rafters, railsUnder, type Shelter } from '@tautline/shelter';
import { type FrameAnalysis, type Response, sectionOf } from '@tautline/structure';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import type { Finding } from '../finding.ts';
import { given, inWords, measured, step } from '../judge.ts';
import { closer, morePurlins, stouter } from '../levers.ts';
import { type Limit, type Told, unknown } from '../limit.ts';
import type { MemberLimit } from '../resistance.ts';
import { leastRadius } from '../slender.ts';
import { bendingForces, looksAt } from '../springing.ts';
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
  readonly thrust: number;
  readonly locked: number;
  readonly bending: number;
  readonly limit: MemberLimit;
  readonly column: ColumnStress;
}

/**
 * AISC 360 H1-3, buckling out of the plane with bending in it: x (1.5 - 0.5 x) + m² = 1 where both shares have grown
 * alike to the limit. The share used is what they have to grow by, inverted.
 */
function interaction(axial: number, bending: number): number {
  return 0.75 * axial + Math.hypot(axial / 4, bending);
}

/** The stretch that is used most, under one combination after another. */
function buckling(
  shelter: Shelter,
  frame: Bows | Rafters,
  states: FrameAnalysis['states'],
  places: readonly number[],
): (response: Response) => Buckled | undefined {
  const { site } = shelter;
  const { member } = frame;
  const { area } = sectionOf(member);
  const metal = member.material.family === 'steel' || member.material.family === 'aluminium';
  const looks = looksAt(site, member, states, { sprung: states.built.system.sprung });
  const standing = (limit: MemberLimit) =>
    stretches(places, frame).map((stretch) => ({
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
  const known = new Map<MemberLimit, ReturnType<typeof standing>>();
  return (response) => {
    let worst: Buckled | undefined;
    for (const look of looks(response)) {
      const { limit, loads, springing } = look;
      const columns = known.get(limit) ?? standing(limit);
      known.set(limit, columns);
      const bent = bendingForces(look);
      for (const { stretch, column } of columns) {
        const euler = column.steps[0]?.value ?? column.stress;
        loads.forEach((force, index) => {
          const thrust = -force.axial - (springing?.[index]?.axial ?? 0);
          if (force.part !== frame.id || thrust <= 0) return;
          if (force.at < stretch.from - 1e-6 || force.at > stretch.to + 1e-6) return;
          // What a sprung bow presses by itself cannot grow: it is set against the Euler load, without a factor.
          const locked = Math.min(thrust, Math.max(0, -(springing?.[index]?.axial ?? 0)));
          const axial =
            (thrust - locked) / area / column.stress + locked / area / Math.max(euler, column.stress);
          const bending = stressAt(member, response, bent[index]!).bendingStress;
          const use = interaction(axial, bending / limit.bending);
          if (worst === undefined || use > worst.use)
            worst = { use, stretch, thrust, locked, bending, limit, column };
        });
      }
    }
    return worst;
  };
}

function limits({ shelter, frame }: CheckInput): Limit[] {
  const { roof } = shelter;
  if (!frame.ok || (roof.type !== 'bows' && roof.type !== 'rafters')) return [];
  const places = heldPlaces(shelter, roof);
  if (places.length === 2)
    return [
      unknown(
        roof,
        'no purlin or tied ridge holds it to its neighbours; how far the film alone keeps it from bowing out along the house is not covered',
      ),
    ];
  const under = buckling(shelter, roof, frame.analysis.states, places);
  return [
    {
      by: 'frame',
      part: roof,
      gives: `the ${roof.type === 'bows' ? 'bow' : 'rafter'} bows out along the house`,
      sacrificial: roof.sacrificial === true,
      unasked: 'no combination presses the frame along its length',
      use: (response) => {
        const worst = under(response);
        if (worst === undefined) return undefined;
        const loadCase = response.load.title;
        return { utilisation: worst.use, loadCase, tell: () => tell(roof, worst, loadCase) };
      },
    },
  ];
}

function tell(roof: Bows | Rafters, worst: Buckled, loadCase: string): Told {
  const { member } = roof;
  const { stretch, thrust, locked, limit, column } = worst;
  const { area } = sectionOf(member);
  const free = stretch.to - stretch.from;
  return {
    demand: measured(thrust, 'force'),
    capacity: measured(column.stress * area, 'force'),
    message: [
      `The ${roof.type === 'bows' ? 'bow' : 'rafter'} of ${member.title} stands free along the house over `,
      measured(free, 'length'),
      ' and is pressed with ',
      measured(thrust, 'force'),
      ' while it bends to ',
      measured(worst.bending, 'stress'),
      ` under ${loadCase}; it may be pressed with `,
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
      inWords('N', 'thrust', 'from the frame analysis', [], thrust, 'force', 'frame'),
      inWords('N_0', 'of it locked in when built', 'from the built state', [], locked, 'force', 'frame'),
      ...column.steps,
      ...limit.steps,
      step(
        'u',
        'thrust along with bending across',
        'u = 0.75 x + √((x / 4)² + (σ_b / f_b)²), x = (N - N_0) / (A F_a) + N_0 / (A max(F_a, F_e))',
        [
          given('A', 'area', area, 'area'),
          given('F_a', 'axial stress it may have', column.stress, 'stress'),
          given('f_b', 'bending stress it may have', limit.bending, 'stress'),
          given('σ_b', 'bending stress there', worst.bending, 'stress'),
        ],
        worst.use,
        'percent',
        'aisc360:h1.3',
      ),
    ],
  };
}

export const bowBuckling: Check = {
  id: 'bow-buckling',
  title: 'Buckling along the house',
  asks: 'Do purlins and ridge hold the bow or rafter often enough that it does not bow out along the house?',
  matters: 'Frames that lean out of their plane fall like a row of dominoes.',
  formula:
    'u = 0.75 x + √((x / 4)² + (σ_b / f_b)²), x = (N - N_0) / (A F_a) + N_0 / (A F_e), F_a and F_e by the slenderness K L / r',
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
  needs: 'frame',
  appliesTo: ({ roof }) => roof.type === 'bows' || roof.type === 'rafters',
  limits,
  levers,
};

/** One more purlin, then stouter, then closer. */
function levers(input: CheckInput, _finding: Finding, stock: Stock): Lever[] {
  const { roof } = input.shelter;
  if (roof.type !== 'bows' && roof.type !== 'rafters') return [];
  return [morePurlins(input.shelter, roof), stouter(roof, stock), closer(roof, 'frames')];
}
