/**
 * Matches a line against the vocabulary: first the sentence of its entry, then clauses (facts of the
 * entry said on the same line), each with its own sentence. Knows no files and no references.
 */
import { type Entry, type Piece, piecesOf, type Takes } from '@tautline/shelter';
import { type Atom, isComparison, isDay, isExpression, isName, isText } from '../generated/ast.ts';

export interface SlotUse {
  readonly slot: string;
  readonly takes: Takes;
  readonly atom: Atom;
  /** Index of the atom in its line. */
  readonly at: number;
}

/** What stopped the reading of a line. */
export interface Trouble {
  /** Index of the first atom not understood; the number of atoms when the line ended too early. */
  readonly at: number;
  /** What the sentence wanted there; empty when it was complete. */
  readonly expected: readonly Piece[];
}

/** A fact as said on a line: the line's own, or a clause of it. */
export interface Sentence {
  readonly entry: Entry;
  /** Index of the atom that is the clause's word; -1 for the word that starts the line. */
  readonly from: number;
  /** Index after its last atom, clauses included. */
  readonly to: number;
  readonly slots: readonly SlotUse[];
  /** Indices of the literal words. */
  readonly literals: readonly number[];
  readonly clauses: readonly Sentence[];
  /** Whether its sentence (clauses apart) was read to its end. */
  readonly complete: boolean;
}

export interface LineMatch {
  readonly sentence: Sentence;
  readonly trouble?: Trouble;
}

interface Draft {
  readonly entry: Entry;
  readonly from: number;
  to: number;
  slots: readonly SlotUse[];
  literals: readonly number[];
  readonly clauses: Draft[];
  complete: boolean;
}

interface Progress {
  readonly at: number;
  readonly slots: readonly SlotUse[];
  readonly literals: readonly number[];
}

export const wordOf = (atom: Atom | undefined): string | undefined =>
  isName(atom) ? atom.ref?.$refText : undefined;

/** Whether an atom can stand in a slot. `strict` asks that a listed word is one of the list. */
function fits(atom: Atom, takes: Takes, strict: boolean): boolean {
  const word = wordOf(atom);
  switch (takes.type) {
    case 'quantity':
      return isExpression(atom);
    case 'word':
      return word !== undefined && (!strict || takes.words.length === 0 || takes.words.includes(word));
    case 'item':
    case 'definition':
    case 'check':
      return word !== undefined;
    case 'comparison':
      return isComparison(atom);
    case 'text':
      return isText(atom);
    case 'date':
      return isDay(atom);
  }
}

class Reader {
  private furthest: Progress & { readonly expected: readonly Piece[] } = {
    at: -1,
    slots: [],
    literals: [],
    expected: [],
  };
  private readonly atoms: readonly Atom[];
  private readonly clauseWords: ReadonlySet<string>;
  private readonly strict: boolean;

  constructor(atoms: readonly Atom[], clauseWords: ReadonlySet<string>, strict: boolean) {
    this.atoms = atoms;
    this.clauseWords = clauseWords;
    this.strict = strict;
  }

  /** Reads the pieces from `now` on; undefined when they cannot all be read. */
  read(pieces: readonly Piece[], now: Progress): Progress | undefined {
    const [piece, ...rest] = pieces;
    if (!piece) return now;
    if (piece.type === 'optional') {
      return this.read([...piece.pieces, ...rest], now) ?? this.read(rest, now);
    }
    const atom = this.atoms[now.at];
    if (atom && this.takes(atom, piece, this.atoms[now.at + 1])) {
      return this.read(rest, {
        at: now.at + 1,
        slots:
          piece.type === 'slot'
            ? [...now.slots, { slot: piece.slot, takes: piece.takes, atom, at: now.at }]
            : now.slots,
        literals: piece.type === 'literal' ? [...now.literals, now.at] : now.literals,
      });
    }
    if (now.at > this.furthest.at) this.furthest = { ...now, expected: [piece] };
    else if (now.at === this.furthest.at) {
      this.furthest = { ...this.furthest, expected: [...this.furthest.expected, piece] };
    }
    return undefined;
  }

  private takes(atom: Atom, piece: Exclude<Piece, { type: 'optional' }>, next: Atom | undefined): boolean {
    const word = wordOf(atom);
    if (piece.type === 'literal') return word === piece.word;
    if (word !== undefined && this.clauseWords.has(word) && piece.takes.type !== 'word') {
      // Such a word starts a clause; it is a constant or an item of that name only where the line ends
      // behind it or a clause follows.
      const following = wordOf(next);
      const alone = next === undefined || (following !== undefined && this.clauseWords.has(following));
      if (this.strict || !alone) return false;
    }
    return fits(atom, piece.takes, this.strict);
  }

  best(): Progress & { readonly expected: readonly Piece[] } {
    return this.furthest;
  }
}

const wordsOf = (open: readonly Draft[]): ReadonlySet<string> =>
  new Set(open.flatMap(({ entry }) => (entry.facts ?? []).map(({ word }) => word)));

function readSentence(draft: Draft, open: readonly Draft[], atoms: readonly Atom[]): Trouble | undefined {
  const pieces = piecesOf(draft.entry);
  const start: Progress = { at: draft.to, slots: [], literals: [] };
  const words = wordsOf(open);
  let furthest: ReturnType<Reader['best']> | undefined;
  for (const strict of [true, false]) {
    const reader = new Reader(atoms, words, strict);
    const done = reader.read(pieces, start);
    if (done) {
      Object.assign(draft, { to: done.at, slots: done.slots, literals: done.literals, complete: true });
      return undefined;
    }
    furthest = reader.best();
  }
  if (!furthest) return undefined;
  Object.assign(draft, { to: furthest.at, slots: furthest.slots, literals: furthest.literals });
  return { at: furthest.at, expected: furthest.expected };
}

/** The innermost open fact that can still take a clause with this word, with the clause's entry. */
function clauseFor(open: readonly Draft[], word: string): { depth: number; entry: Entry } | undefined {
  let second: { depth: number; entry: Entry } | undefined;
  for (let depth = open.length - 1; depth >= 0; depth -= 1) {
    const draft = open[depth] as Draft;
    const entry = draft.entry.facts?.find((candidate) => candidate.word === word);
    if (!entry) continue;
    if (entry.many || !draft.clauses.some((clause) => clause.entry.word === word)) return { depth, entry };
    second ??= { depth, entry };
  }
  return second;
}

/** Reads the atoms of a line whose word stands for `entry`. Never throws. */
export function matchLine(entry: Entry, atoms: readonly Atom[]): LineMatch {
  const root: Draft = { entry, from: -1, to: 0, slots: [], literals: [], clauses: [], complete: false };
  let open: Draft[] = [root];
  let trouble = readSentence(root, open, atoms);
  let at = root.to;
  while (!trouble && at < atoms.length) {
    const word = wordOf(atoms[at]);
    const found = word === undefined ? undefined : clauseFor(open, word);
    if (!found) {
      trouble = { at, expected: [] };
      break;
    }
    const clause: Draft = {
      entry: found.entry,
      from: at,
      to: at + 1,
      slots: [],
      literals: [],
      clauses: [],
      complete: false,
    };
    open = open.slice(0, found.depth + 1);
    (open.at(-1) as Draft).clauses.push(clause);
    open.push(clause);
    trouble = readSentence(clause, open, atoms);
    at = clause.to;
  }
  extend(root);
  return trouble ? { sentence: root, trouble } : { sentence: root };
}

function extend(draft: Draft): number {
  for (const clause of draft.clauses) draft.to = Math.max(draft.to, extend(clause));
  return draft.to;
}
