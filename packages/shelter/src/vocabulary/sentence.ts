/** Turns the short sentence notation of the vocabulary into pieces that a reader can match. */
import { isKind } from '@tautline/quantity';
import type { Entry, Piece, Takes } from './entry.ts';

const TOKEN = /\{([A-Za-z]+):\s*([^}]+)\}|\[|\]|[^\s[\]{}]+/y;

/**
 * Compiles a sentence such as `{width: length} by {length: length}` to pieces.
 * @throws Error when the notation is broken: a fault of the vocabulary, found by its tests, never of a user.
 */
export function compileSentence(sentence: string): readonly Piece[] {
  const open: Piece[][] = [[]];
  TOKEN.lastIndex = 0;
  let at = 0;
  while (at < sentence.length) {
    if (/\s/.test(sentence[at] ?? '')) {
      at += 1;
      continue;
    }
    TOKEN.lastIndex = at;
    const token = TOKEN.exec(sentence);
    if (!token) throw new Error(`cannot read the sentence '${sentence}' at ${at}`);
    at = TOKEN.lastIndex;
    if (token[0] === '[') open.push([]);
    else if (token[0] === ']') closeGroup(open, sentence);
    else if (token[1] && token[2]) {
      open.at(-1)?.push({ type: 'slot', slot: token[1], takes: compileTakes(token[2].trim()) });
    } else open.at(-1)?.push({ type: 'literal', word: token[0] });
  }
  if (open.length !== 1) throw new Error(`'[' without ']' in the sentence '${sentence}'`);
  return open[0] ?? [];
}

function closeGroup(open: Piece[][], sentence: string): void {
  const pieces = open.pop();
  const outer = open.at(-1);
  if (!pieces || !outer) throw new Error(`']' without '[' in the sentence '${sentence}'`);
  outer.push({ type: 'optional', pieces });
}

function compileTakes(text: string): Takes {
  const [head = '', rest = ''] = text.split(/\s+(.*)/s);
  const choices = rest.split('|').map((choice) => choice.trim());
  switch (head) {
    case 'word':
      return { type: 'word', words: rest === '*' ? [] : choices };
    case 'item': {
      const [kinds = '', form] = rest.split(/\s+of\s+/);
      return { type: 'item', kinds: kinds.split('|'), ...(form === undefined ? {} : { form }) };
    }
    case 'definition':
      if (rest !== 'site' && rest !== 'shelter')
        throw new Error(`'definition ${rest}' is neither site nor shelter`);
      return { type: 'definition', of: rest };
    case 'check':
    case 'comparison':
    case 'text':
    case 'date':
      return { type: head };
    default:
      if (rest !== '') throw new Error(`'${text}' is not something a sentence can take`);
      if (!isKind(head)) throw new Error(`'${text}' is no kind of quantity`);
      return { type: 'quantity', kind: head };
  }
}

const compiled = new WeakMap<Entry, readonly Piece[]>();

/** The pieces of an entry's sentence; compiled once. */
export function piecesOf(entry: Entry): readonly Piece[] {
  let pieces = compiled.get(entry);
  if (!pieces) {
    pieces = compileSentence(entry.sentence);
    compiled.set(entry, pieces);
  }
  return pieces;
}
