/** Hover: what a word says, a quantity in both systems, an item with its numbers and their source. */

import { checkOf, messageText, verdictText } from '@tautline/checks';
import type { KindName } from '@tautline/quantity';
import { formatBoth, isKind, type System, usedText } from '@tautline/quantity';
import type { Entry, SpecDefinition, Takes } from '@tautline/shelter';
import { CstUtils, type LangiumDocument } from 'langium';
import type { HoverProvider } from 'langium/lsp';
import { type Hover, type HoverParams, MarkupKind } from 'vscode-languageserver';
import {
  type Atom,
  isArithmetic,
  isDefinition,
  isExpression,
  isFact,
  isLet,
  isName,
  type Name,
} from '../generated/ast.ts';
import { kindOfDefinition, type Line, matchOf, namesIn } from '../match/match-file.ts';
import type { Sentence } from '../match/match-line.ts';
import { patternText } from '../problems/wording.ts';
import { evaluate, fitKind } from '../spec/expression.ts';
import { type EditorContext, rangeOf } from './context.ts';
import { linesOf } from './cursor.ts';
import { derivedAt } from './derived.ts';
import { shownFindings } from './diagnostics.ts';
import { worldOf } from './file-view.ts';
import { allFacts, sourceOf, titleOf } from './item-text.ts';
import { fileOf } from './scope.ts';
import { systemFor } from './settings.ts';

interface Said {
  readonly start: number;
  readonly end: number;
  readonly markdown: string;
}

export class ShelterHover implements HoverProvider {
  private readonly context: () => EditorContext;

  constructor(context: () => EditorContext) {
    this.context = context;
  }

  getHoverContent(document: LangiumDocument, { position }: HoverParams): Hover | undefined {
    const offset = document.textDocument.offsetAt(position);
    const said = this.at(document, offset);
    if (!said) return undefined;
    const found = [derivedAt(document, offset, this.context()), ...this.findings(document, offset)];
    const value = [said.markdown, ...found].filter((part) => part !== '').join('\n\n---\n\n');
    return { contents: { kind: MarkupKind.Markdown, value }, range: rangeOf(document, said.start, said.end) };
  }

  private at(document: LangiumDocument, offset: number): Said | undefined {
    const file = fileOf(document);
    if (!file) return undefined;
    const inside = (start: number, end: number): boolean => start <= offset && offset <= end;
    for (const line of linesOf(file).reverse()) {
      const start = line.$cstNode?.offset ?? 0;
      const word = isFact(line) ? line.word : line.kind;
      const entry = isFact(line) ? matchOf(file).lines.get(line)?.sentence.entry : kindOfDefinition(line);
      if (entry && inside(start, start + word.length))
        return { start, end: start + word.length, markdown: entryText(entry) };
      const atom = line.atoms.find(({ $cstNode }) => $cstNode && inside($cstNode.offset, $cstNode.end));
      if (atom) return this.atom(document, line, atom, offset);
      if (isDefinition(line) && line.name !== undefined) {
        const at = start + (line.$cstNode?.text.indexOf(line.name) ?? 0);
        if (inside(at, at + line.name.length)) {
          return { start: at, end: at + line.name.length, markdown: this.definition(document, line.name) };
        }
      }
    }
    const leaf = file.$cstNode && CstUtils.findLeafNodeAtOffset(file.$cstNode, offset);
    const node = leaf?.astNode;
    if (leaf && isLet(node))
      return { start: leaf.offset, end: leaf.end, markdown: this.constant(node.value, document) };
    return undefined;
  }

  private system(document: LangiumDocument): System {
    return systemFor(worldOf(document, this.context().view), this.context().settings());
  }

