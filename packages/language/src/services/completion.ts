/** Completion: words of the block, parts of the sentence, items of the right kind, units behind a number. */

import { checks } from '@tautline/checks';
import type { KindName } from '@tautline/quantity';
import { isKind, kinds } from '@tautline/quantity';
import {
  definitionKinds,
  type Entry,
  type Piece,
  piecesOf,
  type SpecDefinition,
  type Takes,
} from '@tautline/shelter';
import { type LangiumDocument, UriUtils } from 'langium';
import type { CompletionProvider } from 'langium/lsp';
import {
  type CompletionItem,
  CompletionItemKind,
  type CompletionList,
  type CompletionParams,
  InsertTextFormat,
  MarkupKind,
  type Range,
} from 'vscode-languageserver';
import { resolveImport } from '../files/import-path.ts';
import { unitsOf } from '../problems/value-problems.ts';
import { patternText } from '../problems/wording.ts';
import { scanQuantity } from '../text/quantity-text.ts';
import { type EditorContext, rangeOf } from './context.ts';
import { blockAt, entryOfBlock, expectedAfter, lineAt, wordStart } from './cursor.ts';
import { worldOf } from './file-view.ts';
import { itemFacts, titleOf } from './item-text.ts';
import { fileOf } from './scope.ts';

export class ShelterCompletion implements CompletionProvider {
  readonly completionOptions = { triggerCharacters: [' ', '"', '/'] };
  private readonly context: () => EditorContext;

  constructor(context: () => EditorContext) {
    this.context = context;
  }

  getCompletion(document: LangiumDocument, { position }: CompletionParams): CompletionList | undefined {
    const offset = document.textDocument.offsetAt(position);
    const text = document.textDocument.getText();
    const path = /^import[ \t]+"([^"\n]*)$/.exec(text.slice(text.lastIndexOf('\n', offset - 1) + 1, offset));
    if (path) return list(this.files(document, rangeOf(document, offset - (path[1] ?? '').length, offset)));
    if (insideTextOrComment(text, offset)) return undefined;
    const start = wordStart(text, offset);
    const range = rangeOf(document, start, offset);
    const line = lineAt(document, offset);
    if (!line) return list(this.starts(document, offset, range));
    const expected = expectedAfter(line.entry, line.before);
    const unit = unitsBehind(text, start, expected, line);
    if (unit) return list(unit.map((item) => at(item, range)));
    const items = [
      ...expected.pieces.flatMap((piece) => this.forPiece(piece, document)),
      ...expected.clauses.map((entry) => entryItem(entry, '2', false)),
    ];
    return list(items.map((item) => at(item, range)));
  }

  private starts(document: LangiumDocument, offset: number, range: Range): CompletionItem[] {
    const file = fileOf(document);
    const block = file && blockAt(file, offset);
    if (!file || !block) {
      const items = definitionKinds.map((kind) => entryItem(kind, '1', true, kind.named));
      const words = ['import', 'let'].map(
        (word): CompletionItem => ({ label: word, kind: CompletionItemKind.Keyword, sortText: `3${word}` }),
      );
      return [...items, ...words].map((item) => at(item, range));
    }
    const said = new Set(
      block.facts
        .filter((fact) => (fact.$cstNode?.end ?? 0) < offset || (fact.$cstNode?.offset ?? 0) > offset)
        .map(({ word }) => word),
    );
    return entryOfBlock(file, block)
      .filter((entry) => entry.many || !said.has(entry.word))
      .map((entry) => at(entryItem(entry, entry.required ? '0' : '1', true), range));
  }

  /** Shelter files of the workspace by their path from this file. */
  private files(document: LangiumDocument, range: Range): CompletionItem[] {
    const { shared, roots } = this.context().view;
    return shared.workspace.LangiumDocuments.all
      .map(({ uri }) => uri)
      .filter((uri) => uri.scheme === document.uri.scheme && uri.toString() !== document.uri.toString())
      .map((uri) => ({ uri, path: UriUtils.relative(UriUtils.dirname(document.uri), uri) }))
      .filter(({ uri, path }) => {
        const target = resolveImport(document.uri.toString(), path, roots.folders);
        return target.ok && target.uri === uri.toString();
      })
      .map(({ path }) => at({ label: path, kind: CompletionItemKind.File }, range))
      .toArray();
  }

  private forPiece(piece: Piece, document: LangiumDocument): CompletionItem[] {
    if (piece.type === 'literal')
      return [{ label: piece.word, kind: CompletionItemKind.Keyword, sortText: `1${piece.word}` }];
    if (piece.type === 'optional')
      return piece.pieces.slice(0, 1).flatMap((first) => this.forPiece(first, document));
    return this.forTakes(piece.takes, document);
  }

  private forTakes(takes: Takes, document: LangiumDocument): CompletionItem[] {
    switch (takes.type) {
      case 'word':
        return takes.words.map((word) => ({
          label: word,
          kind: CompletionItemKind.EnumMember,
          sortText: `1${word}`,
        }));
      case 'item':
        return this.definitions(document, takes.kinds)
          .filter((definition) => hasForm(definition, takes.form))
          .map(itemCompletion);
      case 'definition':
        return this.definitions(document, takes.of === 'shelter' ? ['shelter', 'variant'] : [takes.of]).map(
          itemCompletion,
        );
      case 'check':
        return checks.map(({ id, title, asks }) => ({
          label: id,
          kind: CompletionItemKind.EnumMember,
          detail: title,
          documentation: asks,
        }));
      case 'comparison':
        return ['>=', '<=', '>', '<'].map((label) => ({ label, kind: CompletionItemKind.Operator }));
      case 'quantity':
        return this.constants(document);
      case 'text':
        return [
          {
            label: '""',
            insertText: '"$0"',
            insertTextFormat: InsertTextFormat.Snippet,
            kind: CompletionItemKind.Text,
          },
        ];
      case 'date':
        return [];
    }
  }

  private definitions(document: LangiumDocument, wanted: readonly string[]): SpecDefinition[] {
    const { definitions } = worldOf(document, this.context().view);
    return [...definitions.values()].filter(({ word, name }) => name !== '' && wanted.includes(word));
  }

  private constants(document: LangiumDocument): CompletionItem[] {
    return (fileOf(document)?.statements ?? []).flatMap((statement) =>
      statement.$type === 'Let' && statement.name !== undefined
        ? [
            {
              label: statement.name,
              kind: CompletionItemKind.Constant,
              detail: statement.value?.$cstNode?.text ?? '',
            },
          ]
        : [],
    );
  }
}

