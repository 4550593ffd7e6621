/** What is used up on the way: wrapping, cord, concrete by the bag. */
import type { CableItem, MemberItem, SupplyItem, Wrapping } from '@tautline/shelter';
import { metres, supplyLine, type TakeoffLine, type Told } from '../line.ts';

type Part = Parameters<typeof supplyLine>[5];

/** Concrete that stays in the barrow, the bags and the corners of the hole, a share of it: common practice, no source. */
const CONCRETE_WASTE = 0.1;

/** Concrete for a net volume, m3, with what is lost on the way. */
export function concreteLine(
  group: 'ground' | 'frame',
  mix: SupplyItem | undefined,
  net: number,
  part: Part,
  why: Told,
): TakeoffLine {
  const total = net * (1 + CONCRETE_WASTE);
  return supplyLine(group, mix, 'Concrete', 'volume', total, part, [
    ...why,
    ', and ',
    { value: CONCRETE_WASTE, kind: 'percent' },
    ' more for what is lost (common practice, no source)',
  ]);
}

/** How far each turn of a strip lies over the one before, a share of its width: common practice, no source. */
const TURN_LAP = 1 / 3;

/** Wrapping of members, together `length` long, m: wound round when it is a strip, along them when it is a hose. */
export function wrappingLine(
  wrapping: Wrapping,
  member: MemberItem | CableItem,
  length: number,
  part: Part,
): TakeoffLine {
  if (typeof wrapping === 'string') {
    const title = wrapping === '' ? 'Wrapping against abrasion' : `Wrapping, ${wrapping}`;
    return supplyLine('sundries', undefined, title, 'length', length, part, [
      'members of ',
      metres(length),
      ' in all',
    ]);
  }
  const wide = wrapping.across;
  const girth = girthOf(member);
  const total = wide === undefined ? length : (length * girth) / (wide * (1 - TURN_LAP));
  const wound: Told =
    wide === undefined
      ? [', it lies along them']
      : [
          ', ',
          { value: girth, kind: 'thickness' },
          ' round, wound with a strip ',
          { value: wide, kind: 'thickness' },
          ' wide, each turn a third over the one before (common practice, no source)',
        ];
  const why: Told = ['members of ', metres(length), ' in all', ...wound];
  return supplyLine('sundries', wrapping, wrapping.title, 'length', total, part, why);
}

/** The cord of a tied joint, beside the line that counts the joints. */
export function withCord(line: TakeoffLine): readonly TakeoffLine[] {
  const { item, total } = line;
  const [part] = line.parts;
  if (!part || (item?.kind !== 'coupler' && item?.kind !== 'fitting')) return [line];
  const { cord, cordLength } = item;
  if (!cord || cordLength === undefined) return [line];
  const why: Told = [`${total} times ${item.title}, `, metres(cordLength), ' of cord each'];
  const tied = supplyLine('joints', cord, cord.title, 'length', total * cordLength, part, why);
  return [line, { ...tied, parts: line.parts }];
}

/** Round a member, m. */
function girthOf(member: MemberItem | CableItem): number {
  if (member.kind === 'cable') return Math.PI * member.diameter;
  const { section } = member;
  return section.shape === 'rectangle' ? 2 * (section.depth + section.breadth) : Math.PI * section.outside;
}

/** Room a member takes up in a hole, pipes with what is inside them, m2. */
export function roomOf({ section }: MemberItem): number {
  return section.shape === 'rectangle'
    ? section.depth * section.breadth
    : (Math.PI / 4) * section.outside ** 2;
}
