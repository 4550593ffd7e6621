/** The shape of a file: outline, links of imports, growing selections, the sentence being written. */
import type { LangiumDocument } from 'langium';
import type {
  DocumentLinkProvider,
  DocumentSymbolProvider,
  Formatter,
  SignatureHelpProvider,
} from 'langium/lsp';
import {
  type DocumentLink,
  type DocumentRangeFormattingParams,
  type DocumentSymbol,
  type Position,
  type SelectionRange,
  type SignatureHelp,
  type SignatureHelpParams,
  SymbolKind,
  type TextEdit,
} from 'vscode-languageserver';
import { formatText } from '../format/format.ts';
import { isDefinition, isFact, isImport, isLet, type Statement } from '../generated/ast.ts';
import { kindOfDefinition, type Line } from '../match/match-file.ts';
import { patternOf } from '../problems/wording.ts';
import { lineSpan } from '../spec/origin-key.ts';
import { type EditorContext, rangeOf } from './context.ts';
import { expectedAfter, lineAt } from './cursor.ts';
import { fileOf, importsOf, isCatalogue } from './scope.ts';

export class ShelterOutline implements DocumentSymbolProvider {
  getSymbols(document: LangiumDocument): DocumentSymbol[] {
    const symbol = (node: Line | Statement): DocumentSymbol | undefined => {
      const cst = node.$cstNode;
      if (!cst) return undefined;
      const line = lineSpan(node);
      const facts = ('block' in node ? node.block?.facts : undefined) ?? [];
      return {
        ...named(node, document.textDocument.getText().slice(line.start, line.end)),
        range: rangeOf(document, cst.offset, cst.end),
        selectionRange: rangeOf(document, line.start, line.end),
        children: facts.flatMap((fact) => symbol(fact) ?? []),
      };
    };
    return (fileOf(document)?.statements ?? []).flatMap((statement) => symbol(statement) ?? []);
  }
}

const kindSymbols: Readonly<Record<string, SymbolKind>> = {
  shelter: SymbolKind.Class,
  variant: SymbolKind.Class,
  range: SymbolKind.Class,
  site: SymbolKind.Namespace,
  project: SymbolKind.Package,
};

function named(node: Line | Statement, text: string): { name: string; detail: string; kind: SymbolKind } {
  if (isDefinition(node)) {
    const kind = kindSymbols[node.kind] ?? (kindOfDefinition(node) ? SymbolKind.Struct : SymbolKind.Null);
    return { name: node.name ?? node.kind, detail: node.name === undefined ? '' : node.kind, kind };
  }
  if (isFact(node)) {
    const detail = text.slice(node.word.length).replace(/\s+/g, ' ').trim();
    return { name: node.word, detail, kind: node.block ? SymbolKind.Object : SymbolKind.Property };
  }
  if (isLet(node))
    return { name: node.name ?? 'let', detail: node.value?.$cstNode?.text ?? '', kind: SymbolKind.Constant };
  return {
    name: isImport(node) ? (node.path ?? 'import') : 'import',
    detail: 'import',
    kind: SymbolKind.File,
  };
}

export class ShelterLinks implements DocumentLinkProvider {
  private readonly context: () => EditorContext;

  constructor(context: () => EditorContext) {
    this.context = context;
  }

  getDocumentLinks(document: LangiumDocument): DocumentLink[] {
    const { shared, roots } = this.context().view;
    return importsOf(document, shared.workspace.LangiumDocuments, roots).flatMap(
      ({ node, document: target }) => {
        const cst = node.$cstNode;
        if (!cst || !target) return [];
        const start = cst.offset + cst.text.indexOf('"') + 1;
        const end = cst.text.endsWith('"') ? cst.end - 1 : cst.end;
        return [{ range: rangeOf(document, start, end), target: target.uri.toString() }];
      },
    );
  }
}

export class ShelterSignature implements SignatureHelpProvider {
  readonly signatureHelpOptions = { triggerCharacters: [' '], retriggerCharacters: [' '] };

