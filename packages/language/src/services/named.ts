/** Shelters by name: those a file defines, and those that stand in a range. */
import { factNodes, itemIn, numberIn, type Origin, type SpecWorld } from '@tautline/shelter';
import type { LangiumDocument } from 'langium';
import { type Definition, isDefinition } from '../generated/ast.ts';
import type { Span } from '../spec/origin-key.ts';
import { fileOf } from './scope.ts';

/** Names of a file's shelters and variants, or of what has one of these words, in order. */
export function shelterNames(
  document: LangiumDocument,
  words: readonly string[] = ['shelter', 'variant'],
): readonly string[] {
  return (fileOf(document)?.statements ?? []).flatMap((statement) =>
    isDefinition(statement) && words.includes(statement.kind) && statement.name !== undefined
      ? [statement.name]
      : [],
  );
}

/** Words of what has results. */
export const withResults = ['shelter', 'variant', 'range'];

/** The shelter, variant or range of that name. */
export function definitionNamed(document: LangiumDocument, name: string): Definition | undefined {
  return (fileOf(document)?.statements ?? [])
    .filter(isDefinition)
    .find((one) => one.name === name && withResults.includes(one.kind));
}

/** Its name in its file; the start of the file when it is no longer there. */
export function nameSpan(document: LangiumDocument, name: string): Span {
  const definition = definitionNamed(document, name);
  const cst = definition?.$cstNode;
  if (!definition || !cst) return { start: 0, end: 0 };
  const start = cst.offset + Math.max(0, cst.text.indexOf(name, definition.kind.length));
  return { start, end: start + name.length };
}

/** Whether a text is half typed in a way that may hide names for a moment: one without its name, or part of it unread. */
export function mayHideNames(document: LangiumDocument): boolean {
  const { parserErrors, lexerErrors } = document.parseResult;
  const nameless = (fileOf(document)?.statements ?? []).some(
    (one) => isDefinition(one) && withResults.includes(one.kind) && one.name === undefined,
  );
  return nameless || parserErrors.length > 0 || lexerErrors.length > 0;
}

export interface NamedMember {
  readonly shelter: string;
  readonly count: number;
  /** The `stand` line of the range. */
  readonly origin: Origin;
}

/** The shelters of a range, each kind once. */
export function membersOf(range: string, world: SpecWorld): readonly NamedMember[] {
  const definition = world.definitions.get(range);
  if (definition?.word !== 'range') return [];
  const members = new Map<string, NamedMember>();
  for (const stand of factNodes(definition, 'stand')) {
    const shelter = itemIn(stand, 'shelter');
    if (shelter === undefined) continue;
    const before = members.get(shelter);
    const count = (before?.count ?? 0) + (numberIn(stand, 'count') ?? 1);
    members.set(shelter, { shelter, count, origin: before?.origin ?? stand.origin });
  }
  return [...members.values()];
}
