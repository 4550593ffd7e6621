/** Problems of single lines: words the vocabulary does not know, sentences that stop early or go on. */
import { definitionKinds, type Entry } from '@tautline/shelter';
import { type Atom, type File, isDefinition, isQuantity } from '../generated/ast.ts';
import type { FileMatch, Line } from '../match/match-file.ts';
import { type LineMatch, type SlotUse, wordOf } from '../match/match-line.ts';
import { unknownUnit } from '../spec/expression.ts';
import { scanQuantity } from '../text/quantity-text.ts';
import { didYouMean, type LanguageProblem, nearest, type Remedy, replacements } from './problem.ts';
import { either, firstInWords, patternText } from './wording.ts';

type Cst = { readonly offset: number; readonly end: number; readonly text: string };

const cstOf = (atom: Atom | undefined): Cst | undefined => atom?.$cstNode;
const shown = (text: string): string => `\`${text.length > 40 ? `${text.slice(0, 40)}...` : text}\``;

export interface LineProblems {
  readonly problems: readonly LanguageProblem[];
  /** Slots that need no second problem: a unit behind them is the one to mend. */
  readonly settled: ReadonlySet<Atom>;
}

export function lineProblems(file: File, match: FileMatch): LineProblems {
  const problems: LanguageProblem[] = [];
  const settled = new Set<Atom>();
  const visit = (line: Line, siblings: readonly Entry[], known: boolean): void => {
    const found = match.lines.get(line);
    if (!found) {
      if (known) problems.push(unknownWord(line, siblings));
    } else if (found.trouble) {
      const unit = lostUnit(found, line);
      if (unit) {
        problems.push(unit.problem);
        settled.add(unit.number);
      } else problems.push(troubleProblem(found, line, siblings));
    }
    const stray = found?.trouble ? undefined : strayLine(line);
    if (stray) problems.push(stray);
    const facts = found?.sentence.entry.facts ?? [];
    for (const fact of line.block?.facts ?? []) {
      visit(fact, facts, found !== undefined && facts.length > 0);
    }
    if (found && line.block && facts.length === 0 && line.block.facts.length > 0)
      problems.push(noBlock(line, found.sentence.entry));
  };
  for (const statement of file.statements)
    if (isDefinition(statement)) visit(statement, definitionKinds, true);
  return { problems, settled };
}

const wordText = (line: Line): string => (isDefinition(line) ? line.kind : line.word);

function wordSpan(line: Line): { start: number; end: number } {
  const start = line.$cstNode?.offset ?? 0;
  return { start, end: start + wordText(line).length };
}

function unknownWord(line: Line, siblings: readonly Entry[]): LanguageProblem {
  const word = wordText(line);
  const span = wordSpan(line);
  const called = siblings.filter((entry) => entry.also?.includes(word)).map((entry) => entry.word);
  if (called.length > 0) return otherWord(word, called, span);
  const meant = nearest(
    word,
    siblings.map((entry) => entry.word),
  );
  const where = isDefinition(line) ? 'starts nothing a file can hold' : 'says nothing here';
  const inside = siblings.filter((entry) => entry.facts?.some((fact) => fact.word === word));
  const elsewhere =
    inside.length > 0 && !isDefinition(line)
      ? ` It belongs in ${either(inside.map((entry) => `\`${entry.word}\``))}.`
      : meant.length > 0
        ? didYouMean(meant)
        : ` Here one can say ${either(siblings.map((entry) => `\`${entry.word}\``))}.`;
  return {
    id: 'unknown-word',
    severity: 'error',
    message: `\`${word}\` ${where}.${elsewhere}`,
    ...span,
    remedies: replacements(meant, span.start, span.end),
  };
}

/** A word that people use for something which has another one here. */
function otherWord(
  word: string,
  called: readonly string[],
  { start, end }: { readonly start: number; readonly end: number },
): LanguageProblem {
  return {
    id: 'unknown-word',
    severity: 'error',
    message: `\`${word}\` is called ${either(called.map((one) => `\`${one}\``))} here.`,
    start,
    end,
    remedies: replacements(called, start, end),
  };
}

function noBlock(line: Line, entry: Entry): LanguageProblem {
  const cst = line.block?.$cstNode;
  return {
    id: 'unexpected',
    severity: 'error',
    message: `\`${entry.word}\` takes no block; it is said in one line: \`${entry.example}\`.`,
    start: cst?.offset ?? 0,
    end: (cst?.offset ?? 0) + 1,
  };
}

/** A line that does not start with a word was read as the end of the line before. */
function strayLine(line: Line): LanguageProblem | undefined {
  const row = line.$cstNode?.range.start.line;
  const stray = line.atoms.find((atom) => atom.$cstNode && atom.$cstNode.range.start.line !== row);
  const cst = cstOf(stray);
  if (!cst) return undefined;
  return {
    id: 'own-line',
    severity: 'error',
    message: `A fact stays on its line: ${shown(cst.text)} belongs behind \`${wordText(line)}\`, or a word is missing before it.`,
    start: cst.offset,
    end: cst.end,
  };
}

