/**
 * A small reader of spec text for tests of this package, which cannot see the language package above it.
 * It takes only well-formed text and throws on anything else: the real reader recovers and explains.
 */
import { asKind, isKind, parseQuantity } from '@tautline/quantity';
import {
  definitionKind,
  type Entry,
  factOf,
  type Origin,
  originOf,
  type Piece,
  piecesOf,
  type SpecDefinition,
  type SpecNode,
  type SpecValue,
  type SpecWorld,
  type Takes,
} from '../src/index.ts';

interface Token {
  readonly type: 'word' | 'quantity' | 'text' | 'date' | 'comparison' | 'mark';
  readonly text: string;
  readonly at: number;
}

const number = String.raw`-?(?:\d+[- ]\d+\/\d+|\d+\/\d+|\d*\.?\d+(?:e[+-]?\d+)?)`;
const unit = String.raw`(?:in|ft2|ft3|m3|ft|mm|cm|um|mil|m2|mm2|m|km|L|kg\/m2|kg\/m3|kg\/m|g\/m2|g\/m|lb\/ft3|lb\/ft|lb|kg|g|N\.m\/rad|N\.m|lbf\.ft|lbf\.in|N\/m|kN\/m|kN|N|lbf|GPa|MPa|kPa|Pa|ksi|psi|psf|deg[CF]|deg|rad|m\/s|mph|mm\/h|yr|month|min|d|h|%)(?![A-Za-z0-9/])`;
const patterns: readonly (readonly [Token['type'] | 'skip', RegExp])[] = [
  ['skip', /(?:[ \t\r]+|\/\/[^\n]*)+/y],
  ['text', /"[^"\n]*"/y],
  ['date', /\d{4}-\d{2}-\d{2}/y],
  ['quantity', /\d+(?:\.\d+)?:\d+/y],
  ['quantity', new RegExp(`${number}(?: *${unit}(?: +\\d+(?:[- ]\\d+/\\d+|\\.\\d+)? *${unit})*)?`, 'y')],
  ['comparison', />=|<=|>|</y],
  ['word', /[A-Za-z_][A-Za-z0-9_]*(?:-[A-Za-z0-9_]+)*/y],
  ['mark', /[{};\n]/y],
];

function tokens(text: string): readonly Token[] {
  const found: Token[] = [];
  let at = 0;
  while (at < text.length) {
    let matched = false;
    for (const [type, pattern] of patterns) {
      pattern.lastIndex = at;
      const match = pattern.exec(text);
      if (!match || match[0] === '') continue;
      if (type !== 'skip') found.push({ type, text: match[0], at });
      at = pattern.lastIndex;
      matched = true;
      break;
    }
    if (!matched) throw new Error(`cannot read at '${text.slice(at, at + 30)}'`);
  }
  return found;
}

class Reader {
  at = 0;
  readonly #tokens: readonly Token[];
  readonly #file: string;

  constructor(text: string, file: string) {
    this.#tokens = tokens(text);
    this.#file = file;
  }

  get next(): Token | undefined {
    return this.#tokens[this.at];
  }

  sees(text: string): boolean {
    return this.next?.text === text;
  }

  skipBreaks(): void {
    while (this.next && (this.next.text === '\n' || this.next.text === ';')) this.at++;
  }

  origin(token: Token | undefined): Origin {
    return originOf(`${this.#file}@${token?.at ?? 'end'}`);
  }

  fail(what: string): never {
    throw new Error(
      `${this.#file}: ${what} at '${this.#tokens
        .slice(this.at, this.at + 6)
        .map((t) => t.text)
        .join(' ')}'`,
    );
  }

  /** The sentence's slots; with optional groups tried first and left out when they do not fit. */
  pieces(pieces: readonly Piece[], slots: Record<string, SpecValue>): boolean {
    for (const piece of pieces) {
      const start = this.at;
      if (piece.type === 'literal') {
        if (this.next?.text !== piece.word) return false;
        this.at++;
      } else if (piece.type === 'slot') {
        const value = this.value(piece.takes);
        if (!value) return false;
        slots[piece.slot] = value;
      } else {
        const inner: Record<string, SpecValue> = {};
        if (this.pieces(piece.pieces, inner)) Object.assign(slots, inner);
        else this.at = start;
      }
    }
    return true;
  }