  private atom(document: LangiumDocument, line: Line, atom: Atom, offset: number): Said | undefined {
    const file = fileOf(document);
    const cst = atom.$cstNode;
    if (!file || !cst) return undefined;
    const match = matchOf(file);
    const span = { start: cst.offset, end: cst.end };
    let name: Name | undefined;
    namesIn(atom, (one) => {
      if (one.$cstNode && one.$cstNode.offset <= offset && offset <= one.$cstNode.end) name = one;
    });
    const role = name && match.roles.get(name);
    const target =
      name &&
      (role?.type === 'value' || (role?.type === 'slot' && ['item', 'definition'].includes(role.takes.type)))
        ? name.ref?.ref
        : undefined;
    if (role?.type === 'clause') return { ...span, markdown: entryText(role.entry) };
    if (target && isDefinition(target) && target.name !== undefined)
      return { ...span, markdown: this.definition(document, target.name) };
    if (role?.type === 'slot' && role.takes.type === 'check')
      return { ...span, markdown: checkText(name?.ref?.$refText ?? '') };
    const sentence = match.lines.get(line)?.sentence;
    const use = sentence && slotOf(sentence, atom);
    if (use && use.takes.type === 'quantity' && isExpression(atom)) {
      const text = this.quantity(atom, use.takes.kind, document);
      return text === undefined ? undefined : { ...span, markdown: text };
    }
    if (use) return { ...span, markdown: entryText(use.entry) };
    return undefined;
  }

  private quantity(
    atom: Parameters<typeof evaluate>[0],
    kind: KindName,
    document: LangiumDocument,
  ): string | undefined {
    const result = evaluate(atom);
    if (!result.ok || !atom || !isKind(kind)) return undefined;
    const fitted = fitKind(atom, result.value, kind);
    if (!fitted.ok) return undefined;
    const worked = isArithmetic(atom) || isName(atom) ? `\`${atom.$cstNode?.text ?? ''}\` = ` : '';
    return `${worked}**${formatBoth(fitted.si, kind, this.system(document))}**`;
  }

  private constant(value: Parameters<typeof evaluate>[0], document: LangiumDocument): string {
    const result = evaluate(value);
    if (!result.ok) return 'A constant.';
    const kinds = [
      'length',
      'angle',
      'area',
      'force',
      'speed',
      'pressure',
      'line-load',
      'mass',
      'ratio',
    ] as const;
    const kind = kinds.find((one) => value && fitKind(value, result.value, one).ok);
    return `A constant${kind ? `: **${formatBoth(result.value.si, kind, this.system(document))}**` : ''}.`;
  }

  private definition(document: LangiumDocument, name: string): string {
    const definition = worldOf(document, this.context().view).definitions.get(name);
    if (!definition) return '';
    return definitionText(definition, this.system(document));
  }

  private findings(document: LangiumDocument, offset: number): string[] {
    const context = this.context();
    const analysis = context.analyses.of(document.uri.toString());
    if (!analysis) return [];
    const system = this.system(document);
    return shownFindings(analysis, document, context)
      .filter(({ span }) => span.start <= offset && offset <= span.end)
      .map((finding) => {
        const old = analysis.stale || finding.result?.kept ? ' *(for the text before the last change)*' : '';
        const used = finding.utilisation === undefined ? '' : ` - ${usedText(finding.utilisation)} used`;
        const { formula } = finding;
        const by = finding.loadCase === undefined ? '' : `\n\nGoverned by: ${finding.loadCase}`;
        return `**${verdictText(finding)}**: ${messageText(finding.message, system)}${used}${old}${by}${formula ? `\n\n\`${formula}\`` : ''}`;
      });
  }
}

export function entryText(entry: Entry): string {
  return `\`${patternText(entry)}\`\n\n${entry.doc}\n\n\`\`\`shelter\n${entry.example}\n\`\`\``;
}

export function definitionText(definition: SpecDefinition, system: System): string {
  const title = titleOf(definition);
  const from = sourceOf(definition);
  return [
    `**${definition.name}** (${definition.word})${title === '' ? '' : `: ${title}`}`,
    allFacts(definition, system),
    from === '' ? '' : `Source: ${from}`,
  ]
    .filter((part) => part !== '')
    .join('\n\n');
}

function checkText(id: string): string {
  const check = checkOf(id);
  return check
    ? `**${check.title}**\n\n${check.asks}\n\n${check.matters}\n\nLeaves out: ${check.leavesOut}`
    : '';
}

function slotOf(sentence: Sentence, atom: Atom): { takes: Takes; entry: Entry } | undefined {
  const own = sentence.slots.find((slot) => slot.atom === atom);
  if (own) return { takes: own.takes, entry: sentence.entry };
  for (const clause of sentence.clauses) {
    const found = slotOf(clause, atom);
    if (found) return found;
  }
  return undefined;
}
