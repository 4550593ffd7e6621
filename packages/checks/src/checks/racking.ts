import {
  type Brace,
  type CableItem,
  itemValue,
  type MemberItem,
  type Shelter,
  specNode,
  wordValue,
} from '@tautline/shelter';
import { alongBraces } from '../bracing.ts';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import type { Finding } from '../finding.ts';
import { heldByFeet, onBraces, type Push, pullOf, pushAlong } from '../hold-along.ts';
import { given, inWords, measured } from '../judge.ts';
import { type Limit, type Told, type Use, unknown } from '../limit.ts';
import { setItem } from '../slots.ts';

const isFramed = ({ roof }: Shelter): boolean => roof.type === 'bows' || roof.type === 'rafters';

function limits({ shelter }: CheckInput): Limit[] {
  const push = pushAlong(shelter);
  if (push === undefined) return [unknown(shelter, 'the wind standard gives no push along')];
  const braces = alongBraces(shelter);
  if (braces.length === 0) return [ofFeet(shelter, push)];
  return braces.map((brace) => ofBrace(shelter, brace, push, 1 / braces.length));
}

/** The push at `factor` times the wind pressure. */
const times = (push: Push, factor: number): Push => ({ ...push, force: factor * push.force });

function ofFeet(shelter: Shelter, atSite: Push): Limit {
  const { roof } = shelter;
  const use = (factor: number): Use => {
    const push = times(atSite, factor);
    const capacity = heldByFeet(shelter, push);
    return {
      // A house that nothing holds has no number; a hundred times too little stands for it.
      utilisation: push.force / Math.max(capacity, atSite.force / 100),
      loadCase: push.title,
      tell: () => tellFeet(push, capacity),
    };
  };
  return {
    by: 'pressure',
    part: roof,
    gives: 'the house leans over along its length',
    sacrificial: roof.sacrificial === true,
    use,
    // What nothing holds lies down without any wind.
    calm: heldByFeet(shelter, atSite) > 0 ? [] : [use(1)],
  };
}

function tellFeet(push: Push, capacity: number): Told {
  return {
    demand: measured(push.force, 'force'),
    capacity: measured(capacity, 'force'),
    message:
      capacity > 0
        ? [
            'No brace or guy holds the house along its length: wind pushes it with ',
            measured(push.force, 'force'),
            ', and its clamped feet may hold ',
            measured(capacity, 'force'),
            ' before frames or soil give.',
          ]
        : [
            'Nothing keeps the house from leaning over along its length: no brace, no guy, and no foot that is clamped. Wind pushes it with ',
            measured(push.force, 'force'),
            '.',
          ],
    source: push.source,
    steps: [
      inWords(
        'F',
        'push of the wind along the house',
        'from the wind case',
        [],
        push.force,
        'force',
        push.source,
      ),
      inWords(
        'F_a',
        'what the clamped feet hold, each bent by F h about the ground',
        'F_a = Σ min(f_b W / h, soil)',
        [given('h', 'height the push acts at', push.height, 'length')],
        capacity,
        'force',
        'statics',
      ),
    ],
  };
}

function ofBrace(shelter: Shelter, brace: Brace, atSite: Push, share: number): Limit {
  const known = onBraces(shelter, brace, atSite, share);
  if ('reason' in known) return unknown(brace, known.reason);
  return {
    by: 'pressure',
    part: known.part,
    gives: `the ${brace.role} along the house gives`,
    sacrificial: brace.sacrificial === true,
    use: (factor) => {
      const hold = factor === 1 ? known : onBraces(shelter, brace, times(atSite, factor), share);
      if ('reason' in hold) return undefined;
      return {
        utilisation: hold.demand / Math.max(hold.capacity, 1e-6),
        loadCase: atSite.title,
        tell: () => tellBrace(brace, hold),
      };
    },
  };
}

function tellBrace(brace: Brace, hold: Exclude<ReturnType<typeof onBraces>, { reason: string }>): Told {
  return {
    demand: measured(hold.demand, 'force'),
    capacity: measured(hold.capacity, 'force'),
    message: [
      `Wind along the house pulls each ${brace.role} of ${brace.member.title} with `,
      measured(hold.demand, 'force'),
      `; ${hold.what} may hold `,
      measured(hold.capacity, 'force'),
      '.',
    ],
    source: hold.source,
    steps: hold.steps,
  };
}

export const racking: Check = {
  id: 'racking',
  title: 'Racking along the house',
  asks: 'Does anything keep the whole house from leaning over when the wind blows along it?',
  matters:
    'Frames stand well across and badly along. Unbraced, they lay themselves down one after the other.',
  formula:
    'u = max(N, T_0 + N / 2) / N_a, N = F h / (h_b n cos α); without braces u = F / Σ min(f_b W / h, soil)',
  symbols: [
    { symbol: 'F', meaning: 'push of the wind along the house', kind: 'force' },
    { symbol: 'h', meaning: 'height the push acts at', kind: 'length' },
    { symbol: 'h_b', meaning: 'height of the braces', kind: 'length' },
    { symbol: 'T_0', meaning: 'pull that wires are pulled up to', kind: 'force' },
    { symbol: 'n', meaning: 'braces that are pulled', kind: 'count' },
    { symbol: 'cos α', meaning: 'level run of a brace over its length', kind: 'ratio' },
  ],
  sources: ['statics', 'asce7-16:27.3-1', 'en1991-1-4:7.5', 'rigging'],
  leavesOut:
    'How purlins bring the push to the braces, the screws and lashings at their ends, the stiffness of film, the space frame of the whole house.',
  mayBeAccepted: 'When end walls, or ground the house is dug into, hold it along its length.',
  appliesTo: isFramed,
  limits,
  levers,
};

/** Stouter braces. A house without any gets them in its corners. */
function levers(input: CheckInput, finding: Finding, stock: Stock): Lever[] {
  const brace = alongBraces(input.shelter).find((entry) => entry.id === finding.part);
  if (brace === undefined) return [bracesInCorners(input.shelter, stock)];
  const own = pullOf(input.shelter, brace.member);
  const options = stock.items
    .filter(
      (entry): entry is MemberItem | CableItem =>
        (entry.kind === 'cable' || 'section' in entry) &&
        entry.kind === brace.member.kind &&
        pullOf(input.shelter, entry as MemberItem | CableItem) > own,
    )
    .sort((a, b) => pullOf(input.shelter, a) - pullOf(input.shelter, b));
  return [
    {
      type: 'choice',
      options: options.map((entry) => ({
        title: [`Use ${entry.title}`],
        edits: [setItem(brace.origin, 'of', entry.id)],
      })),
    },
  ];
}

function bracesInCorners(shelter: Shelter, stock: Stock): Lever {
  const { origin } = shelter;
  const wires = stock.items
    .filter((entry): entry is CableItem => entry.kind === 'cable')
    .sort((a, b) => a.breakingLoad - b.breakingLoad);
  return {
    type: 'choice',
    options: wires.map((wire) => ({
      title: [`Brace the corner bays along the house with ${wire.title}`],
      edits: [
        {
          type: 'add' as const,
          block: origin,
          node: specNode('braces', origin, { plane: wordValue('along', origin) }, [
            specNode('of', origin, { item: itemValue(wire.id, origin) }),
            specNode('at', origin, { value: wordValue('corners', origin) }),
          ]),
        },
      ],
    })),
  };
}