/** An item whose own block says no form has it from the one it is like, and may be meant. */
function hasForm({ children }: SpecDefinition, form: string | undefined): boolean {
  const said = children.find(({ word }) => word === 'form')?.slots['value'];
  return form === undefined || said?.type !== 'word' || said.word === form;
}

const list = (items: CompletionItem[]): CompletionList => ({ isIncomplete: false, items });

function at(item: CompletionItem, range: Range): CompletionItem {
  const { insertText, ...rest } = item;
  return { ...rest, textEdit: { range, newText: insertText ?? item.label } };
}

const markdown = (value: string) => ({ kind: MarkupKind.Markdown, value });

function itemCompletion(definition: SpecDefinition): CompletionItem {
  return {
    label: definition.name,
    kind: definition.word === 'site' ? CompletionItemKind.Module : CompletionItemKind.Value,
    detail: [titleOf(definition), itemFacts(definition)].filter((part) => part !== '').join(' - '),
    documentation: markdown(definition.doc),
    sortText: `1${definition.name}`,
  };
}

/** A fact or block, with places to tab through where a whole line is written. */
function entryItem(entry: Entry, rank: string, whole: boolean, named = false): CompletionItem {
  const documentation = markdown(`${entry.doc}\n\n\`\`\`shelter\n${entry.example}\n\`\`\``);
  const base = {
    label: entry.word,
    detail: patternText(entry),
    documentation,
    sortText: `${rank}${entry.word}`,
  };
  const kind = entry.facts ? CompletionItemKind.Struct : CompletionItemKind.Property;
  if (!whole) return { ...base, kind };
  return { ...base, kind, insertText: snippetOf(entry, named), insertTextFormat: InsertTextFormat.Snippet };
}

