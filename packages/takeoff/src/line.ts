/** What a shelter is made of, line by line: SI numbers, and steps that say how each came about. */
import type { KindName } from '@tautline/quantity';
import { format, type System } from '@tautline/quantity';
import type { Item, Origin, SupplyItem } from '@tautline/shelter';

/** A text with values in it: put into the reader's units at the edge. */
export type Told = readonly (string | { readonly value: number; readonly kind: KindName })[];

/** The text in one system of units. */
export const tell = (told: Told, system: System): string =>
  told.map((piece) => (typeof piece === 'string' ? piece : format(piece.value, piece.kind, system))).join('');

export type Group = 'frame' | 'joints' | 'ground' | 'bracing' | 'covering' | 'fastening' | 'sundries';

export interface TakeoffPiece {
  /** m */
  readonly length: number;
  readonly count: number;
  /** What it is: `bow, left piece`. */
  readonly note: string;
  /** Id of the part it belongs to. */
  readonly part: string;
}

export interface TakeoffLine {
  readonly id: string;
  readonly group: Group;
  readonly title: string;
  /** Absent for things the spec does not name, such as a wrapping. */
  readonly item?: Item;
  readonly parts: readonly { readonly id: string; readonly origin: Origin }[];
  /** Kind of quantity of `total`. */
  readonly kind: 'length' | 'area' | 'volume' | 'count' | 'mass';
  readonly total: number;
  /** Pieces to cut, for what is cut to length. */
  readonly pieces?: readonly TakeoffPiece[];
  /** Lengths it is sold in, ascending, m. */
  readonly stock?: readonly number[];
  /** How much of `total` one bag, pack, roll or can holds: it is bought by the whole one. */
  readonly pack?: number;
  /** Nothing is bought for it: it is tied, and its cord stands in a line of its own. */
  readonly tied?: true;
  /** Width of the roll or sheet the pieces are cut from, m. */
  readonly width?: number;
  /** Time after which it is to be renewed, s. */
  readonly life?: number;
  readonly steps: readonly Told[];
}

/** Something that belongs to the shelter but cannot be counted from what was said. */
export interface Gap {
  readonly what: string;
  readonly origin: Origin;
}

export interface Takeoff {
  readonly lines: readonly TakeoffLine[];
  readonly gaps: readonly Gap[];
}

/** Lines that are `same` become one, in the order they first appear; empty lines are dropped. */
export function pooled(
  lines: readonly TakeoffLine[],
  same: (a: TakeoffLine, b: TakeoffLine) => boolean,
): readonly TakeoffLine[] {
  const result: TakeoffLine[] = [];
  for (const line of lines) {
    if (line.total === 0) continue;
    const at = result.findIndex((other) => same(other, line));
    const before = result[at];
    if (!before) {
      result.push(line);
      continue;
    }
    const known = new Set(before.parts.map((part) => part.id));
    result[at] = {
      ...before,
      parts: [...before.parts, ...line.parts.filter((part) => !known.has(part.id))],
      total: before.total + line.total,
      ...(before.pieces || line.pieces ? { pieces: [...(before.pieces ?? []), ...(line.pieces ?? [])] } : {}),
      steps: [...before.steps, ...line.steps],
    };
  }
  return result;
}

/** One line for each item in each group. */
export const merged = (lines: readonly TakeoffLine[]): readonly TakeoffLine[] =>
  pooled(lines, (a, b) => a.id === b.id && a.kind === b.kind && a.width === b.width);

/** One line for each item: a pipe that is bow here and brace there is bought and cut as one. */
export const boughtTogether = (lines: readonly TakeoffLine[]): readonly TakeoffLine[] =>
  pooled(
    lines,
    (a, b) => (a.item?.id ?? a.id) === (b.item?.id ?? b.id) && a.kind === b.kind && a.width === b.width,
  );

interface Named {
  readonly id: string;
  readonly origin: Origin;
}

const partOf = ({ id, origin }: Named): { readonly id: string; readonly origin: Origin } => ({ id, origin });

/** A line of an item counted in pieces. */
export function countLine(group: Group, item: Item, count: number, part: Named, why: Told): TakeoffLine {
  const tied = (item.kind === 'coupler' || item.kind === 'fitting') && item.cord !== undefined;
  return {
    id: `${group}/${item.id}`,
    group,
    title: item.title,
    item,
    parts: [partOf(part)],
    kind: 'count',
    total: count,
    ...(tied ? { tied } : {}),
    steps: [why],
  };
}

/** A line of a supply by measure; a loose one with this title where nothing says which, and none is in reach. */
export function supplyLine(
  group: Group,
  supply: SupplyItem | undefined,
  title: string,
  kind: TakeoffLine['kind'],
  total: number,
  part: Named,
  why: Told,
): TakeoffLine {
  if (supply === undefined) return looseLine(group, title, kind, total, part, why);
  return {
    id: `${group}/${supply.id}`,
    group,
    title: supply.title,
    parts: [partOf(part)],
    kind,
    total,
    steps: [why],
    item: supply,
    ...(supply.pack === undefined ? {} : { pack: supply.pack }),
  };
}

/** A line of something no item stands for. */
export function looseLine(
  group: Group,
  title: string,
  kind: TakeoffLine['kind'],
  total: number,
  part: Named,
  why: Told,
): TakeoffLine {
  const id = `${group}/${title.toLowerCase().replace(/[^a-z0-9]+/g, '-')}`;
  return { id, group, title, parts: [partOf(part)], kind, total, steps: [why] };
}

/** A line of an item cut to length. */
export function cutLine(
  group: Group,
  item: Item,
  stock: readonly number[],
  pieces: readonly Omit<TakeoffPiece, 'part'>[],
  part: Named,
  steps: readonly Told[],
): TakeoffLine {
  const cut = pieces.filter((piece) => piece.count > 0 && piece.length > 0);
  return {
    id: `${group}/${item.id}`,
    group,
    title: item.title,
    item,
    parts: [partOf(part)],
    kind: 'length',
    total: cut.reduce((sum, piece) => sum + piece.length * piece.count, 0),
    pieces: cut.map((piece) => ({ ...piece, part: part.id })),
    stock,
    steps,
  };
}

export const metres = (value: number): { readonly value: number; readonly kind: KindName } => ({
  value,
  kind: 'length',
});
