/** Words for what a sentence takes, for messages and for the sentence pattern shown while typing. */
import { isKind, kinds } from '@tautline/quantity';
import { type Entry, type Piece, piecesOf, type Takes } from '@tautline/shelter';

/** `a length`, `a pipe or rod`, `elastic, arc or pointed`. */
export function takesInWords(takes: Takes): string {
  switch (takes.type) {
    case 'quantity':
      return isKind(takes.kind) ? kinds[takes.kind].noun : 'a value';
    case 'word':
      return takes.words.length === 0 ? 'a word' : either(takes.words.map((word) => `\`${word}\``));
    case 'item':
      if (takes.form !== undefined) return `a supply of the form \`${takes.form}\``;
      return either(takes.kinds.map((kind, index) => (index === 0 ? withArticle(kind) : kind)));
    case 'definition':
      return `the name of a ${takes.of}`;
    case 'check':
      return 'the id of a check';
    case 'comparison':
      return '`>=`, `<=`, `>` or `<`';
    case 'text':
      return 'a text in double quotes';
    case 'date':
      return 'a date such as `2026-03-01`';
  }
}

export const withArticle = (noun: string): string => `${/^[aeiou]/.test(noun) ? 'an' : 'a'} ${noun}`;

export function either(words: readonly string[]): string {
  if (words.length < 2) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;
}

/** What may stand first in these pieces. */
export function firstInWords(pieces: readonly Piece[]): string {
  const words: string[] = [];
  for (const piece of pieces) {
    if (piece.type === 'literal') words.push(`\`${piece.word}\``);
    if (piece.type === 'slot') words.push(takesInWords(piece.takes));
    if (piece.type !== 'optional') continue;
    words.push(firstInWords(piece.pieces));
  }
  return either([...new Set(words)]);
}

/** One piece of a sentence as shown to a reader, e.g. `width`, `by`. */
export interface PatternPart {
  readonly text: string;
  readonly slot?: string;
  readonly takes?: Takes;
}

function partsOf(pieces: readonly Piece[]): PatternPart[] {
  return pieces.flatMap((piece): PatternPart[] => {
    if (piece.type === 'literal') return [{ text: piece.word }];
    if (piece.type === 'slot')
      return [{ text: slotText(piece.slot, piece.takes), slot: piece.slot, takes: piece.takes }];
    const inner = partsOf(piece.pieces);
    return inner.map((part, index) => ({
      ...part,
      text: `${index === 0 ? '[' : ''}${part.text}${index === inner.length - 1 ? ']' : ''}`,
    }));
  });
}

function slotText(slot: string, takes: Takes): string {
  if (takes.type === 'word' && takes.words.length === 1) return takes.words[0] ?? '';
  if (takes.type === 'word' && takes.words.length > 0) return `<${takes.words.join('|')}>`;
  if (takes.type === 'quantity') return slot === 'value' ? `<${takes.kind}>` : `<${slot}: ${takes.kind}>`;
  if (takes.type === 'item') return `<${takes.form ?? takes.kinds.join('|')}>`;
  return `<${slot === 'value' ? takes.type : slot}>`;
}

/** The sentence of an entry in parts, its own word first: `footprint <width> by <length>`. */
export function patternOf(entry: Entry): readonly PatternPart[] {
  return [{ text: entry.word }, ...partsOf(piecesOf(entry))];
}

/** The whole sentence of an entry in one text; what may be said again and again is written once, with dots. */
export const patternText = (entry: Entry): string =>
  [entry.word, ...piecesOf(entry).map(pieceText)].join(' ');

function pieceText(piece: Piece): string {
  if (piece.type === 'literal') return piece.word;
  if (piece.type === 'slot') return slotText(piece.slot, piece.takes);
  const own = textBeforeMore(piece);
  const more = moreOf(piece);
  if (more === undefined) return `[${own}]`;
  return textBeforeMore(more) === own ? `[${own}]...` : `[${own} ${pieceText(more)}]`;
}

type Optional = Extract<Piece, { type: 'optional' }>;

/** What may follow inside a part that may be left out, at its end. */
function moreOf({ pieces }: Optional): Optional | undefined {
  const last = pieces.at(-1);
  return last?.type === 'optional' ? last : undefined;
}

const textBeforeMore = (piece: Optional): string =>
  piece.pieces
    .slice(0, moreOf(piece) === undefined ? undefined : -1)
    .map(pieceText)
    .join(' ');
