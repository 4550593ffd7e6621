/** Using another stock item in the place of one: the edits, the fittings that go along, and what could stand in. */
import { type Item, type JointItem, madeFor, type SectionShape } from '../model/items.ts';
import { itemValue } from './nodes.ts';
import type { SpecEdit, SpecNode } from './spec.ts';

export interface Swap {
  readonly edits: readonly SpecEdit[];
  /** Fittings made for the old item that give way to the like of them made for the new one. */
  readonly along: readonly { readonly from: JointItem; readonly to: JointItem }[];
  /** Fittings made for the old item only, with nothing in stock that does the same for the new one. */
  readonly left: readonly JointItem[];
}

/**
 * What to change in a block so that `to` stands wherever it says `from`. Couplers and fittings that are made
 * for `from` and not for `to` are changed with it, to one of the same form (and angle) that fits.
 */
export function swapEdits(block: SpecNode, from: Item, to: Item, stock: readonly Item[]): Swap {
  const edits: SpecEdit[] = [];
  const along = new Map<string, JointItem>();
  const left = new Map<string, JointItem>();
  const joints = new Map(stock.filter(isJoint).map((joint) => [joint.id, joint] as const));
  for (const { node, slot, id } of namedItems(block)) {
    if (id === from.id) {
      edits.push({ type: 'replace', node: node.origin, slots: { [slot]: itemValue(to.id, node.origin) } });
      continue;
    }
    const joint = joints.get(id);
    if (!joint || !made(joint, from) || made(joint, to)) continue;
    const other = likeOf(joint, to, joints.values());
    if (other === undefined) left.set(joint.id, joint);
    else {
      along.set(joint.id, other);
      edits.push({ type: 'replace', node: node.origin, slots: { [slot]: itemValue(other.id, node.origin) } });
    }
  }
  const used = edits.length > along.size;
  return {
    edits: used ? edits : [],
    along: [...along].map(([id, other]) => ({ from: joints.get(id)!, to: other })),
    left: [...left.values()],
  };
}

/** Items that could stand in for one: of its own kind, those of the same material first, then the nearest in size. */
export function standIns(item: Item, stock: readonly Item[]): readonly Item[] {
  return stock
    .filter((other) => other.kind === item.kind && other.id !== item.id && sameForm(item, other))
    .map((other) => ({
      other,
      strange: materialOf(other) === materialOf(item) ? 0 : 1,
      away: Math.abs(Math.log(sizeOf(other) / sizeOf(item))),
    }))
    .sort((a, b) => a.strange - b.strange || a.away - b.away || (a.other.id < b.other.id ? -1 : 1))
    .map(({ other }) => other);
}

/** Every place of a block and of the blocks in it that names an item. */
function namedItems(node: SpecNode): { node: SpecNode; slot: string; id: string }[] {
  const own = Object.entries(node.slots).flatMap(([slot, value]) =>
    value.type === 'item' ? [{ node, slot, id: value.id }] : [],
  );
  return [...own, ...node.children.flatMap(namedItems)];
}

const made = (joint: JointItem, item: Item): boolean =>
  'section' in item ? madeFor(joint, item) : joint.fits?.includes(item.id) === true;

function isJoint(item: Item): item is JointItem {
  return item.kind === 'coupler' || item.kind === 'fitting';
}

function likeOf(joint: JointItem, to: Item, joints: Iterable<JointItem>): JointItem | undefined {
  return [...joints]
    .filter(
      (other) =>
        other.kind === joint.kind &&
        other.form === joint.form &&
        made(other, to) &&
        Math.abs((other.angle ?? 0) - (joint.angle ?? 0)) < 1e-6,
    )
    .sort((a, b) => b.momentCapacity - a.momentCapacity || (a.id < b.id ? -1 : 1))[0];
}

function materialOf(item: Item): string {
  return 'material' in item ? item.material.id : '';
}

function sameForm(a: Item, b: Item): boolean {
  return !('form' in a && 'form' in b) || a.form === b.form;
}

/** A size to compare items of one kind by: m, or N, as the kind has it. */
function sizeOf(item: Item): number {
  switch (item.kind) {
    case 'pipe':
    case 'rod':
    case 'pole':
    case 'lumber':
      return acrossOf(item.section);
    case 'cable':
      return item.breakingLoad;
    case 'film':
    case 'sheet':
      return item.thickness;
    case 'mesh':
      return item.porosity;
    case 'coupler':
    case 'fitting':
      return Math.max(item.pullCapacity, 1);
    case 'fastening':
      return Math.max(item.holds, 1);
    case 'anchor':
      return item.diameter ?? item.length ?? 1;
    case 'supply':
      return item.across ?? item.pack ?? 1;
  }
}

function acrossOf(section: SectionShape): number {
  return section.shape === 'rectangle' ? Math.sqrt(section.depth * section.breadth) : section.outside;
}
