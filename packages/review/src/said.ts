/** Facts of a spec as words again: the sentence of the vocabulary with its values in SI. */
import type { MessagePiece } from '@tautline/checks';
import { format, type System } from '@tautline/quantity';
import { entryFor, type Piece, piecesOf, type SpecNode, type SpecValue } from '@tautline/shelter';

/** A fact in words, its numbers in SI until they are shown. */
export type Said = readonly MessagePiece[];

/** The values of a fact in the order of its sentence; with `whole`, what its block says too. */
export function saidOf(node: SpecNode, path: readonly string[], whole: boolean): Said {
  const entry = entryFor(path);
  const own = entry ? inSentence(piecesOf(entry), node) : Object.values(node.slots).map(pieceOf);
  const words = spacedOut(own);
  if (!whole || node.children.length === 0) return words;
  const inner = node.children.map((child) => [
    child.word,
    ...withSpace(saidOf(child, [...path, child.word], true)),
  ]);
  const block = inner.flatMap((said, index) => (index === 0 ? said : ['; ', ...said]));
  return [...words, ...(words.length === 0 ? ['{ '] : [' { ']), ...block, ' }'];
}

function inSentence(pieces: readonly Piece[], node: SpecNode): MessagePiece[] {
  return pieces.flatMap((piece): MessagePiece[] => {
    if (piece.type === 'literal') return [piece.word];
    if (piece.type === 'slot') {
      const value = node.slots[piece.slot];
      return value === undefined ? [] : [pieceOf(value)];
    }
    const told = piece.pieces.some((inner) => inner.type === 'slot' && node.slots[inner.slot] !== undefined);
    return told ? inSentence(piece.pieces, node) : [];
  });
}

function pieceOf(value: SpecValue): MessagePiece {
  switch (value.type) {
    case 'quantity':
      return { value: value.si, kind: value.kind };
    case 'word':
      return value.word;
    case 'item':
      return value.id;
    case 'text':
      return `"${value.text}"`;
    case 'date':
      return value.date;
  }
}

const spacedOut = (pieces: readonly MessagePiece[]): MessagePiece[] =>
  pieces.flatMap((piece, index) => (index === 0 ? [piece] : [' ', piece]));
const withSpace = (said: Said): Said => (said.length === 0 ? [] : [' ', ...said]);

/** Ever finer ways to show a number, for two that differ less than is usually shown. */
const finer: readonly { readonly digits?: number; readonly inchParts?: number }[] = [
  {},
  { digits: 6, inchParts: 64 },
];

/** Both sides of a change as text, with as many digits as it takes to tell them apart. */
export function saidTexts(before: Said, after: Said, system: System): readonly [string, string] {
  for (const options of finer) {
    const texts = [saidText(before, system, options), saidText(after, system, options)] as const;
    if (texts[0] !== texts[1]) return texts;
  }
  return [saidText(before, 'metric', { digits: 12 }), saidText(after, 'metric', { digits: 12 })];
}

/** A fact as text in one system of units. */
export function saidText(said: Said, system: System, options: (typeof finer)[number] = {}): string {
  return said
    .map((piece) => (typeof piece === 'string' ? piece : format(piece.value, piece.kind, system, options)))
    .join('');
}
