import { mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { originOf } from '@tautline/shelter';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type {
  CodeAction,
  CompletionList,
  DocumentLink,
  DocumentSymbol,
  Hover,
  Location,
  LocationLink,
  SelectionRange,
  SemanticTokens,
  SignatureHelp,
  SymbolInformation,
  TextEdit,
  WorkspaceEdit,
} from 'vscode-languageserver';
import { builtInCatalogue } from '../src/files/catalogue.ts';
import { loadWorkspace } from '../src/index.ts';
import { GuardedFiles } from '../src/node-door.ts';
import { definitionText } from '../src/services/hover.ts';
import { titleOf } from '../src/services/item-text.ts';
import { applied, type Editor, startEditor, withCursor } from './editor.ts';
import { houseText, houseUri, houseWith, itemsText, itemsUri } from './house.ts';

const catalogue = [
  {
    uri: 'tautline-catalogue:/film.shelter',
    text: '/** Film from the shelf. Source: made up. */\nfilm shelf-film { thickness 6 mil; density 925 kg/m3; grade greenhouse; life 4 yr; yields at 12 MPa; modulus 200 MPa }\n',
  },
];

let editor: Editor;
beforeAll(async () => {
  editor = await startEditor({
    catalogue,
    explanation: (check) => `https://example.invalid/checks/${check}`,
  });
  await editor.open(itemsUri, itemsText);
  await editor.open(houseUri, houseText);
});
afterAll(() => editor.close());

const textDocument = { uri: houseUri };

/** Puts a text with a cursor into the house, and asks about the place. */
async function askAt<T>(method: string, marked: string, more: object = {}): Promise<T> {
  const { text, position } = withCursor(marked);
  await editor.change(houseUri, text);
  return editor.ask<T>(method, { textDocument, position, ...more });
}

const labels = async (line: string): Promise<string[]> => {
  const list = await askAt<CompletionList | null>('textDocument/completion', houseWith(line));
  return (list?.items ?? []).map(({ label }) => label);
};

describe('completion', () => {
  it('offers the facts of the block that are not said yet, the needed ones first', async () => {
    const list = await askAt<CompletionList>('textDocument/completion', houseWith('|'));
    const words = list.items.map(({ label }) => label);
    expect(words).toContain('ridge');
    expect(words).toContain('cover');
    expect(words).not.toContain('footprint');
    expect(words).not.toContain('rise');
    const ridge = list.items.find(({ label }) => label === 'ridge');
    expect(ridge?.insertTextFormat).toBe(2);
    // biome-ignore lint/suspicious/noTemplateCurlyInString: the editor's snippet notation
    expect(ridge?.textEdit?.newText).toBe('ridge ${1|rail,pipe,cable|} {\n\tof ${2:item}\n\t$0\n}');
  });

  it.each<[string, string[]]>([
    ['sides |', ['open', 'clad', 'screened']],
    ['sides o|', ['open', 'clad', 'screened']],
    ['cover roof with |', ['clear-150', 'shelf-film']],
    ['ridge rail of |', ['white-25', 'bar-12']],
    ['orientation 20 |', ['deg']],
    ['orientation 20 d|', ['deg']],
    ['orientation 20|', ['20 deg']],
    ['footprint 3 m |', ['by']],
    ['footprint 3 |', ['m', 'mm', 'ft', 'in']],
    ['footprint 3 m by 4 |', ['m', 'mm', 'ft', 'in']],
    ['require |', ['headroom', 'ridge-height', 'clear-width']],
    ['require headroom |', ['>=', '<=', '>', '<']],
    ['note "a |', []],
    ['// cover |', []],
  ])('%s', async (line, expected) => {
    expect(await labels(line)).toEqual(expected);
  });

  it('offers clauses where a sentence is complete, and optional parts of it', async () => {
    expect(await labels('foo\n  bows spaced 3 ft |')).toEqual(
      expect.arrayContaining(['of', 'shape', 'rise', 'foot']),
    );
    expect(await labels('gutter sides across 4 in |')).toEqual(expect.arrayContaining(['depth', 'fall']));
    expect(await labels('cover sides fastened by |')).toEqual([]);
    expect(await labels('require headroom >= 3 m |')).toEqual(expect.arrayContaining(['at']));
  });

  it('offers files to import', async () => {
    const list = await askAt<CompletionList>(
      'textDocument/completion',
      houseText.replace('"items.shelter"', '"i|"'),
    );
    expect(list.items.map(({ textEdit }) => textEdit)).toEqual([
      {
        range: { start: { line: 0, character: 8 }, end: { line: 0, character: 9 } },
        newText: 'items.shelter',
      },
    ]);
  });

  it('offers checks by id', async () => {
    expect(await labels('accept |')).toEqual(expect.arrayContaining(['film-ponding', 'over-span']));
  });

  it('offers kinds of definition at the level of the file', async () => {
    const list = await askAt<CompletionList>('textDocument/completion', `${houseText}\n|`);
    expect(list.items.map(({ label }) => label)).toEqual(
      expect.arrayContaining(['site', 'shelter', 'pipe', 'import', 'let']),
    );
  });
});

describe('hover', () => {
  const hover = async (marked: string): Promise<string> => {
    const result = await askAt<Hover | null>('textDocument/hover', marked);
    return (result?.contents as { value: string } | undefined)?.value ?? '';
  };

  it('shows a quantity in both systems, and what a calculation comes to', async () => {
    expect(await hover(houseText.replace('14 ft', '1|4 ft'))).toContain('**14 ft (4.27 m)**');
    expect(await hover(houseText.replace('spaced bay', 'spaced b|ay'))).toContain(
      '`bay` = **4 ft (1.22 m)**',
    );
  });

  it('says what a fact means', async () => {
    expect(await hover(houseText.replace('rise 7', 'r|ise 7'))).toMatch(/Height of the crown/);
    expect(await hover(houseText.replace('lean 85', 'le|an 85'))).toMatch(/Lean of the stub/);
    expect(await hover(houseText.replace('shape elastic', 'shape ela|stic'))).toMatch(/sprung into its arch/);
  });

  it('shows an item with its numbers and their source', async () => {
    const text = await hover(houseText.replace('of white-25', 'of whi|te-25'));
    expect(text).toContain('**white-25** (pipe)');
    expect(text).toContain('outside: 1-5/16 in (33.4 mm)');
    expect(await hover(houseWith('cover ends with shelf|-film'))).toContain('Source: made up.');
  });

  it('shows the source of an item once, and its title without it', async () => {
    const { shelters } = await loadWorkspace([
      { uri: 'file:///gully/any.shelter', text: 'shelter any { }\n' },
    ]);
    const text = definitionText(shelters[0]!.world.definitions.get('pvc80-40')!, 'metric');
    expect(text).toMatch(/^\*\*pvc80-40\*\* \(pipe\): PVC pipe 1-1\/2 in, schedule 80\n/);
    expect(text.match(/Source:/g)).toHaveLength(1);
    const all = builtInCatalogue.map((file) => file.text).join('\n');
    const docs = [...all.matchAll(/\/\*\*((?:(?!\*\/)[\s\S])*)\*\//g)].map(([, doc = '']) =>
      doc.replace(/\n \*/g, '\n'),
    );
    expect(docs.length).toBeGreaterThan(200);
    const titles = docs.map((doc) =>
      titleOf({ word: '', name: '', doc, slots: {}, children: [], origin: originOf('') }),
    );
    expect(titles.filter((title) => title === '' || /Source|\.$/.test(title))).toEqual([]);
    expect(titles).toContain('Rebar no. 5, 5/8 in');
  });
});

describe('going places', () => {
  it('goes from an item to its definition, also in the catalogue', async () => {
    const own = await askAt<(Location | LocationLink)[]>(
      'textDocument/definition',
      houseText.replace('of white-25', 'of whi|te-25'),
    );
    expect(own).toMatchObject([{ targetUri: itemsUri }]);
    const far = await askAt<LocationLink[]>(
      'textDocument/definition',
      houseWith('cover ends with shelf|-film'),
    );
    expect(far).toMatchObject([
      {
        targetUri: 'tautline-catalogue:/film.shelter',
        targetSelectionRange: { start: { line: 1, character: 5 } },
      },
    ]);
    expect(await editor.ask('tautline/catalogue', { uri: 'tautline-catalogue:/none.shelter' })).toBe(null);
  });

  it('finds references and renames across files', async () => {
    const marked = houseText.replace('of white-25', 'of whi|te-25');
    const references = await askAt<Location[]>('textDocument/references', marked, {
      context: { includeDeclaration: true },
    });
    expect(references.map(({ uri }) => uri).sort()).toEqual([houseUri, itemsUri]);
    const edit = await askAt<WorkspaceEdit>('textDocument/rename', marked, { newName: 'ivory-25' });
    expect(applied(houseText, edit.changes?.[houseUri] ?? [])).toBe(
      houseText.replace('white-25', 'ivory-25'),
    );
    expect(applied(itemsText, edit.changes?.[itemsUri] ?? [])).toBe(
      itemsText.replace('white-25', 'ivory-25'),
    );
    await expect(askAt('textDocument/rename', marked, { newName: 'two words' })).rejects.toThrow(/one word/);
    await expect(
      askAt('textDocument/rename', houseWith('cover ends with shelf|-film'), { newName: 'mine' }),
    ).rejects.toThrow(/catalogue cannot be changed/);
  });

  it('does not take ordinary words for references', async () => {
    const at = async (marked: string) => askAt<unknown[] | null>('textDocument/definition', marked);
    expect(await at(houseText.replace('shape elastic', 'shape ela|stic'))).toBeFalsy();
    expect(await at(houseText.replace('ft by 40', 'ft b|y 40'))).toBeFalsy();
  });

  it('links imports, outlines, folds and selects', async () => {
    await editor.change(houseUri, houseText);
    const links = await editor.ask<DocumentLink[]>('textDocument/documentLink', { textDocument });
    expect(links).toMatchObject([
      { target: itemsUri, range: { start: { line: 0, character: 8 }, end: { line: 0, character: 21 } } },
    ]);
    const symbols = await editor.ask<DocumentSymbol[]>('textDocument/documentSymbol', { textDocument });
    expect(symbols.map(({ name }) => name)).toEqual(['"items.shelter"', 'bay', 'terrace', 'plug-house']);
    expect(symbols[3]?.children?.map(({ name }) => name)).toEqual([
      'footprint',
      'bows',
      'cover',
      'crop',
      'require',
    ]);
    const folds = await editor.ask<{ startLine: number }[]>('textDocument/foldingRange', { textDocument });
    expect(folds.map(({ startLine }) => startLine)).toEqual(expect.arrayContaining([5, 11, 13]));
    const [selection] = await editor.ask<SelectionRange[]>('textDocument/selectionRange', {
      textDocument,
      positions: [{ line: 15, character: 10 }],
    });
    const lines: number[] = [];
    for (let at = selection; at; at = at.parent) lines.push(at.range.end.line - at.range.start.line);
    expect(lines).toEqual([...lines].sort((a, b) => a - b));
    expect(lines.length).toBeGreaterThan(3);
    const found = await editor.ask<SymbolInformation[]>('workspace/symbol', { query: 'white' });
    expect(found.map(({ name }) => name)).toContain('white-25');
  });
});

describe('writing', () => {
  it('formats', async () => {
    await editor.change(houseUri, houseText.replace('14 ft by', '14ft  by'));
    const edits = await editor.ask<TextEdit[]>('textDocument/formatting', {
      textDocument,
      options: { tabSize: 2, insertSpaces: true },
    });
    expect(edits.length).toBe(1);
    expect(applied(houseText.replace('14 ft by', '14ft  by'), edits)).toBe(houseText);
  });

  it('shows the sentence being written', async () => {
    const help = await askAt<SignatureHelp>(
      'textDocument/signatureHelp',
      houseWith('season from 2026-11-01 |'),
    );
    const [signature] = help.signatures;
    expect(signature?.label).toBe('season from <from> to <to>');
    const active = signature?.parameters?.[help.activeParameter ?? 0]?.label as [number, number];
    expect(signature?.label.slice(...active)).toBe('to');
  });

  it('colours words by what they are', async () => {
    await editor.change(houseUri, houseText);
    const { data } = await editor.ask<SemanticTokens>('textDocument/semanticTokens/full', { textDocument });
    const legend = editor.capabilities.semanticTokensProvider?.legend.tokenTypes ?? [];
    const lines = houseText.split('\n');
    const coloured: string[] = [];
    for (let i = 0, line = 0, char = 0; i < data.length; i += 5) {
      const [down = 0, right = 0, length = 0, type = 0] = data.slice(i, i + 4);
      line += down;
      char = down === 0 ? char + right : right;
      coloured.push(`${lines[line]?.slice(char, char + length)}: ${legend[type]}`);
    }
    expect(coloured).toEqual(
      expect.arrayContaining([
        'plug-house: type',
        'footprint: property',
        '14: number',
        'ft: decorator',
        'by: macro',
        'bay: variable',
        'white-25: type',
        'elastic: enumMember',
        'spaced: property',
      ]),
    );
  });

  it('offers to add a fact that is missing', async () => {
    const text = houseWith('cover ends');
    await editor.change(houseUri, text);
    const diagnostics = await editor.diagnostics(houseUri, (list) =>
      list.some(({ code }) => code === 'missing-fact'),
    );
    const range = diagnostics.find(({ code }) => code === 'missing-fact')?.range;
    const actions = await editor.ask<CodeAction[]>('textDocument/codeAction', {
      textDocument,
      range,
      context: { diagnostics },
    });
    const action = actions.find(({ title }) => title === 'Add `with film-uv-200`');
    expect(applied(text, action?.edit?.changes?.[houseUri] ?? [])).toBe(
      houseWith('cover ends { with film-uv-200 }'),
    );
  });

  it('offers remedies of language problems', async () => {
    const text = houseWith('orientation 20');
    await editor.change(houseUri, text);
    const diagnostics = await editor.diagnostics(houseUri, (list) =>
      list.some(({ code }) => code === 'needs-unit'),
    );
    const problem = diagnostics.find(({ code }) => code === 'needs-unit');
    const actions = await editor.ask<CodeAction[]>('textDocument/codeAction', {
      textDocument,
      range: problem?.range,
      context: { diagnostics },
    });
    const action = actions.find(({ title }) => title === 'Write `20 deg`');
    expect(applied(text, action?.edit?.changes?.[houseUri] ?? [])).toBe(houseWith('orientation 20 deg'));
  });
});

describe('the workspace on disk', () => {
  it('reads files, follows changes of imports, and forgets what was typed and not saved', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'tautline-'));
    const at = (name: string): string => pathToFileURL(join(folder, name)).toString();
    writeFileSync(join(folder, 'items.shelter'), itemsText);
    writeFileSync(join(folder, 'house.shelter'), houseText);
    writeFileSync(join(folder, 'huge.shelter'), ' '.repeat(9 * 1024 * 1024));
    symlinkSync('/etc/hosts', join(folder, 'hosts.shelter'));
    writeFileSync(join(folder, 'uses-link.shelter'), 'import "hosts.shelter"');
    const disk = await startEditor(
      { catalogue, fileSystem: () => new GuardedFiles() },
      pathToFileURL(folder).toString(),
    );
    const has = (code: string) => (list: readonly { code?: unknown }[]) =>
      list.some((one) => one.code === code);
    const none = (list: readonly unknown[]) => list.length === 0;
    await disk.diagnostics(at('house.shelter'), none);
    await disk.diagnostics(at('huge.shelter'), has('unreadable'));
    await disk.diagnostics(at('uses-link.shelter'), has('import'));
    await disk.open(at('items.shelter'), itemsText);
    await disk.change(at('items.shelter'), itemsText.replace('white-25', 'ivory-25'));
    const broken = await disk.diagnostics(at('house.shelter'), has('unknown-name'));
    expect(broken.map(({ message }) => message)).toEqual([
      expect.stringContaining('There is no pipe, rod, pole or lumber called `white-25`.'),
    ]);
    await disk.client.sendNotification('textDocument/didClose', {
      textDocument: { uri: at('items.shelter') },
    });
    await disk.diagnostics(at('house.shelter'), none);
    await disk.close();
    rmSync(folder, { recursive: true });
  });
});
