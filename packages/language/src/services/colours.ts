/** Semantic colours: what each word is, which a pattern alone cannot tell. */
import type { AstNode } from 'langium';
import { AbstractSemanticTokenProvider, type SemanticTokenAcceptor } from 'langium/lsp';
import { SemanticTokenModifiers, SemanticTokenTypes } from 'vscode-languageserver';
import {
  type File,
  isComparison,
  isDay,
  isDefinition,
  isFact,
  isFile,
  isImport,
  isLet,
  isName,
  isQuantity,
  isText,
} from '../generated/ast.ts';
import { matchOf } from '../match/match-file.ts';
import { scanQuantity } from '../text/quantity-text.ts';

export class ShelterColours extends AbstractSemanticTokenProvider {
  protected override highlightElement(node: AstNode, accept: SemanticTokenAcceptor): void {
    if (isDefinition(node)) {
      accept({ node, property: 'kind', type: SemanticTokenTypes.keyword });
      if (node.name !== undefined)
        accept({
          node,
          property: 'name',
          type: SemanticTokenTypes.type,
          modifier: SemanticTokenModifiers.declaration,
        });
    } else if (isLet(node)) {
      accept({
        node,
        property: 'name',
        type: SemanticTokenTypes.variable,
        modifier: SemanticTokenModifiers.declaration,
      });
    } else if (isImport(node)) {
      accept({ node, property: 'path', type: SemanticTokenTypes.string });
    } else if (isFact(node)) {
      const file = rootOf(node);
      const known = file && matchOf(file).lines.has(node);
      if (known)
        accept({
          node,
          property: 'word',
          type: node.block ? SemanticTokenTypes.class : SemanticTokenTypes.property,
        });
    } else if (isText(node)) accept({ node, property: 'text', type: SemanticTokenTypes.string });
    else if (isDay(node)) accept({ node, property: 'date', type: SemanticTokenTypes.number });
    else if (isComparison(node)) accept({ node, property: 'operator', type: SemanticTokenTypes.operator });
    else if (isQuantity(node)) this.quantity(node, accept);
    else if (isName(node)) this.name(node, accept);
  }

  private quantity(node: AstNode & { readonly text: string }, accept: SemanticTokenAcceptor): void {
    const start = node.$cstNode?.range.start;
    if (!start || node.text === undefined) return;
    const part = (at: number, length: number, type: string): void =>
      accept({ line: start.line, char: start.character + at, length, type });
    for (const { number, numberStart, unit, unitStart } of scanQuantity(node.text, 0)?.parts ?? []) {
      part(numberStart, number.length, SemanticTokenTypes.number);
      if (unit !== undefined) part(unitStart ?? 0, unit.length, SemanticTokenTypes.decorator);
    }
  }

  private name(
    node: Parameters<ReturnType<typeof matchOf>['roles']['get']>[0],
    accept: SemanticTokenAcceptor,
  ): void {
    const file = rootOf(node);
    const role = file && matchOf(file).roles.get(node);
    const type = ((): string | undefined => {
      switch (role?.type) {
        case 'literal':
          return SemanticTokenTypes.macro;
        case 'clause':
          return SemanticTokenTypes.property;
        case 'value':
          return SemanticTokenTypes.variable;
        case 'slot':
          if (role.takes.type === 'item' || role.takes.type === 'definition') return SemanticTokenTypes.type;
          return role.takes.type === 'check' ? SemanticTokenTypes.event : SemanticTokenTypes.enumMember;
        default:
          return undefined;
      }
    })();
    if (type !== undefined) accept({ node, property: 'ref', type });
  }
}

function rootOf(node: AstNode): File | undefined {
  let at: AstNode | undefined = node;
  while (at?.$container) at = at.$container;
  return isFile(at) ? at : undefined;
}
