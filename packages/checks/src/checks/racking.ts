import { groundAllowedAt } from '@tautline/loads';
import {
  type Brace,
  type CableItem,
  type Foot,
  itemValue,
  type MemberItem,
  postRows,
  type Shelter,
  specNode,
  wordValue,
} from '@tautline/shelter';
import { sectionOf, windOn } from '@tautline/structure';
import { windFactor } from '../basis.ts';
import { alongBraces } from '../bracing.ts';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import type { Finding } from '../finding.ts';
import { footUplift } from '../ground.ts';
import { footSideways } from '../ground-sideways.ts';
import { given, judge, measured, notChecked, step } from '../judge.ts';
import { inSoil, memberLimit } from '../resistance.ts';
import { cableWorking } from '../rigging.ts';
import { setItem } from '../slots.ts';

/** Push along the house at roof level, at the level of the combinations. */
interface Push {
  /** On the whole end or skin, N, and the height it acts at, m. */
  readonly force: number;
  readonly height: number;
  readonly title: string;
  readonly source: string;
}

function pushAlong(shelter: Shelter): Push | undefined {
  const wind = windOn(shelter).cases.find((entry) => entry.alongForce !== undefined);
  if (wind?.alongForce === undefined) return undefined;
  return {
    force: windFactor(shelter.site) * wind.alongForce,
    height: (shelter.roof.springing + shelter.roof.rise) / 2,
    title: wind.title,
    source: wind.source,
  };
}

/** Bracing as a whole: what share of its hold the wind asks for, and by what it is limited. */
interface Hold {
  readonly part: { readonly id: string; readonly origin: Brace['origin'] };
  readonly demand: number;
  readonly capacity: number;
  readonly what: string;
  readonly steps: Finding['steps'];
  readonly source: string;
}

/** Length and level run of one brace along the house, m. */
function runOf(brace: Brace): { length: number; level: number; height: number } {
  const dx = brace.to.x - brace.from.x;
  const dy = brace.to.y - brace.from.y;
  const dz = brace.to.z - brace.from.z;
  return { length: Math.hypot(dx, dy, dz), level: Math.abs(dz), height: Math.max(brace.from.y, brace.to.y) };
}

function strength(shelter: Shelter, member: MemberItem | CableItem): number {
  if (member.kind === 'cable') return cableWorking(member);
  return memberLimit(shelter.site, member, 'gust').tension * sectionOf(member).area;
}

function onBraces(shelter: Shelter, brace: Brace, push: Push, share: number): Hold | { reason: string } {
  const { length, level, height } = runOf(brace);
  if (level < 1e-6 || height <= 0) return { reason: 'the braces run straight up, and so hold nothing along' };
  // Of each pair that lean opposite ways only the one that is pulled is counted on.
  const pulled = brace.count / 2;
  const top = (share * push.force * push.height) / height;
  const wind = (top * length) / (level * pulled);
  // Both wires of a pair share the push until the one that is let go hangs slack.
  const setUp = brace.member.kind === 'cable' ? (brace.tension ?? 0) : 0;
  const pull = Math.max(wind, setUp + wind / 2);
  const own = strength(shelter, brace.member);
  let capacity = own;
  let what = `${brace.member.title} itself`;
  let steps: Finding['steps'] = [];
  if (brace.role === 'guy' && brace.foot !== undefined) {
    const held = footUplift(
      brace.foot,
      brace.member.kind === 'cable' ? undefined : brace.member,
      shelter.site,
    );
    if ('reason' in held) return held;
    // The anchor is pulled along the wire; what it holds upright is set against the upright share.
    const upright = Math.abs(brace.to.y - brace.from.y) / length;
    const anchor = groundAllowedAt(held, shelter.site.basis) / Math.max(upright, 0.1);
    steps = held.steps;
    if (anchor < capacity) {
      capacity = anchor;
      what = 'its anchor';
    }
  }
  return {
    part: brace,
    demand: pull,
    capacity,
    what,
    source: 'statics',
    steps: [
      step(
        'H',
        'push at the top of the braces',
        'H = F h / h_b',
        [
          given('F', 'push of the wind along the house', share * push.force, 'force'),
          given('h', 'height it acts at, half way up', push.height, 'length'),
          given('h_b', 'height of the braces', height, 'length'),
        ],
        top,
        'force',
        'statics',
      ),
      step(
        'N',
        'pull of one brace',
        'N = H / (n cos α)',
        [
          given('n', 'braces that are pulled: half of them', pulled, 'count'),
          given('cos α', 'level run over length', level / length, 'ratio'),
        ],
        wind,
        'force',
        'statics',
      ),
      ...(setUp > 0
        ? [
            step(
              'T',
              'pull with what the wires were pulled up to; the other wire of a pair lets go as this one is pulled',
              'T = max(N, T_0 + N / 2)',
              [
                given('N', 'pull by the wind', wind, 'force'),
                given('T_0', 'pull it is pulled up to', setUp, 'force'),
              ],
              pull,
              'force',
              'statics',
            ),
          ]
        : []),
      ...steps,
    ],
  };
}

