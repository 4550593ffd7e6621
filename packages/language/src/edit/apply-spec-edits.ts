/**
 * Turns edits of the spec (fixes, assumed values) into edits of the text: only the words that change are
 * touched, so comments, order and layout stay. All edits are worked out against the same text.
 */
import type { System } from '@tautline/quantity';
import {
  type Entry,
  type Origin,
  type Piece,
  piecesOf,
  type SpecEdit,
  type SpecNode,
  type SpecValue,
} from '@tautline/shelter';
import { type Atom, type File, isDefinition, isFact } from '../generated/ast.ts';
import { type FileMatch, type Line, matchOf } from '../match/match-file.ts';
import type { Sentence } from '../match/match-line.ts';
import type { TextChange } from '../problems/problem.ts';
import { nodeAt, placeOf, type Span } from '../spec/origin-key.ts';
import { parseText } from '../text/parse.ts';
import { appendFacts, removeLine } from './place-fact.ts';
import { valueText } from './value-text.ts';

export type EditResult =
  | { readonly ok: true; readonly changes: readonly TextChange[] }
  | { readonly ok: false; readonly reason: string };

interface Found {
  readonly line: Line;
  readonly sentence: Sentence;
}

class Writer {
  private readonly changes: TextChange[] = [];
  private readonly appended = new Map<Line, readonly string[]>();
  private readonly text: string;
  private readonly file: File;
  private readonly match: FileMatch;
  private readonly system: System;

  constructor(text: string, file: File, system: System) {
    this.text = text;
    this.file = file;
    this.match = matchOf(file);
    this.system = system;
  }

  /** All changes so far; facts that go to the end of one block together. */
  all(): TextChange[] {
    const appended = [...this.appended].map(([line, facts]) => appendFacts(this.text, line, facts));
    return [...this.changes, ...appended].sort((a, b) => a.start - b.start || a.end - b.end);
  }

  /** Adds the changes of one edit; a reason when it cannot be done. */
  write(edit: SpecEdit): string | undefined {
    switch (edit.type) {
      case 'replace':
        return this.onNode(edit.node, (found) => this.replace(found, edit.slots));
      case 'remove':
        return this.onNode(edit.node, (found) => this.remove(found));
      case 'set':
        return this.onNode(edit.block, (found) => this.set(found, edit.word, edit.slots));
      case 'add':
        return this.onNode(edit.block, (found) => this.add(found, edit.node));
    }
  }

  private onNode(origin: Origin, then: (found: Found) => string | undefined): string | undefined {
    const place = placeOf(origin);
    const line = place && nodeAt(this.file, place);
    if (!place || !line || !(isDefinition(line) || isFact(line))) return 'the line is no longer there';
    const match = this.match.lines.get(line);
    const from = place.atoms?.[0] ?? -1;
    const sentence = match && sentenceFrom(match.sentence, from);
    return sentence ? then({ line, sentence }) : 'the line can no longer be read';
  }

  private atomText(atom: Atom | undefined): string {
    return atom?.$cstNode?.text ?? '';
  }

  private replace({ line, sentence }: Found, slots: Slots): string | undefined {
    const written = new Set(sentence.slots.map(({ slot }) => slot));
    if (Object.keys(slots).every((slot) => written.has(slot))) {
      for (const use of sentence.slots) {
        const value = slots[use.slot];
        if (value) this.swap(use.atom, valueText(value, this.system, this.atomText(use.atom)));
      }
      return undefined;
    }
    const texts: Record<string, string> = {};
    for (const use of sentence.slots) texts[use.slot] = this.atomText(use.atom);
    for (const [slot, value] of Object.entries(slots))
      texts[slot] = valueText(value, this.system, texts[slot]);
    const words = sentenceText(sentence.entry, texts);
    if (words === undefined) return `\`${sentence.entry.word}\` does not take these values`;
    const own = ownSpan(line, sentence);
    if (!own) return 'the line can no longer be read';
    this.changes.push({ ...own, newText: `${sentence.entry.word}${headRest(line, sentence)}${words}` });
    return undefined;
  }

  private swap(atom: Atom, newText: string): void {
    const cst = atom.$cstNode;
    if (cst && cst.text !== newText) this.changes.push({ start: cst.offset, end: cst.end, newText });
  }

  private set(found: Found, word: string, slots: Slots): string | undefined {
    const existing = this.factIn(found, word);
    if (existing) return this.replace(existing, slots);
    const entry = found.sentence.entry.facts?.find((fact) => fact.word === word);
    if (!entry) return `\`${word}\` cannot be said of \`${found.sentence.entry.word}\``;
    return this.append(found, this.factText(entry, slots));
  }

  /** A fact of a block or clause with this word, wherever it is said. */
  private factIn({ line, sentence }: Found, word: string): Found | undefined {
    const clause = sentence.clauses.find((one) => one.entry.word === word);
    if (clause) return { line, sentence: clause };
    if (sentence.from >= 0) return undefined;
    const fact = line.block?.facts.find((one) => one.word === word);
    const match = fact && this.match.lines.get(fact);
    return fact && match ? { line: fact, sentence: match.sentence } : undefined;
  }

  private add(found: Found, node: SpecNode): string | undefined {
    const entry = found.sentence.entry.facts?.find((fact) => fact.word === node.word);
    if (!entry) return `\`${node.word}\` cannot be said of \`${found.sentence.entry.word}\``;
    return this.append(found, this.nodeText(entry, node));
  }

