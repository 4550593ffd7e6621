import { ballastSliding, groundAllowedAt } from '@tautline/loads';
import type { Cap, Shelter } from '@tautline/shelter';
import { type CapLoads, capLoads, gravity } from '@tautline/structure';
import type { Check, CheckInput } from '../check.ts';
import { given, measured, step } from '../judge.ts';
import { heavierRims } from '../levers.ts';
import { type Limit, type Told, unknown } from '../limit.ts';

/** Breadth of the rim that lies on the ground, m: common practice, no source. Only soils that stick ask for it. */
const rimBreadth = 0.05;

interface Push {
  readonly push: number;
  /** Lift of the wind on the whole cap beyond its own weight, N; negative where weight is left on the ground. */
  readonly lift: number;
  readonly loadCase: string;
}

function pushes(loads: CapLoads): Push[] {
  return loads.loads.map(({ points, title }) => ({
    push: Math.abs(points.reduce((sum, point) => sum + point.fx, 0)),
    lift: points.reduce((sum, point) => sum + point.fy, 0),
    loadCase: title,
  }));
}

type Sliding = Push & {
  mass: number;
  hold: ReturnType<typeof ballastSliding>;
  capacity: number;
  use: number;
};

/** Each combination at a gust (m/s) with what friction holds; undefined where one lifts the cap off before. */
function slides(
  shelter: Shelter,
  soil: Exclude<Shelter['site']['soil'], 'rock'>,
  cap: Cap,
  gust: number,
): Sliding[] | undefined {
  const loads = capLoads(shelter, cap, gust);
  const all = pushes(loads);
  const ballast = 2 * (cap.foot.mass ?? 0);
  if (all.some((one) => one.lift >= ballast * gravity)) return undefined;
  const area = 2 * rimBreadth * loads.length;
  return all.map((one) => {
    const mass = ballast + Math.max(0, -one.lift) / gravity;
    const hold = ballastSliding({ soil, mass }, Math.max(0, one.lift), area);
    const capacity = groundAllowedAt(hold, shelter.site.basis);
    return { ...one, mass, hold, capacity, use: one.push / capacity };
  });
}

function limits({ shelter }: CheckInput): Limit[] {
  const { roof: cap, site } = shelter;
  if (cap.type !== 'cap') return [];
  const { foot } = cap;
  if (foot.kind !== 'ballast' && foot.kind !== 'bearing')
    return [unknown(foot, 'what pegs hold a rim sideways is not covered')];
  const { soil } = site;
  if (soil === 'rock') return [unknown(foot, 'how things slide on bare rock is not covered')];
  return [
    {
      by: 'pressure',
      part: foot,
      gives: 'the cap slides along the bed',
      sacrificial: cap.sacrificial === true || foot.sacrificial === true,
      unasked: 'the wind lifts it off before it slides: see overturning',
      use: (factor) => {
        if (!(factor > 0)) return undefined;
        const judged = slides(shelter, soil, cap, Math.sqrt(factor) * site.gust);
        if (judged === undefined) return undefined;
        const worst = judged.reduce((a, b) => (b.use > a.use ? b : a));
        return { utilisation: worst.use, loadCase: worst.loadCase, tell: () => tell(cap, soil, worst) };
      },
    },
  ];
}

function tell({ foot }: Cap, soil: string, worst: Sliding): Told {
  // Both rims carry the ballast; the weight of the cap is in the lift already.
  const ballast = 2 * (foot.mass ?? 0);
  return {
    demand: measured(worst.push, 'force'),
    capacity: measured(worst.capacity, 'force'),
    message: [
      'Wind pushes each cap sideways with ',
      measured(worst.push, 'force'),
      ` under ${worst.loadCase}; friction on ${soil} may hold `,
      measured(worst.capacity, 'force'),
      '.',
    ],
    source: 'ibc2018:1806.2',
    steps: [
      step(
        'W',
        'what presses both rims to the ground, before the wind lifts it',
        'W = (2 m_b + m_c) g',
        [
          given('g', 'gravity, N/kg', gravity, 'ratio'),
          given('m_b', 'ballast on one rim', foot.mass ?? 0, 'mass'),
          given('m_c', 'own mass that counts, or is left by the lift', worst.mass - ballast, 'mass'),
        ],
        worst.mass * gravity,
        'force',
        'derived',
      ),
      ...worst.hold.steps,
    ],
  };
}

export const sliding: Check = {
  id: 'sliding',
  title: 'Sliding of caps',
  asks: 'Does a gust push a cap along the bed?',
  matters: 'A cap that slides mows the row it should keep dry.',
  formula: 'u = H / (μ (W - U))',
  symbols: [
    { symbol: 'H', meaning: 'push of the wind on one cap', kind: 'force' },
    { symbol: 'μ', meaning: 'friction of the soil', kind: 'ratio' },
    { symbol: 'W - U', meaning: 'weight left on the ground by the lift of the wind', kind: 'force' },
  ],
  sources: ['ibc2018:1806.2', 'derived'],
  leavesOut:
    'Wet slippery ground, rims pressed into the soil, and caps tied to each other. Feet of frames are judged by lateral-foot.',
  mayBeAccepted: 'When the caps are taken in before such a gust, or stand between boards.',
  appliesTo: ({ roof }) => roof.type === 'cap',
  limits,
  levers: (input) => {
    const { roof } = input.shelter;
    if (roof.type !== 'cap' || roof.foot.kind !== 'ballast') return [];
    return [heavierRims(roof.foot, Math.max(100, 3 * (roof.foot.mass ?? 0)))];
  },
};
