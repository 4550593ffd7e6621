import { groundAllowedAt } from '@tautline/loads';
import type { Cap, Shelter } from '@tautline/shelter';
import { type CapLoads, capLoads, capRims } from '@tautline/structure';
import type { Check, CheckInput, Lever } from '../check.ts';
import type { Found } from '../finding.ts';
import { footUplift } from '../ground.ts';
import { given, judge, measured, notChecked, step } from '../judge.ts';
import { deeper, heavierRims } from '../levers.ts';

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

/** Share of what stands against it that a gust (m/s) asks for; undefined where the hold of a rim is not covered. */
export function overturningUse(shelter: Shelter, cap: Cap, gust: number): number | undefined {
  const hold = footUplift(cap.foot, undefined, shelter.site);
  if ('reason' in hold) return undefined;
  const held = groundAllowedAt(hold, shelter.site.basis);
  // Without wind nothing lifts it; the standards know no gust of nothing.
  if (!(gust > 0)) return 0;
  const loads = capLoads(shelter, cap, gust);
  const { demand, capacity } = atRim(loads, mostLifted(loads)?.lift ?? 0, held);
  return demand / capacity;
}

function onCap(shelter: Shelter, cap: Cap): Found {
  const loads = capLoads(shelter, cap);
  const most = mostLifted(loads);
  if (most === undefined) return notChecked(cap, 'no wind acts on it');
  const hold = footUplift(cap.foot, undefined, shelter.site);
  if ('reason' in hold) return notChecked(cap.foot, hold.reason);
  const held = groundAllowedAt(hold, shelter.site.basis);
  const { demand, capacity } = atRim(loads, most.lift, held);
  return judge({
    part: cap.foot,
    utilisation: demand / capacity,
    demand: measured(demand, 'force'),
    capacity: measured(capacity, 'force'),
    loadCase: most.loadCase,
    message: [
      'Wind lifts one rim of each cap with ',
      measured(demand, 'force'),
      ` under ${most.loadCase}; half its weight`,
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
        'G = m g A',
        [given('l', 'length of one cap', loads.length, 'length')],
        loads.weight,
        'force',
        'derived',
      ),
      step(
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
  });
}

function run(input: CheckInput): Found[] {
  const { roof } = input.shelter;
  return roof.type === 'cap' ? [onCap(input.shelter, roof)] : [];
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
  run,
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