  private factText(entry: Entry, slots: Slots): string | undefined {
    const texts = Object.fromEntries(
      Object.entries(slots).map(([slot, value]) => [slot, valueText(value, this.system)]),
    );
    const words = sentenceText(entry, texts);
    return words === undefined ? undefined : `${entry.word}${words}`;
  }

  private nodeText(entry: Entry, node: SpecNode): string | undefined {
    const own = this.factText(entry, node.slots);
    if (own === undefined) return undefined;
    const inner = node.children.map((child) => {
      const fact = entry.facts?.find((one) => one.word === child.word);
      return fact && this.nodeText(fact, child);
    });
    if (inner.includes(undefined)) return undefined;
    return inner.length === 0 ? own : `${own} { ${inner.join('; ')} }`;
  }

  private append({ line, sentence }: Found, fact: string | undefined): string | undefined {
    if (fact === undefined) return 'a value for it is missing';
    if (sentence.from >= 0) {
      if (fact.includes('{')) return 'a block does not fit into the middle of a line';
      const end = line.atoms[sentence.to - 1]?.$cstNode?.end;
      if (end === undefined) return 'the line can no longer be read';
      this.changes.push({ start: end, end, newText: ` ${fact}` });
      return undefined;
    }
    this.appended.set(line, [...(this.appended.get(line) ?? []), fact]);
    return undefined;
  }

  private remove({ line, sentence }: Found): string | undefined {
    if (sentence.from < 0) {
      this.changes.push(removeLine(this.text, line));
      return undefined;
    }
    const start = line.atoms[sentence.from - 1]?.$cstNode?.end ?? headEnd(line);
    const end = line.atoms[sentence.to - 1]?.$cstNode?.end;
    if (start === undefined || end === undefined) return 'the line can no longer be read';
    this.changes.push({ start, end, newText: '' });
    return undefined;
  }
}

type Slots = Readonly<Record<string, SpecValue>>;

function sentenceFrom(sentence: Sentence, from: number): Sentence | undefined {
  if (sentence.from === from) return sentence;
  for (const clause of sentence.clauses) {
    const found = sentenceFrom(clause, from);
    if (found) return found;
  }
  return undefined;
}

/** End of the words a line starts with: its word, and the name of a definition. */
function headEnd(line: Line): number | undefined {
  const cst = line.$cstNode;
  if (!cst) return undefined;
  if (!isDefinition(line)) return cst.offset + line.word.length;
  const name = line.name ?? '';
  return cst.offset + line.kind.length + cst.text.slice(line.kind.length).indexOf(name) + name.length;
}

function headRest(line: Line, sentence: Sentence): string {
  return sentence.from < 0 && isDefinition(line) && line.name !== undefined ? ` ${line.name}` : '';
}

/** The words of a sentence itself, its clauses left out. */
function ownSpan(line: Line, sentence: Sentence): Span | undefined {
  const last = Math.max(sentence.from, ...sentence.slots.map(({ at }) => at), ...sentence.literals);
  const start = sentence.from < 0 ? line.$cstNode?.offset : line.atoms[sentence.from]?.$cstNode?.offset;
  const end = last < 0 ? headEnd(line) : line.atoms[last]?.$cstNode?.end;
  return start === undefined || end === undefined ? undefined : { start, end };
}

/** ` {width} by {length}` with its values; optional parts only where they have one. Undefined when one lacks. */
function sentenceText(entry: Entry, texts: Readonly<Record<string, string>>): string | undefined {
  const used = new Set<string>();
  const write = (pieces: readonly Piece[]): string | undefined => {
    let result = '';
    for (const piece of pieces) {
      if (piece.type === 'literal') result += ` ${piece.word}`;
      else if (piece.type === 'slot') {
        const text = texts[piece.slot];
        if (text === undefined) return undefined;
        used.add(piece.slot);
        result += ` ${text}`;
      } else {
        const hasValue = piece.pieces.some(
          (inner) => inner.type === 'slot' && texts[inner.slot] !== undefined,
        );
        if (hasValue) result += write(piece.pieces) ?? '';
      }
    }
    return result;
  };
  const words = write(piecesOf(entry));
  return Object.keys(texts).every((slot) => used.has(slot)) ? words : undefined;
}

/** The changes of a text that make these edits of its spec. Never throws for edits that no longer fit. */
export function applySpecEdits(text: string, edits: readonly SpecEdit[], system: System): EditResult {
  const file = parseText(text).value;
  const writer = new Writer(text, file, system);
  for (const edit of edits) {
    const reason = writer.write(edit);
    if (reason !== undefined) return { ok: false, reason };
  }
  const changes = writer.all();
  const clash = changes.some((change, index) => index > 0 && change.start < (changes[index - 1]?.end ?? 0));
  return clash ? { ok: false, reason: 'two of the changes touch the same words' } : { ok: true, changes };
}

/** Spec edits sorted by the file they change. */
export function editsByFile(edits: readonly SpecEdit[]): ReadonlyMap<string, readonly SpecEdit[]> {
  const byFile = new Map<string, SpecEdit[]>();
  for (const edit of edits) {
    const uri =
      placeOf(edit.type === 'replace' || edit.type === 'remove' ? edit.node : edit.block)?.uri ?? '';
    byFile.set(uri, [...(byFile.get(uri) ?? []), edit]);
  }
  return byFile;
}

/** The text after changes that do not overlap; changes at one place go in in their order. */
export function changed(text: string, changes: readonly TextChange[]): string {
  let result = '';
  let at = 0;
  for (const change of [...changes].sort((a, b) => a.start - b.start || a.end - b.end)) {
    result += text.slice(at, change.start) + change.newText;
    at = change.end;
  }
  return result + text.slice(at);
}
