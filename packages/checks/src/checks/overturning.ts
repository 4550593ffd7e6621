import { type GroundResult, groundAllowedAt } from '@tautline/loads';
import type { Cap } from '@tautline/shelter';
import { type CapLoads, capLoads, capRims } from '@tautline/structure';
import type { Check, CheckInput, Lever } from '../check.ts';
import { footUplift } from '../ground.ts';
import { given, inWords, measured, step } from '../judge.ts';
import { deeper, heavierRims } from '../levers.ts';
import { type Limit, type Told, unknown } from '../limit.ts';

/** The combination that lifts a rim most, with the lift that its own weight leaves (N; negative where it stays). */
function mostLifted(loads: CapLoads): { readonly lift: number; readonly loadCase: string } | undefined {
  let most: { lift: number; loadCase: string } | undefined;
  for (const load of loads.loads) {
    for (const node of [capRims.left, capRims.right]) {
      const lift = load.points
        .filter((point) => point.node === node)
        .reduce((sum, point) => sum + point.fy, 0);
      if (most === undefined || lift > most.lift) most = { lift, loadCase: load.title };
    }
  }
  return most;
}

/** Lift at a rim, and what weight and hold (N) put against it, N: the standing weight is in the lift, and is added back. */
function atRim({ weight }: CapLoads, lift: number, held: number): { demand: number; capacity: number } {
  return { demand: Math.max(0, lift + weight / 2), capacity: weight / 2 + held };
}

function limits({ shelter }: CheckInput): Limit[] {
  const { roof: cap, site } = shelter;
  if (cap.type !== 'cap') return [];
  const hold = footUplift(cap.foot, undefined, site, 'gust');
  if ('reason' in hold) return [unknown(cap.foot, hold.reason)];
  const held = groundAllowedAt(hold, site.basis);
  return [
    {
      by: 'pressure',
      part: cap.foot,
      gives: 'the cap is lifted off its bed or rolled over',
      sacrificial: cap.sacrificial === true || cap.foot.sacrificial === true,
      unasked: 'no wind acts on it',
      use: (factor) => {
        // Without wind nothing lifts it; the standards know no gust of nothing.
        if (!(factor > 0)) return undefined;
        const loads = capLoads(shelter, cap, Math.sqrt(factor) * site.gust);
        const most = mostLifted(loads);
        if (most === undefined) return undefined;
        const { demand, capacity } = atRim(loads, most.lift, held);
        return {
          utilisation: demand / capacity,
          loadCase: most.loadCase,
          tell: () => tell(cap, loads, most.loadCase, { demand, capacity, held }, hold),
        };
      },
    },
  ];
}

function tell(
  cap: Cap,
  loads: CapLoads,
  loadCase: string,
  { demand, capacity, held }: { demand: number; capacity: number; held: number },
  hold: GroundResult,
): Told {
  return {
    demand: measured(demand, 'force'),
    capacity: measured(capacity, 'force'),
    message: [
      'Wind lifts one rim of each cap with ',
      measured(demand, 'force'),
      ` under ${loadCase}; half its weight`,
      ...(held > 0 ? [' and what holds that rim down'] : [', for nothing else holds it,']),
      ' may stand against ',
      measured(capacity, 'force'),
      '.',
    ],
    source: 'derived',
    steps: [
      step(
        'G',
        'weight of one cap',
        'G = w l',
        [
          given('w', 'weight along the ridge', loads.weight / loads.length, 'line-load'),
          given('l', 'length of one cap', loads.length, 'length'),
        ],
        loads.weight,
        'force',
        'derived',
      ),
      inWords(
        'F',
        'lift at the rim, from the balance of the wind on the arc about the other rim',
        'F = Σ (p x dA) / S, by the factors of the combination, with half the weight added back',
        [given('S', 'distance between the rims', cap.span, 'length')],
        demand,
        'force',
        'derived',
      ),
      ...hold.steps,
      step(
        'R',
        'what stands against it',
        'R = G / 2 + hold',
        [given('hold', 'of one rim', held, 'force')],
        capacity,
        'force',
        'derived',
      ),
    ],
  };
}

export const overturning: Check = {
  id: 'overturning',
  title: 'Overturning of caps',
  asks: 'Does a gust roll a cap over, or lift it off its bed?',
  matters: 'A cap that flies breaks itself, and what it hits; the seedlings under it are gone as well.',
  formula: 'u = F / (G / 2 + hold)',
  symbols: [
    { symbol: 'F', meaning: 'lift of the wind at one rim', kind: 'force' },
    { symbol: 'G', meaning: 'weight of one cap', kind: 'force' },
    { symbol: 'hold', meaning: 'what the ground or ballast at that rim may hold', kind: 'force' },
  ],
  sources: ['derived'],
  leavesOut:
    'Gusts that get under a rim that does not lie close, caps that lean on their neighbours, and how the cap is fixed to what holds it. Feet of frames are judged by pull-out.',
  mayBeAccepted: 'When the caps are taken in before such a gust.',
  appliesTo: ({ roof }) => roof.type === 'cap',
  limits,
  levers,
};

/** Pegs deeper or more ballast; ballast where nothing holds the rims yet. */
function levers(input: CheckInput): Lever[] {
  const { roof } = input.shelter;
  if (roof.type !== 'cap') return [];
  const { foot } = roof;
  if (foot.kind !== 'ballast' && foot.kind !== 'bearing') return [deeper(foot)];
  return [heavierRims(foot, Math.max(60, 2 * (foot.mass ?? 0)))];
}
