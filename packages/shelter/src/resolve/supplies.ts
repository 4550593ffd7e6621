/** What is used up in building, such as concrete, screws and cord: the one that is said, or the usual one. */
import type {
  CableItem,
  FasteningItem,
  JointItem,
  MemberItem,
  SupplyForm,
  SupplyItem,
} from '../model/items.ts';
import type { Wrapping } from '../model/shelter.ts';
import { factNode, itemIn, textIn } from '../spec/nodes.ts';
import type { SpecNode, SpecWorld } from '../spec/spec.ts';
import type { Context } from './context.ts';
import { itemOf, resolveItem } from './items.ts';
import { assume, newNotes, problem } from './notes.ts';
import { unitsOf } from './project.ts';
import { definitionsOf } from './world.ts';

/** What each form is called in a sentence. */
const called: Readonly<Record<SupplyForm, string>> = {
  concrete: 'concrete',
  'wire-clip': 'a wire clip',
  screw: 'a screw',
  wrapping: 'a wrapping',
  cord: 'cord',
  hinge: 'a hinge',
  latch: 'a latch',
  glue: 'glue',
};

/** Where a supply is said, and for which part. */
interface Wanted {
  readonly form: SupplyForm;
  /** The part and the word that the list of assumed values names. */
  readonly part: string;
  readonly word: string;
  readonly slot?: string;
  /** Whether one is big enough; any is when left out. */
  readonly fits?: (supply: SupplyItem) => boolean;
}

/**
 * The supply that a block says by a word, else one taken for it and listed as assumed: of those that fit, one with
 * a price before one without, then one usual in the units of the file, then the smallest. Undefined when the
 * catalogue in reach has none.
 */
export function supplyOf(block: SpecNode, wanted: Wanted, context: Context): SupplyItem | undefined {
  const { form, part, word, slot = 'item', fits = () => true } = wanted;
  const { world, notes } = context;
  const fact = factNode(block, word);
  if (itemIn(fact, slot) !== undefined) {
    const item = itemOf(fact, ['supply'], world, notes, slot) as SupplyItem | undefined;
    if (item === undefined || item.form === form) return item;
    const place = fact?.slots[slot]?.origin ?? block.origin;
    return problem(
      notes,
      'wrong-kind',
      `this takes ${called[form]}, and ${item.id} is ${called[item.form]}`,
      place,
    );
  }
  const usual = usualSupply(world, form, fits);
  if (usual === undefined) return undefined;
  const why =
    usual.prices.length > 0 ? 'one that has a price, as none is said' : 'a usual one, as none is said';
  assume(notes, part, word, usual.id, 'item', why, block.origin);
  return usual;
}

function usualSupply(
  world: SpecWorld,
  form: SupplyForm,
  fits: (supply: SupplyItem) => boolean,
): SupplyItem | undefined {
  const units = unitsOf(world);
  const rank = (one: SupplyItem): number =>
    (one.prices.length > 0 ? 0 : 8) + (one.usualIn === undefined ? 4 : one.usualIn === units ? 0 : 1);
  return suppliesOf(world)
    .filter((one) => one.form === form && fits(one))
    .sort(
      (a, b) =>
        rank(a) - rank(b) ||
        (a.across ?? 0) - (b.across ?? 0) ||
        (a.length ?? 0) - (b.length ?? 0) ||
        (a.id < b.id ? -1 : 1),
    )[0];
}

/** Read once a world: every wire and every footing asks for them. */
const read = new WeakMap<SpecWorld, readonly SupplyItem[]>();

function suppliesOf(world: SpecWorld): readonly SupplyItem[] {
  const known = read.get(world);
  if (known) return known;
  const all = definitionsOf('supply', world).flatMap(({ name, origin }) => {
    const item = resolveItem(name, ['supply'], world, newNotes(), origin);
    return item?.kind === 'supply' ? [item] : [];
  });
  read.set(world, all);
  return all;
}

/** Clips for a wire: as wide as it or the next size up. */
export const clipsOf = (
  block: SpecNode,
  part: string,
  cable: MemberItem | CableItem,
  context: Context,
): { readonly clips?: SupplyItem } => {
  if (cable.kind !== 'cable') return {};
  const clips = supplyOf(
    block,
    {
      form: 'wire-clip',
      part,
      word: 'clipped',
      // The sizes step by a quarter to a half; a wire may be a twentieth thicker than its clip is called.
      fits: ({ across = 0 }) => across >= 0.95 * cable.diameter && across <= 1.6 * cable.diameter,
    },
    context,
  );
  return clips === undefined ? {} : { clips };
};

/** A batten is screwed through with this much or more, a channel with less, m: common practice, no source. */
const boardScrew = 0.045;

/** Thickness from which on a screw drills through the wall of a tube, m: common practice, no source. */
const tubeScrew = 0.0045;

/** Screws for the channel or board that holds a film; what is clipped or tied takes none. */
export function screwsFor(
  block: SpecNode,
  part: string,
  form: FasteningItem['form'] | undefined,
  context: Context,
): SupplyItem | undefined {
  if (form !== 'board' && form !== 'channel') return undefined;
  const fits = ({ length = 0, across = 0 }: SupplyItem): boolean =>
    form === 'board' ? length >= boardScrew : length < boardScrew && across >= tubeScrew;
  return supplyOf(block, { form: 'screw', part, word: 'screwed', fits }, context);
}

/** What a part is wrapped with: a supply, or what its builder calls it. Nothing when it is not wrapped. */
export function wrappingOf(
  block: SpecNode,
  part: string,
  context: Context,
): { readonly wrapping?: Wrapping } {
  const fact = factNode(block, 'wrapped');
  if (fact === undefined) return {};
  const wrapping =
    textIn(fact) ?? supplyOf(block, { form: 'wrapping', part, word: 'wrapped' }, context) ?? '';
  return { wrapping };
}

/** The joint a fact names, with its cord where it is tied. */
export function jointItemOf(fact: SpecNode | undefined, context: Context): JointItem | undefined {
  const joint = itemOf(fact, ['coupler', 'fitting'], context.world, context.notes) as JointItem | undefined;
  return joint && tiedWith(joint, fact, context);
}

/** A joint with the cord it is tied with: the one said at the joint, else a usual one. */
export function tiedWith(
  joint: JointItem,
  fact: SpecNode | undefined,
  context: Context,
): JointItem | undefined {
  const { world, notes } = context;
  const place = fact?.slots['cord']?.origin ?? fact?.origin ?? joint.origin;
  const said = itemOf(fact, ['supply'], world, notes, 'cord') as SupplyItem | undefined;
  if (said && said.form !== 'cord')
    return problem(notes, 'wrong-kind', `this takes cord, and ${said.id} is ${called[said.form]}`, place);
  if (joint.cordLength === undefined) {
    return said
      ? problem(notes, 'wrong-kind', `only what is tied takes cord, and ${joint.id} is not`, place)
      : joint;
  }
  const cord = said ?? usualSupply(world, 'cord', () => true);
  if (!said && cord)
    assume(notes, joint.id, 'with', cord.id, 'item', 'a usual one, as none is said', joint.origin);
  return cord ? { ...joint, cord } : joint;
}
