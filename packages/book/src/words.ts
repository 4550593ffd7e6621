/** Values in words, and the parts of a shelter under one hand, for the chapters. */
import { format, type System } from '@tautline/quantity';
import {
  type CableItem,
  type Foot,
  type MemberItem,
  type Rail,
  railsUnder,
  type Shelter,
} from '@tautline/shelter';

export const lengthText = (value: number, system: System): string => format(value, 'length', system);

/** `3 bows`, `1 bow`. */
export const plural = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`;

/** Rails of every role, in the order they are put up. */
export const railsOf = (shelter: Shelter): readonly Rail[] =>
  [shelter.eaveRail, ...railsUnder(shelter), ...shelter.purlins, shelter.baseboards].filter(
    (rail) => rail !== undefined,
  );

/** Every foot once, whatever stands on it. */
export function feetOf(shelter: Shelter): readonly Foot[] {
  const feet = [
    shelter.roof.type === 'bows' ? shelter.roof.foot : undefined,
    shelter.sidePosts?.foot,
    ...railsOf(shelter).flatMap((rail) => [rail.posts?.foot, rail.endAnchor]),
    ...shelter.braces.map((brace) => brace.foot),
  ].filter((foot) => foot !== undefined);
  return feet.filter((foot, index) => feet.findIndex((other) => other.id === foot.id) === index);
}

/** Everything that carries: pipes, timbers, cables. */
export function membersOf(shelter: Shelter): readonly (MemberItem | CableItem)[] {
  const { roof } = shelter;
  return [
    ...(roof.type === 'bows' || roof.type === 'rafters' ? [roof.member] : []),
    ...(roof.type === 'rafters' && roof.tie ? [roof.tie.member] : []),
    ...(shelter.sidePosts ? [shelter.sidePosts.member] : []),
    ...railsOf(shelter).flatMap((rail) => [rail.member, ...(rail.posts ? [rail.posts.member] : [])]),
    ...shelter.braces.map((brace) => brace.member),
  ];
}

/** Whether anything that carries is of one of these materials. */
export const madeOf = (shelter: Shelter, families: readonly string[]): boolean =>
  membersOf(shelter).some((member) => member.kind !== 'cable' && families.includes(member.material.family));