  provideSignatureHelp(
    document: LangiumDocument,
    { position }: SignatureHelpParams,
  ): SignatureHelp | undefined {
    const here = lineAt(document, document.textDocument.offsetAt(position));
    if (!here) return undefined;
    const { entry, pieces } = expectedAfter(here.entry, here.before);
    const parts = patternOf(entry);
    const next = pieces.find((piece) => piece.type !== 'optional');
    const active = parts.findIndex((part, index) => {
      if (!next || index === 0) return false;
      return next.type === 'slot'
        ? part.slot === next.slot
        : part.text.replace(/[[\]]/g, '') === (next.type === 'literal' ? next.word : '');
    });
    let at = 0;
    const parameters = parts.map(({ text }) => {
      const label: [number, number] = [at, at + text.length];
      at += text.length + 1;
      return { label };
    });
    const label = parts.map(({ text }) => text).join(' ');
    return {
      signatures: [{ label, documentation: entry.doc, parameters }],
      activeSignature: 0,
      activeParameter: active < 0 ? parts.length : active,
    };
  }
}

/** Word, line, block, definition, file: each selection holds the one before. */
export function selectionRanges(document: LangiumDocument, positions: readonly Position[]): SelectionRange[] {
  const file = fileOf(document);
  const text = document.textDocument.getText();
  return positions.map((position) => {
    const offset = document.textDocument.offsetAt(position);
    const spans: (readonly [number, number])[] = [[0, text.length]];
    const visit = (node: Line | Statement): void => {
      const cst = node.$cstNode;
      if (!cst || offset < cst.offset || offset > cst.end) return;
      spans.push([cst.offset, cst.end]);
      const line = lineSpan(node);
      if (offset >= line.start && offset <= line.end) spans.push([line.start, line.end]);
      const block = 'block' in node ? node.block : undefined;
      if (block?.$cstNode && offset > block.$cstNode.offset && offset < block.$cstNode.end) {
        spans.push([block.$cstNode.offset, block.$cstNode.end]);
        for (const fact of block.facts) visit(fact);
      } else if ('atoms' in node) {
        const atom = node.atoms.find(
          ({ $cstNode }) => $cstNode && $cstNode.offset <= offset && offset <= $cstNode.end,
        );
        if (atom?.$cstNode) spans.push([atom.$cstNode.offset, atom.$cstNode.end]);
      }
    };
    for (const statement of file?.statements ?? []) visit(statement);
    let selection: SelectionRange | undefined;
    for (const [start, end] of spans) {
      const range = rangeOf(document, start, end);
      selection = selection ? { range, parent: selection } : { range };
    }
    return selection ?? { range: { start: position, end: position } };
  });
}

export class ShelterFormatter implements Formatter {
  readonly formatOnTypeOptions = undefined;

  formatDocument(document: LangiumDocument): TextEdit[] {
    if (isCatalogue(document.uri)) return [];
    const text = document.textDocument.getText();
    const after = formatText(text);
    return after === text ? [] : smallestEdit(document, text, after);
  }

  /** Lines of the range where the layout keeps all lines; else the whole text. */
  formatDocumentRange(document: LangiumDocument, { range }: DocumentRangeFormattingParams): TextEdit[] {
    const edits = this.formatDocument(document);
    const whole = edits.some((edit) => edit.range.start.line !== edit.range.end.line);
    return whole
      ? edits
      : edits.filter(
          (edit) => edit.range.start.line >= range.start.line && edit.range.start.line <= range.end.line,
        );
  }

  formatDocumentOnType(): TextEdit[] {
    return [];
  }
}

/** Line by line where the lines still match up, so that the cursor and marks stay; else one edit. */
function smallestEdit(document: LangiumDocument, before: string, after: string): TextEdit[] {
  const old = before.split('\n');
  const fresh = after.split('\n');
  if (old.length === fresh.length) {
    return old.flatMap((line, row) => {
      const text = fresh[row] ?? '';
      const range = { start: { line: row, character: 0 }, end: { line: row, character: line.length } };
      return line === text ? [] : [{ range, newText: text }];
    });
  }
  return [{ range: rangeOf(document, 0, before.length), newText: after }];
}
