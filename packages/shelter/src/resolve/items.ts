/** Stock items: from a name to plain data, with likeness followed. */
import type { Item, Material, MemberItem, PricePoint, SectionShape } from '../model/items.ts';
import type { Origin } from '../model/origin.ts';
import { factNode, factNodes, itemIn, numberIn, wordIn } from '../spec/nodes.ts';
import type { SpecDefinition, SpecNode, SpecWorld } from '../spec/spec.ts';
import { itemKinds } from '../vocabulary/vocabulary.ts';
import { readHardware } from './hardware.ts';
import type { ItemCommon } from './item-common.ts';
import { readMaterial } from './material.ts';
import { readMember } from './members.ts';
import { missing, type Notes, newNotes } from './notes.ts';
import { type Listed, readOnce } from './readings.ts';
import { readSkin } from './skins.ts';
import { definitionWithLikeness, lookUp, sourceOf, titleOf } from './world.ts';

/** The stock item of a name, of one of the kinds; problems are put at `origin` or at the item's own facts. */
export function resolveItem(
  name: string,
  kinds: readonly string[],
  world: SpecWorld,
  notes: Notes,
  origin: Origin,
): Item | undefined {
  const found = lookUp(name, kinds, world, notes, origin);
  return found && readOnce(found, world, notes, (own, listed) => readItem(found, listed, world, own));
}

function readItem(
  definition: SpecDefinition,
  listed: Listed,
  world: SpecWorld,
  notes: Notes,
): Item | undefined {
  const whole = definitionWithLikeness(definition, world, notes);
  if (!whole) return undefined;
  const common: ItemCommon = {
    id: whole.name,
    title: titleOf(whole),
    source: sourceOf(whole),
    origin: whole.origin,
    prices: pricesOf(whole, listed),
  };
  switch (whole.word) {
    case 'pipe':
    case 'rod':
    case 'pole':
    case 'lumber': {
      const material = materialOf(whole, world, notes);
      const member = material && readMember(whole, common, material, notes);
      return member && { ...member, ...takenFor(member, definition.like, world) };
    }
    case 'film':
    case 'mesh':
    case 'sheet':
      return readSkin(whole, common, notes);
    default:
      return readHardware(whole, common, notes);
  }
}

/** What a member is like, as far as it keeps the outside that fittings grip. */
function takenFor(
  member: MemberItem,
  like: string | undefined,
  world: SpecWorld,
): Pick<MemberItem, 'takenFor'> {
  const parent =
    like === undefined ? undefined : resolveItem(like, [member.kind], world, newNotes(), member.origin);
  return parent && 'section' in parent && sameOutside(parent.section, member.section)
    ? { takenFor: [parent.id, ...(parent.takenFor ?? [])] }
    : {};
}

function sameOutside(a: SectionShape, b: SectionShape): boolean {
  if (a.shape === 'rectangle')
    return b.shape === 'rectangle' && a.depth === b.depth && a.breadth === b.breadth;
  return b.shape !== 'rectangle' && a.outside === b.outside;
}

/** The item that a fact names in its `item` slot; undefined when it names none, or none that can be had. */
export function itemOf(
  fact: SpecNode | undefined,
  kinds: readonly string[],
  world: SpecWorld,
  notes: Notes,
  slot = 'item',
): Item | undefined {
  const name = itemIn(fact, slot);
  if (!fact || name === undefined) return undefined;
  return resolveItem(name, kinds, world, notes, fact.slots[slot]?.origin ?? fact.origin);
}

/** Every stock item of the world that can be read, for completion, substitution and price lists. */
export function resolveItems(world: SpecWorld, notes: Notes): readonly Item[] {
  const kinds = itemKinds.filter((kind) => kind !== 'material');
  return [...world.definitions.values()]
    .filter((definition) => kinds.includes(definition.word))
    .flatMap((definition) => resolveItem(definition.name, kinds, world, notes, definition.origin) ?? []);
}

export function resolveMaterial(
  name: string,
  world: SpecWorld,
  notes: Notes,
  origin: Origin,
): Material | undefined {
  const found = lookUp(name, ['material'], world, notes, origin);
  const whole = found && definitionWithLikeness(found, world, notes);
  return whole && readMaterial(whole, notes);
}

function materialOf(definition: SpecDefinition, world: SpecWorld, notes: Notes): Material | undefined {
  const fact = factNode(definition, 'material');
  const name = itemIn(fact);
  if (!fact || name === undefined) return missing(notes, definition, [definition.word, 'material']);
  return resolveMaterial(name, world, notes, fact.slots['item']?.origin ?? fact.origin);
}

/** Prices said in the item itself and in every price list that names it. */
function pricesOf(definition: SpecDefinition, listed: Listed): readonly PricePoint[] {
  const own = factNodes(definition, 'price');
  return [...own, ...(listed.get(definition.name) ?? [])].flatMap((fact) => priceOf(fact) ?? []);
}

/** What one of a unit is: SI of the foot and yard from NIST SP 811, exact. */
const oneOf: Readonly<Record<string, PricePoint['per']>> = {
  pack: { unit: 'pack', value: 1 },
  m: { unit: 'length', value: 1 },
  ft: { unit: 'length', value: 0.3048 },
  m2: { unit: 'area', value: 1 },
  ft2: { unit: 'area', value: 0.09290304 },
  m3: { unit: 'volume', value: 1 },
  yd3: { unit: 'volume', value: 0.764554857984 },
};

function priceOf(fact: SpecNode): PricePoint | undefined {
  const amount = numberIn(fact, 'amount');
  if (amount === undefined || !Number.isFinite(amount) || amount < 0) return undefined;
  const length = numberIn(fact, 'length');
  if (length !== undefined) {
    return length > 0 ? { amount, per: { unit: 'length', value: length }, origin: fact.origin } : undefined;
  }
  const per = oneOf[wordIn(fact, 'unit') ?? 'piece'] ?? { unit: 'piece', value: 1 };
  return { amount, per, origin: fact.origin };
}
