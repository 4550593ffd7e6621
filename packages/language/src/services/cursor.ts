/** What stands at a place in the text: the line, the words before it, and what could come next. */
import { type Entry, type Piece, piecesOf } from '@tautline/shelter';
import type { LangiumDocument } from 'langium';
import { type Atom, type Block, type File, isDefinition, isFact } from '../generated/ast.ts';
import { type Line, matchOf } from '../match/match-file.ts';
import { matchLine, type Sentence } from '../match/match-line.ts';
import { fileOf } from './scope.ts';

export interface LineCursor {
  readonly line: Line;
  readonly entry: Entry;
  /** Atoms that end before the cursor (or before the word it is in). */
  readonly before: readonly Atom[];
}

const wordEnd = (line: Line): number => {
  const cst = line.$cstNode;
  if (!cst) return 0;
  if (isFact(line)) return cst.offset + line.word.length;
  if (line.name === undefined) return cst.offset + line.kind.length;
  return (
    cst.offset + line.kind.length + cst.text.slice(line.kind.length).indexOf(line.name) + line.name.length
  );
};

/** All lines of a file, outer ones first. */
export function linesOf(file: File): Line[] {
  const all: Line[] = [];
  const visit = (line: Line): void => {
    all.push(line);
    for (const fact of line.block?.facts ?? []) visit(fact);
  };
  for (const statement of file.statements) if (isDefinition(statement)) visit(statement);
  return all;
}

/** The innermost block around an offset; undefined at the level of the file. */
export function blockAt(file: File, offset: number): Block | undefined {
  let found: Block | undefined;
  for (const line of linesOf(file)) {
    const cst = line.block?.$cstNode;
    if (!cst || !line.block) continue;
    const closed = cst.text.endsWith('}');
    if (cst.offset < offset && (closed ? offset < cst.end : true)) found = line.block;
  }
  return found;
}

export const entryOfBlock = (file: File, block: Block): readonly Entry[] =>
  matchOf(file).blocks.get(block)?.facts ?? [];

/** The line of facts an offset is in, behind its first word; undefined at the start of a line. */
export function lineAt(document: LangiumDocument, offset: number): LineCursor | undefined {
  const file = fileOf(document);
  if (!file) return undefined;
  const text = document.textDocument.getText();
  const match = matchOf(file);
  const line = linesOf(file).findLast((one) => {
    const cst = one.$cstNode;
    const block = one.block?.$cstNode;
    if (!cst || wordEnd(one) >= offset || (block && block.offset < offset)) return false;
    // A cursor on a later row is on a line of its own.
    return !/[\r\n;}]/.test(text.slice(Math.max(lastEnd(one), cst.offset), offset));
  });
  const entry = line && match.lines.get(line)?.sentence.entry;
  if (!line || !entry) return undefined;
  const start = wordStart(text, offset);
  return {
    line,
    entry,
    before: line.atoms.filter((atom) => (atom.$cstNode?.end ?? 0) <= start && !covers(atom, offset, text)),
  };
}

function lastEnd(line: Line): number {
  return Math.max(wordEnd(line), ...line.atoms.map((atom) => atom.$cstNode?.end ?? 0));
}

/** Whether the word at the cursor belongs to this atom (`4.2 m` with the cursor behind `m`). */
function covers(atom: Atom, offset: number, text: string): boolean {
  const cst = atom.$cstNode;
  return (
    cst !== undefined &&
    cst.offset < wordStart(text, offset) &&
    cst.end >= offset &&
    cst.end > wordStart(text, offset)
  );
}

/** Start of the word that ends at the offset. */
export function wordStart(text: string, offset: number): number {
  let start = offset;
  while (start > 0 && /[\p{L}\p{N}_%°-]/u.test(text[start - 1] ?? '')) start -= 1;
  return start;
}

export interface Expected {
  /** What the sentence wants next. */
  readonly pieces: readonly Piece[];
  /** Clauses that could begin instead. */
  readonly clauses: readonly Entry[];
  /** The fact whose sentence is being written. */
  readonly entry: Entry;
}

/** What may follow the atoms before the cursor. */
export function expectedAfter(entry: Entry, before: readonly Atom[]): Expected {
  const { sentence, trouble } = matchLine(entry, before);
  const path = openSentences(sentence);
  const inner = path.at(-1)?.entry ?? entry;
  if (trouble && trouble.at >= before.length) {
    const clauses = optionalOnly(trouble.expected) ? clausesOf(path) : [];
    return { pieces: trouble.expected, clauses, entry: inner };
  }
  if (trouble) return { pieces: [], clauses: [], entry: inner };
  return { pieces: optionalNext(inner, path.at(-1)), clauses: clausesOf(path), entry: inner };
}

const optionalOnly = (pieces: readonly Piece[]): boolean => pieces.every(({ type }) => type === 'optional');

function openSentences(sentence: Sentence): Sentence[] {
  const last = sentence.clauses.at(-1);
  return last ? [sentence, ...openSentences(last)] : [sentence];
}

function clausesOf(path: readonly Sentence[]): Entry[] {
  return path.flatMap(({ entry, clauses }) =>
    (entry.facts ?? []).filter(
      (fact) => fact.many || !clauses.some((clause) => clause.entry.word === fact.word),
    ),
  );
}

/** Optional parts at the end of a sentence that has been read to its end. */
function optionalNext(entry: Entry, sentence: Sentence | undefined): Piece[] {
  const used = new Set(sentence?.slots.map(({ slot }) => slot));
  return piecesOf(entry).flatMap((piece) => {
    if (piece.type !== 'optional') return [];
    const first = piece.pieces[0];
    const slots = piece.pieces.flatMap((inner) => (inner.type === 'slot' ? [inner.slot] : []));
    return first && !slots.some((slot) => used.has(slot)) ? [first] : [];
  });
}
