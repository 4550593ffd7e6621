import { type JointItem, type MemberItem, madeFor, type Part, type Shelter } from '@tautline/shelter';
import type { Check, CheckInput, Stock } from '../check.ts';
import type { Found } from '../finding.ts';
import { remark } from '../remark.ts';

interface Use {
  readonly part: Pick<Part, 'id' | 'origin'>;
  readonly item: JointItem;
  /** Members it takes hold of, the one it is said for first. */
  readonly members: readonly MemberItem[];
  /** It cuts a pipe that is sprung over it. */
  readonly sprung: boolean;
}

/** Joints that hold by their size: they grip one outside diameter and no other. */
const sized: ReadonlySet<JointItem['form']> = new Set([
  'socket',
  'sleeve',
  'cross',
  'tee',
  'corner',
  'peak',
  'clamp',
]);

function usesOf({ roof, purlins, ridge, sidePosts }: Shelter): Use[] {
  const frame = roof.type === 'bows' || roof.type === 'rafters' ? roof : undefined;
  const uses: Use[] = [];
  const elastic = roof.type === 'bows' && roof.shape === 'elastic';
  if (frame !== undefined) {
    const own = frame.type === 'bows' ? [frame.crownFitting] : [frame.peakJoint, frame.eaveJoint];
    for (const joint of frame.joints)
      uses.push({ part: joint, item: joint.item, members: [frame.member], sprung: false });
    for (const joint of own)
      if (joint !== undefined)
        uses.push({ part: joint, item: joint.item, members: [frame.member], sprung: elastic });
  }
  for (const rail of [...purlins, ...(ridge === undefined ? [] : [ridge])]) {
    if (rail.joint === undefined) continue;
    const members = [
      ...(rail.member.kind === 'cable' ? [] : [rail.member]),
      ...(frame === undefined ? [] : [frame.member]),
    ];
    const part = { id: rail.id, origin: rail.jointOrigin ?? rail.origin };
    uses.push({ part, item: rail.joint, members, sprung: false });
  }
  if (sidePosts?.topJoint !== undefined)
    uses.push({ part: sidePosts, item: sidePosts.topJoint, members: [sidePosts.member], sprung: false });
  return uses;
}

/** Why a joint does not suit what it holds, if it does not. Common practice, no source. */
function unsuited({ item, members, sprung }: Use): string | undefined {
  const { form, fits } = item;
  if (sized.has(form) && fits !== undefined && !members.some((member) => madeFor(item, member)))
    return `it is made for ${fits.join(' or ')}, and here it holds ${members.map(({ id }) => id).join(' on ')}`;
  const of = (family: string): boolean => members.some(({ material }) => material.family === family);
  if (form === 'clamp' && of('bamboo')) return 'a clamp crushes and splits a hollow culm; lash it';
  if (form === 'bolt' && of('bamboo'))
    return 'a bolt splits a culm along its length; lash it, or wrap the culm on both sides of the hole';
  if (form === 'plate' && members.some(({ section }) => section.shape !== 'rectangle'))
    return 'a nailed plate finds no flat side on a round member';
  if (form === 'bolt' && of('pvc')) return 'a hole through a bent plastic pipe is where it cracks; clamp it';
  if (sprung && (form === 'cross' || form === 'tee'))
    return 'it cuts the sprung pipe in two at its crown, where it bends most; run the pipe through whole';
  return undefined;
}

function run({ shelter }: CheckInput): Found[] {
  const uses = usesOf(shelter);
  const findings = uses.flatMap((use) => {
    const why = unsuited(use);
    const text = `${use.item.title} does not suit its place: ${why}.`;
    return why === undefined ? [] : [remark(use.part, 'fails', [text], 'practice')];
  });
  if (uses.length === 0 || findings.length > 0) return findings;
  const titles = [...new Set(uses.map(({ item }) => item.title))].join('; ');
  return [remark(shelter, 'passes', [`Nothing is known against ${titles}.`], 'practice')];
}

export const jointKind: Check = {
  id: 'joint-kind',
  title: 'Joint unsuited to its member',
  asks: 'Is each joint of a kind, and of a size, that suits what it holds?',
  matters:
    'Glue does not hold conduit, a clamp splits bamboo, and a fitting of the next size up only looks as if it held.',
  formula: 'the size it is made for, and what it does to the material',
  symbols: [],
  sources: ['practice', 'catalogue'],
  leavesOut:
    'What the joint carries (weak-coupler) and its angle (cross-fitting-angle); screws, glue and how well it was made; joints for which the catalogue says no size.',
  mayBeAccepted:
    'Where the joint was altered to suit, such as a sleeve packed out, or a culm plugged at the hole.',
  run,
  levers: ({ shelter }, finding, stock) => {
    const use = usesOf(shelter).find(({ part }) => part.id === finding.part);
    return use === undefined ? [] : [{ type: 'choice', options: suitable(use, stock) }];
  },
};

/** Another joint of stock in its place, of the same form first. */
function suitable(use: Use, { items }: Stock) {
  return items
    .filter((entry): entry is JointItem => entry.kind === use.item.kind && entry.id !== use.item.id)
    .filter((item) => unsuited({ ...use, item }) === undefined)
    .filter(({ form }) => form === use.item.form || form === 'clamp' || form === 'lashing')
    .sort((a, b) => Number(b.form === use.item.form) - Number(a.form === use.item.form))
    .map((item) => ({
      title: [`Use ${item.title}`],
      edits: [
        {
          type: 'replace' as const,
          node: use.part.origin,
          slots: { item: { type: 'item' as const, id: item.id, origin: use.part.origin } },
        },
      ],
    }));
}
