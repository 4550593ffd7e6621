import type { Brace, CableItem, Shelter } from '@tautline/shelter';
import { pulledLess, strongerCable } from '../anchor-levers.ts';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import type { Finding } from '../finding.ts';
import { type GuyPull, guyLimit, sideGuys } from '../guys.ts';
import { given, measured, step } from '../judge.ts';
import type { Limit, Told } from '../limit.ts';
import { cableWorking } from '../rigging.ts';

type Wire = Brace & { readonly member: CableItem };

/** Side guys of cable: what is no cable is judged with the braces of the whole house. */
const wires = (shelter: Shelter): readonly Wire[] =>
  sideGuys(shelter).filter((guy): guy is Wire => guy.member.kind === 'cable');

function limits(input: CheckInput): Limit[] {
  return wires(input.shelter).map((guy) => {
    const mayTake = cableWorking(guy.member);
    return guyLimit(input, guy, {
      part: guy,
      gives: 'the side guy parts',
      sacrificial: guy.sacrificial === true,
      mayTake,
      tell: (pulled) => tell(guy.member, pulled, mayTake),
    });
  });
}

function tell(member: CableItem, pulled: GuyPull, capacity: number): Told {
  return {
    demand: measured(pulled.pull, 'force'),
    capacity: measured(capacity, 'force'),
    message: [...pulled.told, `; with clips ${member.title} may take `, measured(capacity, 'force'), '.'],
    source: 'rigging',
    steps: [
      ...pulled.steps,
      step(
        'T_max',
        'pull it may take with clips',
        'T_max = 0.8 F_break / 3',
        [given('F_break', 'breaking load', member.breakingLoad, 'force')],
        capacity,
        'force',
        'rigging',
      ),
    ],
  };
}

export const guyPullCheck: Check = {
  id: 'guy-pull',
  title: 'Pull of side guys',
  asks: 'Do the wires that hold the house from its sides stand their pull: what they were set up with, and what the wind adds?',
  matters:
    'A guy that parts lets the whole house lean at once, and a wire pulled up too hard has nothing left for the wind.',
  formula:
    'u = T / T_max, T = max(T_w, T_0 + T_w / 2); T = T_0 + T_w under blown-up films; T_max = 0.8 F_break / 3',
  symbols: [
    { symbol: 'T_w', meaning: 'pull by the load', kind: 'force' },
    { symbol: 'T_0', meaning: 'pull it is set up with', kind: 'force' },
    { symbol: 'F_break', meaning: 'breaking load', kind: 'force' },
  ],
  sources: ['statics', 'frame', 'house', 'rigging'],
  leavesOut:
    'The live tier knows what share of the wind the guys take only under blown-up films; elsewhere it asks whether they would hold all of its push across, which leaves out what they take of the lift. Guys along the house (racking), ridge cables (rail-span), wire braces (racking, whole-house); knots, thimbles and worn wire.',
  mayBeAccepted: 'When the end fittings keep the full strength of the wire, or a pull test was made.',
  needs: 'frame',
  appliesTo: (shelter) => wires(shelter).length > 0,
  limits,
  levers,
};

/** Less pull at the start, then stouter wire. */
function levers({ shelter }: CheckInput, finding: Finding, stock: Stock): Lever[] {
  const guy = sideGuys(shelter).find(({ id }) => id === finding.part);
  if (guy?.member.kind !== 'cable') return [];
  return [...pulledLess(guy, 'guys'), strongerCable({ origin: guy.origin, member: guy.member }, stock)];
}
