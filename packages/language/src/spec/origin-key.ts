/**
 * Origins: `uri#0.2.1@3-5` is statement 0, fact 2 of its block, fact 1 of that, atoms 3 to 4 of the line.
 * Paths rather than offsets, so that a changed comment or a renamed neighbour leaves a spec as it was,
 * and results worked out a keystroke ago still find their line.
 */
import { type Origin, originOf } from '@tautline/shelter';
import { type Atom, type File, isDefinition, isFact, type Statement } from '../generated/ast.ts';
import type { Line } from '../match/match-file.ts';

export interface Place {
  readonly uri: string;
  readonly path: readonly number[];
  /** Atoms of the line, from and up to; the whole line with its block when absent. */
  readonly atoms?: readonly [number, number];
}

export function originKey(uri: string, path: readonly number[], atoms?: readonly [number, number]): Origin {
  return originOf(`${uri}#${path.join('.')}${atoms ? `@${atoms[0]}-${atoms[1]}` : ''}`);
}

/** The parts of an origin, or undefined when this layer did not make it. */
export function placeOf(origin: Origin): Place | undefined {
  const match = /^(.*)#(\d+(?:\.\d+)*)(?:@(-?\d+)-(\d+))?$/s.exec(origin);
  if (!match) return undefined;
  const [, uri = '', path = '', from, to] = match;
  return {
    uri,
    path: path.split('.').map(Number),
    ...(from === undefined ? {} : { atoms: [Number(from), Number(to)] as const }),
  };
}

/** The line or statement a place is on, or undefined when the text no longer has it. */
export function nodeAt(file: File, place: Place): Line | Statement | undefined {
  const [first = 0, ...rest] = place.path;
  let node: Line | Statement | undefined = file.statements[first];
  for (const index of rest) {
    node = isDefinition(node) || isFact(node) ? node.block?.facts[index] : undefined;
  }
  return node;
}

export interface Span {
  readonly start: number;
  readonly end: number;
}

const atomsOf = (node: Line | Statement): readonly Atom[] => ('atoms' in node ? node.atoms : []);

/** End of the line without its block. */
export function lineSpan(node: Line | Statement): Span {
  const cst = node.$cstNode;
  if (!cst) return { start: 0, end: 0 };
  const block = 'block' in node ? node.block?.$cstNode : undefined;
  if (!block) return { start: cst.offset, end: cst.end };
  const end = cst.text.slice(0, block.offset - cst.offset).trimEnd().length;
  return { start: cst.offset, end: cst.offset + end };
}

/** Where an origin points to in a parsed file: offsets. For a whole line, without its block. */
export function spanOf(file: File, origin: Origin): Span | undefined {
  const place = placeOf(origin);
  const node = place && nodeAt(file, place);
  if (!node?.$cstNode) return undefined;
  if (!place?.atoms) return lineSpan(node);
  const [from, to] = place.atoms;
  const atoms = atomsOf(node);
  const first = from < 0 ? node.$cstNode : atoms[from]?.$cstNode;
  const last = atoms[to - 1]?.$cstNode ?? first;
  return first && last ? { start: first.offset, end: to <= from ? first.offset : last.end } : lineSpan(node);
}
