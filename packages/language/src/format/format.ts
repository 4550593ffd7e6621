/**
 * Lays a text out: two spaces a level, one between words, a number and its unit apart, braces where the
 * eye looks for them. Line breaks stay the writer's, comments stay where they are. Works on tokens, so a
 * line that cannot be understood is laid out all the same and never loses anything.
 */
import type { ShelterLexingReport } from '../text/lexer.ts';
import { lexText } from '../text/parse.ts';
import { scanQuantity } from '../text/quantity-text.ts';

interface Piece {
  readonly text: string;
  readonly type: 'word' | '{' | '}' | ';' | '(' | ')' | 'line-comment' | 'block-comment';
  /** Line breaks between it and the piece before. */
  readonly breaks: number;
}

const punctuation = new Set(['{', '}', ';', '(', ')']);

function tidyQuantity(text: string): string {
  return (scanQuantity(text, 0)?.parts ?? [])
    .map(({ number, unit }) => `${number.replace(/ +/g, ' ')}${unit === undefined ? '' : ` ${unit}`}`)
    .join(' ');
}

function piecesOf(text: string): Piece[] | undefined {
  const { tokens, hidden, report } = lexText(text);
  if ((report as ShelterLexingReport).problems.length > 0) return undefined;
  const all = [...tokens, ...hidden].sort((a, b) => a.startOffset - b.startOffset);
  let end = 0;
  return all.map((token): Piece => {
    const breaks = text.slice(end, token.startOffset).split('\n').length - 1;
    end = token.startOffset + token.image.length;
    const name = token.tokenType.name;
    if (name === 'LINE_COMMENT') return { text: token.image.trimEnd(), type: 'line-comment', breaks };
    if (name === 'BLOCK_COMMENT') return { text: token.image, type: 'block-comment', breaks };
    if (name === 'QUANTITY') return { text: tidyQuantity(token.image), type: 'word', breaks };
    const type = punctuation.has(name) ? (name as Piece['type']) : 'word';
    return { text: token.image, type, breaks };
  });
}

/** For each opening brace whether its block is spread over lines. */
function spreadBlocks(pieces: readonly Piece[]): ReadonlySet<number> {
  const spread = new Set<number>();
  const open: number[] = [];
  for (const [index, piece] of pieces.entries()) {
    const inner = open.at(-1);
    const broken = piece.breaks > 0 || piece.type === 'line-comment' || piece.text.includes('\n');
    // A brace that opens on a new line is pulled up: that break does not spread the block around it.
    if (inner !== undefined && broken) for (const one of open) spread.add(one);
    if (piece.type === '{') open.push(index);
    if (piece.type === '}') open.pop();
  }
  return spread;
}

/** Semicolons that separate nothing: before a line break, a brace or another one, or after a brace. */
function withoutIdle(pieces: readonly Piece[]): Piece[] {
  const kept: Piece[] = [];
  let carried = 0;
  for (const [index, piece] of pieces.entries()) {
    const next = pieces[index + 1];
    const before = kept.at(-1);
    const idle =
      piece.type === ';' &&
      (!next ||
        next.breaks > 0 ||
        next.type === '}' ||
        next.type === ';' ||
        next.type === 'line-comment' ||
        !before ||
        before.type === '{' ||
        piece.breaks + carried > 0);
    if (idle) {
      carried += piece.breaks;
      continue;
    }
    kept.push(carried > 0 ? { ...piece, breaks: piece.breaks + carried } : piece);
    carried = 0;
  }
  return kept;
}

function reindented(comment: string, indent: string): string {
  const lines = comment.split(/\r?\n/);
  return lines
    .map((line, index) => {
      if (index === 0) return line.trimEnd();
      return /^\s*\*/.test(line) ? `${indent} ${line.trim()}` : line.trimEnd();
    })
    .join('\n');
}

/** The text laid out; unchanged when it cannot be read (binary, braces that do not match). Idempotent. */
export function formatText(text: string): string {
  // Lines may also end as they did on very old machines.
  const found = piecesOf(text.replace(/\r(?!\n)/g, '\n'));
  if (!found) return text;
  const pieces = withoutIdle(found);
  const spread = spreadBlocks(pieces);
  const open: { readonly spread: boolean }[] = [];
  let result = '';
  let before: Piece | undefined;
  for (const [index, piece] of pieces.entries()) {
    const closing = piece.type === '}' ? open.pop() : undefined;
    const depth = open.filter((block) => block.spread).length;
    const fresh = startsLine(piece, before, closing, open.at(-1));
    const indent = '  '.repeat(depth);
    if (!before) result += '';
    else if (fresh) {
      const blank = piece.breaks > 1 && piece.type !== '}' && before.type !== '{';
      result += blank ? '\n\n' : '\n';
    } else if (!tight(piece, before)) result += ' ';
    // A value left alone on a line belongs to the line above: it stands deeper than a fact would.
    const stray = fresh && piece.type === 'word' && before && !/^[\p{L}_]/u.test(piece.text) ? '  ' : '';
    if (fresh) result += indent + stray;
    result += piece.type === 'block-comment' ? reindented(piece.text, indent) : piece.text;
    if (piece.type === '{') open.push({ spread: spread.has(index) });
    before = piece;
  }
  const laidOut = result === '' ? '' : `${result}\n`;
  return /\r\n/.test(text) ? laidOut.replace(/\r?\n/g, '\r\n') : laidOut;
}

interface Open {
  readonly spread: boolean;
}

function startsLine(
  piece: Piece,
  before: Piece | undefined,
  closing: Open | undefined,
  around: Open | undefined,
): boolean {
  if (!before) return false;
  if (before.type === 'line-comment') return true;
  if (piece.type === '{') return piece.breaks > 0 && before.type === 'block-comment';
  if (closing) return closing.spread;
  if (piece.type === 'line-comment' && piece.breaks === 0) return false;
  if (before.type === '{' && around?.spread) return true;
  return piece.breaks > 0 && (around === undefined || around.spread);
}

function tight(piece: Piece, before: Piece): boolean {
  if (piece.type === ';' || piece.type === ')' || before.type === '(') return true;
  return before.type === '{' && piece.type === '}';
}
