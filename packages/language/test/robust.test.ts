import fc from 'fast-check';
import { URI } from 'langium';
import { afterAll, describe, expect, it } from 'vitest';
import { createInProcessAnalyst } from '../src/analyst/analyst.ts';
import { createInPlaceWork } from '../src/analyst/long-work.ts';
import { createServerServices } from '../src/services/lsp-module.ts';
import { selectionRanges } from '../src/services/outline.ts';
import { houseText, houseUri, itemsText, itemsUri } from './house.ts';

const services = createServerServices(undefined, {
  catalogue: [],
  analyst: createInProcessAnalyst(),
  longWork: createInPlaceWork({}),
});
const { LangiumDocuments, DocumentBuilder } = services.shared.workspace;
afterAll(() => services.analyses.dispose());

async function open(text: string) {
  const uri = URI.parse(houseUri);
  LangiumDocuments.deleteDocument(uri);
  const added = [LangiumDocuments.createDocument(uri, text)];
  const items = URI.parse(itemsUri);
  if (!LangiumDocuments.hasDocument(items)) added.push(LangiumDocuments.createDocument(items, itemsText));
  await DocumentBuilder.build(added, { validation: true });
  return added[0]!;
}

describe('editor services', () => {
  it('answer at every place of every half-typed text', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.nat(houseText.length),
        fc.constantFrom('', ' ', '{', '"', ' 3 ', ' of ', '\n  co', '(', ' - ', '/*', '}'),
        fc.nat(houseText.length),
        async (cut, put, cursor) => {
          const text = houseText.slice(0, cut) + put;
          const document = await open(text);
          const position = document.textDocument.positionAt(Math.min(cursor, text.length));
          const end = document.textDocument.positionAt(text.length);
          const textDocument = { uri: houseUri };
          const { lsp } = services.language;
          const range = { start: { line: 0, character: 0 }, end };
          for (const place of [position, end]) {
            const at = { textDocument, position: place };
            const list = await lsp.CompletionProvider?.getCompletion(document, at);
            for (const { label, textEdit } of list?.items ?? []) {
              expect(label).not.toMatch(/undefined|NaN/);
              expect(textEdit).toBeDefined();
            }
            const hover = await lsp.HoverProvider?.getHoverContent(document, at);
            expect(JSON.stringify(hover ?? '')).not.toMatch(/undefined|NaN/);
            await lsp.SignatureHelp?.provideSignatureHelp(document, at);
            await lsp.DefinitionProvider?.getDefinition(document, at);
            await lsp.RenameProvider?.prepareRename(document, at);
            selectionRanges(document, [place]);
          }
          await lsp.DocumentSymbolProvider?.getSymbols(document, { textDocument });
          await lsp.FoldingRangeProvider?.getFoldingRanges(document, { textDocument });
          await lsp.SemanticTokenProvider?.semanticHighlight(document, { textDocument });
          await lsp.CodeActionProvider?.getCodeActions(document, {
            textDocument,
            range,
            context: { diagnostics: [] },
          });
          await lsp.DocumentLinkProvider?.getDocumentLinks(document, { textDocument });
          for (const { range: shown, message } of document.diagnostics ?? []) {
            expect(document.textDocument.offsetAt(shown.end)).toBeGreaterThanOrEqual(
              document.textDocument.offsetAt(shown.start),
            );
            expect(message.length).toBeGreaterThan(5);
          }
        },
      ),
      { numRuns: 120 },
    );
  });
});
