import type { CableItem, Part, Shelter } from '@tautline/shelter';
import type { Check, CheckInput } from '../check.ts';
import type { Found } from '../finding.ts';
import { given, judge, measured, notChecked, step } from '../judge.ts';
import { cableWorking } from '../rigging.ts';
import { setQuantity } from '../slots.ts';

/** Growth of steel wire per kelvin: 12e-6, handbook value, from memory. */
const growth = 12e-6;
/** Day on which a cable is pulled up, °C: assumed, for the spec does not say it. */
const setUpAt = 20;

interface Pulled {
  readonly part: Part;
  readonly cable: CableItem;
  readonly noun: string;
  /** N; left out where no pull is counted on. */
  readonly tension?: number;
}

/** A pull that was said and counts; wires pulled up by hand have none. */
const counted = (tension: number | undefined): Pick<Pulled, 'tension'> =>
  tension === undefined || tension <= 0 ? {} : { tension };

function cablesOf({ ridge, braces }: Shelter): Pulled[] {
  const list: Pulled[] = [];
  if (ridge?.member.kind === 'cable')
    list.push({
      part: ridge,
      cable: ridge.member,
      noun: 'ridge cable',
      ...counted(ridge.tension),
    });
  for (const brace of braces)
    if (brace.member.kind === 'cable')
      list.push({
        part: brace,
        cable: brace.member,
        noun: brace.role,
        ...counted(brace.tension),
      });
  return list;
}

function run({ shelter }: CheckInput): Found[] {
  const cables = cablesOf(shelter);
  const unknown = cables.filter(({ tension }) => tension === undefined);
  const known = cables.flatMap((pulled) =>
    pulled.tension === undefined ? [] : [onCable(shelter, pulled, pulled.tension)],
  );
  const [first] = unknown;
  if (first === undefined) return known;
  const nouns = [...new Set(unknown.map(({ noun }) => (noun === 'brace' ? 'wire braces' : `${noun}s`)))];
  const reason = `nothing says what pull the ${nouns.join(' and the ')} are set up with`;
  return [...known, notChecked(first.part, reason)];
}

function onCable(shelter: Shelter, { part, cable, noun }: Pulled, tension: number): Found {
  const warming = Math.max(0, shelter.site.hottest - setUpAt);
  const lost = cable.modulus * cable.area * growth * warming;
  return judge({
    part,
    utilisation: lost / tension,
    demand: measured(lost, 'force'),
    capacity: measured(tension, 'force'),
    mild: true,
    loadCase: 'the hottest day',
    message: [
      `On the hottest day the ${noun} of ${cable.title} grows, and loses up to `,
      measured(lost, 'force'),
      ' of the ',
      measured(tension, 'force'),
      lost > tension ? ' it was pulled to: it hangs slack.' : ' it was pulled to.',
    ],
    source: 'cable-heat',
    steps: [
      step(
        'ΔT',
        'pull lost to warmth between ends that do not give',
        'ΔT = E A α (ϑ_hot - ϑ_0)',
        [
          given('E', 'modulus of the cable', cable.modulus, 'stress'),
          given('A', 'metal area', cable.area, 'area'),
          given('α', 'growth in warmth (from memory)', growth, 'expansion'),
          given('ϑ_hot', 'hottest', shelter.site.hottest, 'temperature'),
          given('ϑ_0', 'day it is pulled up (taken, not said)', setUpAt, 'temperature'),
        ],
        lost,
        'force',
        'cable-heat',
      ),
    ],
  });
}

export const cableSlack: Check = {
  id: 'cable-slack',
  title: 'Cable slack in the heat',
  asks: 'Is a ridge cable, guy or wire brace pulled tight enough that it does not hang slack on the hottest day?',
  matters:
    'A slack cable lets the crown sink before it takes hold, and a slack guy lets the house knock itself loose.',
  formula: 'u = E A α (ϑ_hot - ϑ_0) / T_0',
  symbols: [
    { symbol: 'E A', meaning: 'stretch stiffness of the cable', kind: 'force' },
    { symbol: 'α', meaning: 'growth in warmth', kind: 'expansion' },
    { symbol: 'ϑ_hot, ϑ_0', meaning: 'hottest day and day it is pulled up', kind: 'temperature' },
    { symbol: 'T_0', meaning: 'pull when it is set up', kind: 'force' },
  ],
  sources: ['cable-heat'],
  leavesOut:
    'Posts and anchors that give and so keep some pull; the bedding-in of new rope, which takes pull once more; slack of the lee side in wind, which the whole house in space follows; what a cable may be pulled with (rail-span, racking).',
  mayBeAccepted: 'Where a turnbuckle is tightened again when the hot season starts.',
  run,
  levers: ({ shelter }, finding) => {
    const pulled = cablesOf(shelter).find(({ part }) => part.id === finding.part);
    if (pulled?.tension === undefined) return [];
    return [
      {
        type: 'number',
        from: pulled.tension,
        // Half as much again as the heat takes; more only loads the posts and anchors.
        towards: Math.min(cableWorking(pulled.cable), 1.5 * (finding.demand?.value ?? 0)),
        // 0.1 kN, and 25 lbf (111.205 541 N)
        steps: { metric: 100, us: 111.205541 },
        title: (value) => ['Pull it to ', measured(value, 'force')],
        edits: (value) => [setQuantity(pulled.part.origin, 'tension', value, 'force')],
      },
    ];
  },
};