/** Feet that keep bows and posts upright along the house, by kind. */
function uprights(shelter: Shelter): { foot: Foot; member: MemberItem; count: number; height: number }[] {
  const { roof } = shelter;
  const list: { foot: Foot; member: MemberItem; count: number; height: number }[] = [];
  const top = roof.springing + roof.rise;
  if (roof.type === 'bows' && roof.foot?.fixity === 'clamped')
    list.push({ foot: roof.foot, member: roof.member, count: 2 * roof.stations.length, height: top });
  for (const posts of postRows(shelter)) {
    if (posts.foot.fixity === 'clamped')
      list.push({
        foot: posts.foot,
        member: posts.member,
        count: posts.lines.length * posts.stations.length,
        height: posts.height,
      });
  }
  return list;
}

/** What all clamped feet hold against a push at a height, N: each by its member or by its soil, whichever is less. */
function heldByFeet(shelter: Shelter, push: Push): number {
  return uprights(shelter).reduce((sum, { foot, member, count }) => {
    const { height } = push;
    const section = sectionOf(member);
    const weak =
      member.section.shape === 'rectangle'
        ? (member.section.depth * member.section.breadth ** 2) / 6
        : section.sectionModulus;
    const bent = (memberLimit(shelter.site, member, 'gust', inSoil(foot)).bending * weak) / height;
    const soil = footSideways(foot, member, shelter.site, { push: 1, moment: height, lift: 0, stay: 'gust' });
    if ('reason' in soil) return sum;
    return sum + count * Math.min(bent, groundAllowedAt(soil, shelter.site.basis));
  }, 0);
}

const isFramed = ({ roof }: Shelter): boolean => roof.type === 'bows' || roof.type === 'rafters';

function judged(shelter: Shelter, push: Push | undefined): Finding[] {
  if (push === undefined) return [notChecked(racking.id, shelter, 'the wind standard gives no push along')];
  const braces = alongBraces(shelter);
  if (braces.length === 0) {
    const capacity = heldByFeet(shelter, push);
    return [
      judge({
        id: racking.id,
        part: shelter.roof,
        // A house that nothing holds has no number; a hundred times too little stands for it.
        utilisation: push.force / Math.max(capacity, push.force / 100),
        demand: measured(push.force, 'force'),
        capacity: measured(capacity, 'force'),
        loadCase: push.title,
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
          step(
            'F',
            'push of the wind along the house',
            'from the wind case',
            [],
            push.force,
            'force',
            push.source,
          ),
          step(
            'F_a',
            'what the clamped feet hold, each bent by F h about the ground',
            'F_a = Σ min(f_b W / h, soil)',
            [given('h', 'height the push acts at', push.height, 'length')],
            capacity,
            'force',
            'statics',
          ),
        ],
      }),
    ];
  }
  return braces.map((brace) => {
    const hold = onBraces(shelter, brace, push, 1 / braces.length);
    if ('reason' in hold) return notChecked(racking.id, brace, hold.reason);
    return judge({
      id: racking.id,
      part: hold.part,
      utilisation: hold.demand / Math.max(hold.capacity, 1e-6),
      demand: measured(hold.demand, 'force'),
      capacity: measured(hold.capacity, 'force'),
      loadCase: push.title,
      message: [
        `Wind along the house pulls each ${brace.role} of ${brace.member.title} with `,
        measured(hold.demand, 'force'),
        `; ${hold.what} may hold `,
        measured(hold.capacity, 'force'),
        '.',
      ],
      source: hold.source,
      steps: hold.steps,
    });
  });
}

function run({ shelter }: CheckInput): Finding[] {
  return isFramed(shelter) ? judged(shelter, pushAlong(shelter)) : [];
}

/** What the wind asks of the bracing's hold, by a factor on the wind pressure. The wind itself is worked out once. */
export function rackingUses(shelter: Shelter): (scale: number) => readonly Finding[] {
  const push = isFramed(shelter) ? pushAlong(shelter) : undefined;
  if (push === undefined) return () => [];
  return (scale) =>
    judged(shelter, { ...push, force: scale * push.force }).filter(
      (finding) => finding.utilisation !== undefined,
    );
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
  run,
  levers,
};

/** Stouter braces. A house without any gets them in its corners. */
function levers(input: CheckInput, finding: Finding, stock: Stock): Lever[] {
  const brace = alongBraces(input.shelter).find((entry) => entry.id === finding.part);
  if (brace === undefined) return [bracesInCorners(input.shelter, stock)];
  const own = strength(input.shelter, brace.member);
  const options = stock.items
    .filter(
      (entry): entry is MemberItem | CableItem =>
        (entry.kind === 'cable' || 'section' in entry) &&
        entry.kind === brace.member.kind &&
        strength(input.shelter, entry as MemberItem | CableItem) > own,
    )
    .sort((a, b) => strength(input.shelter, a) - strength(input.shelter, b));
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
