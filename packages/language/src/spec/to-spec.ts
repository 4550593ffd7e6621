/** Turns matched lines into the spec: values in SI, origins, one node a fact. */
import { isKind } from '@tautline/quantity';
import type { Origin, SpecDefinition, SpecNode, SpecValue, Takes } from '@tautline/shelter';
import {
  type Atom,
  type Definition,
  type File,
  isComparison,
  isDay,
  isDefinition,
  isExpression,
  isQuantity,
  isText,
} from '../generated/ast.ts';
import { type FileMatch, type Line, matchOf } from '../match/match-file.ts';
import { type Sentence, wordOf } from '../match/match-line.ts';
import { commentText, isDay as isCalendarDay, textOf } from '../text/literals.ts';
import { evaluate, fitKind } from './expression.ts';
import { originKey } from './origin-key.ts';

function specValue(atom: Atom, takes: Takes, origin: Origin, context: Context): SpecValue | undefined {
  const word = wordOf(atom);
  switch (takes.type) {
    case 'quantity': {
      if (!isExpression(atom) || !isKind(takes.kind)) return undefined;
      if (!isQuantity(atom)) context.namesValues = true;
      const result = evaluate(atom);
      const fitted = result.ok ? fitKind(atom, result.value, takes.kind) : result;
      return fitted.ok && 'si' in fitted
        ? { type: 'quantity', si: fitted.si, kind: takes.kind, origin }
        : undefined;
    }
    case 'word':
      return word !== undefined && (takes.words.length === 0 || takes.words.includes(word))
        ? { type: 'word', word, origin }
        : undefined;
    case 'item':
    case 'definition':
      return word === undefined ? undefined : { type: 'item', id: word, origin };
    case 'check':
      return word === undefined ? undefined : { type: 'word', word, origin };
    case 'comparison':
      return isComparison(atom) ? { type: 'word', word: atom.operator, origin } : undefined;
    case 'text':
      return isText(atom) ? { type: 'text', text: textOf(atom.text), origin } : undefined;
    case 'date':
      return isDay(atom) && isCalendarDay(atom.date) ? { type: 'date', date: atom.date, origin } : undefined;
  }
}

interface Context {
  readonly uri: string;
  readonly match: FileMatch;
  /** Set once a calculation is met: it may say a value by its name, which is worked out elsewhere. */
  namesValues: boolean;
}

/** Slots of a sentence, or undefined when one of them has no value. */
function slotsOf(
  sentence: Sentence,
  path: readonly number[],
  context: Context,
): SpecNode['slots'] | undefined {
  const slots: Record<string, SpecValue> = {};
  for (const { slot, takes, atom, at } of sentence.slots) {
    const value = specValue(atom, takes, originKey(context.uri, path, [at, at + 1]), context);
    if (!value) return undefined;
    slots[slot] = value;
  }
  return slots;
}

function clausesOf(sentence: Sentence, path: readonly number[], context: Context): SpecNode[] {
  return sentence.clauses.flatMap((clause) => {
    const slots = clause.complete ? slotsOf(clause, path, context) : undefined;
    if (!slots) return [];
    return {
      word: clause.entry.word,
      slots,
      children: clausesOf(clause, path, context),
      origin: originKey(context.uri, path, [clause.from, clause.to]),
    };
  });
}

function blockOf(line: Line, path: readonly number[], context: Context): SpecNode[] {
  return (line.block?.facts ?? []).flatMap((fact, index) => {
    const match = context.match.lines.get(fact);
    const own = [...path, index];
    const slots = match?.sentence.complete ? slotsOf(match.sentence, own, context) : undefined;
    if (!match || !slots) return [];
    return {
      word: fact.word,
      slots,
      children: [...clausesOf(match.sentence, own, context), ...blockOf(fact, own, context)],
      origin: originKey(context.uri, own),
    };
  });
}

/** The doc comment right before a node, without its marks. */
export function docOf(definition: Definition): string {
  const cst = definition.$cstNode;
  if (!cst) return '';
  const before = cst.root.fullText.slice(0, cst.offset);
  const match = /\/\*\*(?:(?!\*\/)[\s\S])*\*\/[ \t]*\r?\n?[ \t]*$/.exec(before.slice(-4000));
  return match ? commentText(match[0].trim()) : '';
}

/** A block that is the same wherever the same words stand at the same place. */
interface FixedBlock {
  readonly said: string;
  readonly definition: SpecDefinition;
}

/** What a linked file was read as. */
export interface Reading {
  readonly definitions: readonly SpecDefinition[];
  /** By the number of the statement. */
  readonly fixed: ReadonlyMap<number, FixedBlock>;
}

/**
 * Reads a linked file. Lines that could not be understood are left out: they are problems of their own. A definition
 * whose opening line is incomplete (a shelter on no site) keeps what it has. `before` is what the file was read as
 * before an edit: what nobody touched is the same object. Both texts must have been parsed without an error.
 */
export function readingOf(file: File, uri: string, before?: Reading): Reading {
  const match = matchOf(file);
  const definitions: SpecDefinition[] = [];
  const fixed = new Map<number, FixedBlock>();
  let end = 0;
  for (const [index, statement] of file.statements.entries()) {
    const cst = statement.$cstNode;
    // With what stands before it: there may be a note on it.
    const said = cst?.root.fullText.slice(end, cst.end);
    end = cst?.end ?? end;
    if (!isDefinition(statement)) continue;
    const known = before?.fixed.get(index);
    const context: Context = { uri, match, namesValues: false };
    const definition =
      known && known.said === said ? known.definition : definitionOf(statement, index, context);
    if (!definition) continue;
    definitions.push(definition);
    if (said !== undefined && !context.namesValues) fixed.set(index, { said, definition });
  }
  return { definitions, fixed };
}

function definitionOf(statement: Definition, index: number, context: Context): SpecDefinition | undefined {
  const match = context.match.lines.get(statement);
  if (!match) return undefined;
  const path = [index];
  const slots = slotsOf(match.sentence, path, context) ?? {};
  const like = slots['like'];
  return {
    word: statement.kind,
    name: statement.name ?? '',
    doc: docOf(statement),
    slots,
    children: [...clausesOf(match.sentence, path, context), ...blockOf(statement, path, context)],
    origin: originKey(context.uri, path),
    ...(like?.type === 'item' ? { like: like.id } : {}),
  };
}
