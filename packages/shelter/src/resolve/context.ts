/** What every part of a shelter is resolved against. */
import type { CableItem, FasteningItem, Item, MemberItem } from '../model/items.ts';
import { factNode } from '../spec/nodes.ts';
import type { SpecDefinition, SpecNode, SpecWorld } from '../spec/spec.ts';
import { itemOf } from './items.ts';
import { missing, type Notes } from './notes.ts';

export interface Context {
  readonly world: SpecWorld;
  readonly notes: Notes;
  /** The whole shelter block. */
  readonly shelter: SpecDefinition;
  /** m */
  readonly width: number;
  readonly length: number;
}

const memberKinds = ['pipe', 'rod', 'pole', 'lumber'];

/** The member a block is `of`; a problem when it does not say. */
export function memberOf(block: SpecNode, path: readonly string[], context: Context): MemberItem | undefined {
  const fact = factNode(block, 'of');
  if (!fact) return missing(context.notes, block, [...path, 'of']);
  return itemOf(fact, memberKinds, context.world, context.notes) as MemberItem | undefined;
}

/** The member or cable a block is `of`; a problem when it does not say. */
export function memberOrCableOf(
  block: SpecNode,
  path: readonly string[],
  context: Context,
): MemberItem | CableItem | undefined {
  const fact = factNode(block, 'of');
  if (!fact) return missing(context.notes, block, [...path, 'of']);
  const kinds = [...memberKinds, 'cable'];
  return itemOf(fact, kinds, context.world, context.notes) as MemberItem | CableItem | undefined;
}

export function fasteningOf(fact: SpecNode | undefined, context: Context): FasteningItem | undefined {
  return itemOf(fact, ['fastening'], context.world, context.notes) as FasteningItem | undefined;
}

export function footItemOf(fact: SpecNode | undefined, context: Context): Item | undefined {
  return itemOf(fact, [...memberKinds, 'anchor'], context.world, context.notes);
}

/** Size of a member across its bending axis, m. */
export function depthOf(member: MemberItem): number {
  return member.section.shape === 'rectangle' ? member.section.depth : member.section.outside;
}

/** Marks shared by parts. */
export function marksOf(block: SpecNode): { readonly sacrificial?: boolean } {
  return factNode(block, 'sacrificial') ? { sacrificial: true } : {};
}