/** A line to fill in: its sentence, and for a block the facts it cannot do without. */
export function snippetOf(entry: Entry, named = false): string {
  let count = 0;
  const place = (text: string): string => {
    count += 1;
    return `\${${count}:${text.replace(/[$}\\]/g, '')}}`;
  };
  const words = (one: Entry): string =>
    piecesOf(one)
      .flatMap((piece) => {
        if (piece.type === 'literal') return [piece.word];
        return piece.type === 'slot'
          ? [
              slotPlace(piece.takes, piece.slot, place, (c) => {
                count += 1;
                return `\${${count}|${c.join(',')}|}`;
              }),
            ]
          : [];
      })
      .join(' ');
  const line = (one: Entry): string => [one.word, words(one)].filter((part) => part !== '').join(' ');
  const head = named
    ? [entry.word, place('name'), words(entry)].filter((part) => part !== '').join(' ')
    : line(entry);
  const needed = (entry.facts ?? []).filter(({ required }) => required);
  const isBlock = named || (entry.facts !== undefined && (needed.length > 0 || words(entry) === ''));
  if (!isBlock) return head;
  const inner = needed.map((fact) => `\t${line(fact)}\n`).join('');
  return `${head} {\n${inner}\t$0\n}`;
}

function slotPlace(
  takes: Takes,
  slot: string,
  place: (text: string) => string,
  choice: (words: readonly string[]) => string,
): string {
  switch (takes.type) {
    case 'word':
      return takes.words.length > 1 ? choice(takes.words) : place(takes.words[0] ?? slot);
    case 'quantity':
      return place(exampleOf(takes.kind));
    case 'text':
      return `"${place('text')}"`;
    case 'date':
      return place('2026-03-01');
    case 'comparison':
      return choice(['>=', '<=']);
    default:
      return place(slot === 'item' ? 'item' : slot);
  }
}

/** A value of a kind as an example, from the description of the kind. */
const exampleOf = (kind: KindName): string =>
  (isKind(kind) ? /`([^`]+)`/.exec(kinds[kind].description)?.[1] : undefined) ?? kind;

type LineHere = NonNullable<ReturnType<typeof lineAt>>;

/** Units, when the word at the cursor stands right behind a number. */
function unitsBehind(
  text: string,
  start: number,
  expected: ReturnType<typeof expectedAfter>,
  line: LineHere,
): CompletionItem[] | undefined {
  const number = /(?:^|[\s(])(-?[\d./-]*\d)([ \t]*)$/.exec(text.slice(Math.max(0, start - 40), start));
  const digits = /^(-?[\d./-]*\d)(\p{L}*)$/u.exec(text.slice(start, start + 40).split(/[\s;}]/)[0] ?? '');
  if (!number && !digits) return undefined;
  const slot = [...expected.pieces].find((piece) => piece.type === 'slot' && piece.takes.type === 'quantity');
  const kind = slot?.type === 'slot' && slot.takes.type === 'quantity' ? slot.takes.kind : kindBefore(line);
  if (kind === undefined) return undefined;
  const prefix = digits ? (digits[1] ?? '') : '';
  return unitsOf(kind).map((unit, index) => ({
    label: prefix === '' ? unit : `${prefix} ${unit}`,
    kind: CompletionItemKind.Unit,
    detail: isKind(kind) ? kinds[kind].noun : kind,
    sortText: `0${index}`,
  }));
}

/** The kind of the quantity written last, when it still lacks its unit. */
function kindBefore({ entry, before }: LineHere): string | undefined {
  const last = before.at(-1);
  if (last?.$type !== 'Quantity' || scanQuantity(last.text, 0)?.parts.at(-1)?.unit !== undefined)
    return undefined;
  const piece = expectedAfter(entry, before.slice(0, -1)).pieces.find(
    (one) => one.type === 'slot' && one.takes.type === 'quantity',
  );
  return piece?.type === 'slot' && piece.takes.type === 'quantity' ? piece.takes.kind : undefined;
}

function insideTextOrComment(text: string, offset: number): boolean {
  const before = text.slice(text.lastIndexOf('\n', offset - 1) + 1, offset);
  const bare = before.replace(/"(?:\\.|[^"\\])*"/g, '');
  if (bare.includes('"') || bare.includes('//')) return true;
  return text.lastIndexOf('/*', offset - 1) > text.lastIndexOf('*/', offset - 1);
}