  value(takes: Takes): SpecValue | undefined {
    const token = this.next;
    if (!token) return undefined;
    const origin = this.origin(token);
    const take = (value: SpecValue): SpecValue => {
      this.at++;
      return value;
    };
    if (takes.type === 'quantity' && token.type === 'quantity') {
      const read = parseQuantity(token.text);
      if (!isKind(takes.kind)) return this.fail(`unknown kind ${takes.kind}`);
      const fitted = read.ok ? asKind(read, takes.kind) : read;
      if (!fitted.ok) return undefined;
      return take({ type: 'quantity', si: fitted.si, kind: takes.kind, origin });
    }
    if (takes.type === 'word' && token.type === 'word') {
      if (takes.words.length > 0 && !takes.words.includes(token.text)) return undefined;
      return take({ type: 'word', word: token.text, origin });
    }
    if (takes.type === 'check' && token.type === 'word')
      return take({ type: 'word', word: token.text, origin });
    if (takes.type === 'comparison' && token.type === 'comparison')
      return take({ type: 'word', word: token.text, origin });
    if ((takes.type === 'item' || takes.type === 'definition') && token.type === 'word')
      return take({ type: 'item', id: token.text, origin });
    if (takes.type === 'text' && token.type === 'text')
      return take({ type: 'text', text: token.text.slice(1, -1), origin });
    if (takes.type === 'date' && token.type === 'date')
      return take({ type: 'date', date: token.text, origin });
    return undefined;
  }

  fact(entry: Entry, clause = false): SpecNode {
    const origin = this.origin(this.next);
    this.at++;
    return this.rest(entry, origin, clause);
  }

  /** What follows the word (and name): sentence, clauses, and the block, which is that of the line's first word. */
  rest(entry: Entry, origin: Origin, isClause = false): SpecNode {
    const slots: Record<string, SpecValue> = {};
    if (!this.pieces(piecesOf(entry), slots)) this.fail(`'${entry.word} ${entry.sentence}' does not fit`);
    const children: SpecNode[] = [];
    while (this.next?.type === 'word') {
      const clause = factOf(entry, this.next.text);
      if (!clause) break;
      children.push(this.fact(clause, true));
    }
    if (!isClause && this.sees('{')) {
      this.at++;
      for (this.skipBreaks(); this.next && !this.sees('}'); this.skipBreaks()) {
        const child = factOf(entry, this.next.text);
        if (!child) this.fail(`'${entry.word}' knows no '${this.next.text}'`);
        else children.push(this.fact(child));
        if (!['\n', ';', '}'].includes(this.next?.text ?? '')) this.fail('a line goes on too long');
      }
      if (!this.next) this.fail("'}' is missing");
      this.at++;
    }
    return { word: entry.word, slots, children, origin };
  }
}

const docBefore = /\/\*\*([\s\S]*?)\*\//g;

/** Reads definitions; `import` lines are left to the caller. */
export function readSpec(text: string, file = 'test'): readonly SpecDefinition[] {
  const docs = [...text.matchAll(docBefore)].map((match) => ({
    end: match.index + match[0].length,
    text: match[1]!.replace(/^[ \t]*\* ?/gm, '').trim(),
  }));
  const blank = (whole: string): string => whole.replace(/[^\n]/g, ' ');
  const plain = text.replace(/\/\*[\s\S]*?\*\//g, blank).replace(/^import .*$/gm, blank);
  const reader = new Reader(plain, file);
  const found: SpecDefinition[] = [];
  for (reader.skipBreaks(); reader.next; reader.skipBreaks()) {
    const start = reader.next;
    const kind = definitionKind(start.text);
    if (!kind) reader.fail('no kind of definition');
    else {
      reader.at++;
      const name = kind.named ? reader.next!.text : `${kind.word}@${file}`;
      if (kind.named) reader.at++;
      const node = reader.rest(kind, reader.origin(start));
      const doc = docs.findLast((one) => one.end <= start.at && plain.slice(one.end, start.at).trim() === '');
      const like = node.slots['like'];
      found.push({
        ...node,
        name,
        doc: doc?.text ?? '',
        ...(like?.type === 'item' ? { like: like.id } : {}),
      });
    }
  }
  return found;
}

/** A world of several texts. */
export function worldOf(...texts: readonly string[]): SpecWorld {
  const all = texts.flatMap((text, index) => readSpec(text, `text${index + 1}`));
  return { definitions: new Map(all.map((definition) => [definition.name, definition])) };
}