function lastSlotBefore({ sentence }: LineMatch, at: number): SlotUse | undefined {
  const slots: SlotUse[] = [];
  const collect = (one: LineMatch['sentence']): void => {
    slots.push(...one.slots);
    one.clauses.forEach(collect);
  };
  collect(sentence);
  return slots.find((slot) => slot.at === at - 1);
}

/** A word behind a number without a unit that was meant as its unit: `2.2 metres`. */
function lostUnit(match: LineMatch, line: Line): { problem: LanguageProblem; number: Atom } | undefined {
  const at = match.trouble?.at ?? 0;
  const atom = line.atoms[at];
  const word = wordOf(atom);
  const slot = lastSlotBefore(match, at);
  if (word === undefined || !slot || slot.takes.type !== 'quantity' || !isQuantity(slot.atom))
    return undefined;
  const bare = scanQuantity(slot.atom.text, 0)?.parts.at(-1)?.unit === undefined;
  if (!bare || ['count', 'ratio', 'money', 'slope', 'percent'].includes(slot.takes.kind)) return undefined;
  const before = cstOf(slot.atom);
  const cst = cstOf(atom);
  if (!before || !cst || cst.offset - before.end > 1) return undefined;
  const { message, suggestions } = unknownUnit(word);
  return {
    number: slot.atom,
    problem: {
      id: 'unknown-unit',
      severity: 'error',
      message,
      start: cst.offset,
      end: cst.end,
      remedies: replacements(suggestions, cst.offset, cst.end),
    },
  };
}

function troubleProblem(match: LineMatch, line: Line, siblings: readonly Entry[]): LanguageProblem {
  const { at, expected } = match.trouble ?? { at: 0, expected: [] };
  const entry = innermost(match, at);
  const atom = line.atoms[at];
  const cst = cstOf(atom);
  if (!atom || !cst) return tooShort(line, at, entry, firstInWords(expected));
  const word = wordOf(atom);
  if (word !== undefined && siblings.some((sibling) => sibling.word === word) && !isDefinition(line)) {
    return ownFact(word, cst, line, at);
  }
  if (expected.length > 0) {
    const meant = word === undefined ? [] : nearest(word, expectedWords(expected));
    return {
      id: 'unexpected',
      severity: 'error',
      message: `Expected ${firstInWords(expected)} here, found ${shown(cst.text)}.${didYouMean(meant)}`,
      start: cst.offset,
      end: cst.end,
      remedies: replacements(meant, cst.offset, cst.end),
    };
  }
  const facts = match.sentence.entry.facts ?? [];
  const called = facts.filter((fact) => word !== undefined && fact.also?.includes(word));
  if (word !== undefined && called.length > 0) {
    return otherWord(
      word,
      called.map((fact) => fact.word),
      { start: cst.offset, end: cst.end },
    );
  }
  const clauses = facts.map((fact) => fact.word);
  const meant =
    word === undefined ? [] : nearest(word, [...clauses, ...(entry.facts ?? []).map((fact) => fact.word)]);
  const because = meant.length > 0 ? didYouMean(meant) : ` It reads \`${patternText(entry)}\`.`;
  return {
    id: 'unexpected',
    severity: 'error',
    message: `${shown(cst.text)} is not part of what \`${entry.word}\` says.${because}`,
    start: cst.offset,
    end: cst.end,
    remedies: replacements(meant, cst.offset, cst.end),
  };
}

function expectedWords(expected: NonNullable<LineMatch['trouble']>['expected']): string[] {
  return expected.flatMap((piece) => {
    if (piece.type === 'literal') return [piece.word];
    if (piece.type === 'optional') return expectedWords(piece.pieces);
    return piece.takes.type === 'word' ? [...piece.takes.words] : [];
  });
}

/** The entry of the clause that the atom at an index follows. */
function innermost({ sentence }: LineMatch, at: number): Entry {
  let entry = sentence.entry;
  let clauses = sentence.clauses;
  for (;;) {
    const next = clauses.findLast((clause) => clause.from < at);
    if (!next) return entry;
    entry = next.entry;
    clauses = next.clauses;
  }
}

function tooShort(line: Line, at: number, entry: Entry, wanted: string): LanguageProblem {
  const last = cstOf(line.atoms[at - 1]);
  const span = last ? { start: last.offset, end: last.end } : wordSpan(line);
  return {
    id: 'incomplete',
    severity: 'error',
    message: `\`${entry.word}\` still needs ${wanted}, e.g. \`${entry.example}\`.`,
    ...span,
  };
}

function ownFact(word: string, cst: Cst, line: Line, at: number): LanguageProblem {
  const before = cstOf(line.atoms[at - 1])?.end ?? wordSpan(line).end;
  const remedy: Remedy = {
    title: `Put \`;\` before \`${word}\``,
    changes: [{ start: before, end: cst.offset, newText: '; ' }],
  };
  return {
    id: 'own-line',
    severity: 'error',
    message: `\`${word}\` is a fact of its own: start a new line before it, or put \`;\`.`,
    start: cst.offset,
    end: cst.end,
    remedies: [remedy],
  };
}
