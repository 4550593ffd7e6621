/** Joints along bows and rafters: those said, and those the program must place where stock ends. */
import { type JointItem, type MemberItem, madeFor } from '../model/items.ts';
import type { JointUse } from '../model/shelter.ts';
import { factNodes, numberIn, wordIn } from '../spec/nodes.ts';
import type { SpecNode } from '../spec/spec.ts';
import type { Context } from './context.ts';
import { resolveItem } from './items.ts';
import { assume, newNotes, problem } from './notes.ts';
import { jointItemOf, tiedWith } from './supplies.ts';
import { definitionsOf } from './world.ts';

export interface Joints {
  /** In line, by their place along the member. */
  readonly along: readonly JointUse[];
  /** By where they are: 'crown', 'peak', 'eave', 'top'. */
  readonly at: ReadonlyMap<string, JointUse>;
}

/** Length and ends of the member the joints are on, m. */
export interface Jointed {
  readonly id: string;
  readonly member: MemberItem;
  /** Along the centre line. */
  readonly length: number;
  /** Further length of the same piece beyond the left and right end of the line: driven legs, overhangs. */
  readonly beyond: number;
}

export function readJoints(block: SpecNode, on: Jointed, context: Context): Joints {
  const along: JointUse[] = [];
  const at = new Map<string, JointUse>();
  let anywhere: JointItem | undefined;
  for (const [index, fact] of factNodes(block, 'joint').entries()) {
    const item = jointItemOf(fact, context);
    if (!item) continue;
    const place = wordIn(fact, 'place');
    const distance = numberIn(fact, 'at');
    const id = `${on.id}/joint-${index + 1}`;
    const use = { id, origin: fact.origin, item, assumed: false };
    if (place !== undefined)
      at.set(place, { ...use, id: `${on.id}/${place}`, at: place === 'eave' ? 0 : on.length / 2 });
    else if (distance === undefined) anywhere = item;
    else if (distance > 0 && distance < on.length) {
      along.push({ ...use, at: distance });
      // Over two slopes each rafter has its own; a bow is one member from foot to foot.
      if (wordIn(fact, 'sides') !== undefined && block.word === 'bows')
        along.push({ ...use, id: `${id}-right`, at: on.length - distance });
    } else
      problem(
        context.notes,
        'out-of-range',
        `the joint lies beyond the ends of the ${block.word}`,
        fact.origin,
      );
  }
  const placed = along.length > 0 ? [] : placeJoints(block, on, anywhere, context);
  return { along: [...along, ...placed].sort((a, b) => a.at - b.at), at };
}

/** One joint wherever the longest stock length ends, counted from the left end of the piece. */
function placeJoints(
  block: SpecNode,
  on: Jointed,
  said: JointItem | undefined,
  context: Context,
): readonly JointUse[] {
  const longest = on.member.stockLengths.at(-1);
  const whole = on.length + 2 * on.beyond;
  if (longest === undefined || whole <= longest + 1e-6) return [];
  if (isLaminated(on.member)) {
    const why = 'butts of the boards are staggered from layer to layer';
    assume(context.notes, on.id, 'joint', 'none', 'word', why, block.origin);
    return [];
  }
  // One without any hold in bending joins what lies on a post; in mid-span it would be a hinge.
  const fitting = fittingCouplers(on.member, context).find(({ momentCapacity }) => momentCapacity > 0);
  const item = said ?? (fitting && tiedWith(fitting, undefined, context));
  if (!item) {
    const message = `the ${block.word} are longer than ${on.member.id} is sold, and no coupler in reach says it fits: say which, as in \`joint socket-25 at 10 ft\``;
    problem(context.notes, 'no-coupler', message, block.origin, 'warning');
    return [];
  }
  // A coupler that slides over takes no length; each piece still runs to the middle of the joint.
  const uses: JointUse[] = [];
  for (let n = 1; n * longest < whole - 1e-6 && n <= 200; n++) {
    const at = n * longest - on.beyond;
    if (at <= 0 || at >= on.length) continue;
    uses.push({ id: `${on.id}/joint-${n}`, origin: block.origin, item, at, assumed: true });
    assume(
      context.notes,
      on.id,
      'joint',
      at,
      'length',
      `${item.id}, where a stock length of ${on.member.id} ends`,
      block.origin,
    );
  }
  return uses;
}

function isLaminated({ section }: MemberItem): boolean {
  return section.shape === 'rectangle' && (section.laminations ?? 1) > 1;
}

/** What joins the lengths of something that runs on for `run`, m: a plain socket where one fits. */
export function couplerAlong(
  member: MemberItem,
  run: number,
  context: Context,
): { readonly coupler?: JointItem } {
  const longest = member.stockLengths.at(-1);
  if (longest === undefined || run <= longest + 1e-6) return {};
  const fitting = fittingCouplers(member, context);
  const found = fitting.find(({ form }) => form === 'socket') ?? fitting[0];
  const coupler = found && tiedWith(found, undefined, context);
  return coupler === undefined ? {} : { coupler };
}

/** Couplers whose entries name the member, the strongest in bending first. */
function fittingCouplers(member: MemberItem, context: Context): readonly JointItem[] {
  const { world } = context;
  return definitionsOf('coupler', world)
    .flatMap(({ name, origin }) => {
      const item = resolveItem(name, ['coupler'], world, newNotes(), origin);
      return item?.kind === 'coupler' && madeFor(item, member) ? [item] : [];
    })
    .sort((a, b) => b.momentCapacity - a.momentCapacity || (a.id < b.id ? -1 : 1));
}
