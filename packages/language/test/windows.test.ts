/** Files as they come from Windows and from other hands: line ends, tabs, byte order marks, names beyond ASCII. */
import { afterEach, describe, expect, it } from 'vitest';
import type { CodeAction, Diagnostic, LocationLink } from 'vscode-languageserver';
import { loadWorkspace } from '../src/index.ts';
import type { AssumedAnswer, PreviewAnswer } from '../src/protocol.ts';
import { applied, type Editor, startEditor } from './editor.ts';

const folder = 'file:///c%3A/Users/G%C3%A4rtner/gully';
const uri = `${folder}/h%C3%BCtte%20am%20hang.shelter`;
const siteUri = `${folder}/site.shelter`;
const site = 'site terrace { gust 42 m/s; soil loam; rain 110 mm/h }\r\n';
const house = [
  'import "site.shelter"',
  '/** Für Setzlinge 🌱: 3 Reihen. */',
  'shelter plug-house on terrace {',
  '\tfootprint 14 ft by 40 ft // größer als nötig',
  '\tbows spaced 4 ft of pvc40-25 { shape elastic; rise 7 ft; foot stub of rebar-12 { length 4 ft; deep 2 ft } }',
  '\tcover roof with film-uv-150 { fastened by channel-spring; installed 2026-03-01 }',
  '}',
  '',
].join('\r\n');

let editor: Editor;

const open = async (text: string): Promise<void> => {
  editor = await startEditor({}, folder);
  await editor.open(siteUri, site);
  await editor.open(uri, text);
};
const actionsAt = (diagnostic: Diagnostic | undefined): Promise<CodeAction[]> =>
  editor.ask('textDocument/codeAction', {
    textDocument: { uri },
    range: diagnostic?.range,
    context: { diagnostics: diagnostic ? [diagnostic] : [] },
  });
const editsOf = (action: CodeAction | undefined) => action?.edit?.changes?.[uri] ?? [];

describe('a file with the line ends of Windows, tabs and letters beyond ASCII', () => {
  afterEach(() => editor.close());

  it('finds its import on a drive, and goes there', async () => {
    await open(house);
    const list = await editor.diagnostics(uri, (all) => all.some(({ code }) => code === 'pull-out'));
    expect(list.filter(({ code }) => ['import', 'unknown-name'].includes(String(code)))).toEqual([]);
    const [place] = await editor.ask<LocationLink[]>('textDocument/definition', {
      textDocument: { uri },
      position: { line: 2, character: 24 },
    });
    expect(place).toMatchObject({ targetUri: siteUri });
    const preview = await editor.ask<PreviewAnswer>('tautline/preview', { uri });
    expect(preview.shelters[0]).toMatchObject({ name: 'plug-house', title: 'Für Setzlinge 🌱: 3 Reihen.' });
  });

  it('has its squiggles under the words, and its fixes in place', async () => {
    const wrong = house.replace('14 ft by', '14 by').replace('\tcover roof', '\t/* 🌱 */ cover rooof');
    await open(wrong);
    const list = await editor.diagnostics(uri, (all) => all.some(({ code }) => code === 'needs-unit'));
    const unit = list.find(({ code }) => code === 'needs-unit');
    expect(unit?.range).toEqual({ start: { line: 3, character: 11 }, end: { line: 3, character: 13 } });
    const word = list.find(({ range }) => range.start.line === 5);
    // A sprout takes two places, as the editor counts.
    expect(word?.range).toEqual({ start: { line: 5, character: 16 }, end: { line: 5, character: 21 } });
    const [roof] = await actionsAt(word);
    expect(applied(wrong, editsOf(roof))).toBe(wrong.replace('rooof', 'roof'));
  });

  it('keeps its line ends where a fix or assumed values add lines', async () => {
    await open(house);
    const list = await editor.diagnostics(uri, (all) => all.some(({ code }) => code === 'pull-out'));
    const actions = await actionsAt(list.find(({ code }) => code === 'pull-out'));
    const accepted = applied(house, editsOf(actions.find(({ title }) => title.startsWith('Accept'))));
    expect(accepted).toContain('accept pull-out because "say why"');
    const { edits } = await editor.ask<AssumedAnswer>('tautline/assumed', { uri });
    const written = applied(house, edits as Parameters<typeof applied>[1]);
    expect(written.length).toBeGreaterThan(house.length + 20);
    for (const text of [accepted, written]) {
      expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
      expect(text).toContain('// größer als nötig\r\n');
    }
    await editor.change(uri, written);
    const after = await editor.diagnostics(uri, (all) => all.some(({ code }) => code === 'pull-out'));
    expect(after.filter(({ severity, code }) => severity === 1 && code === 'syntax')).toEqual([]);
  });
});

it('reads a file that begins with a byte order mark, and counts places as an editor does', async () => {
  const text = `\ufeff${house.replace('14 ft by', '14 by')}`;
  const loaded = await loadWorkspace([{ uri, text }], (wanted) =>
    wanted === siteUri ? `\ufeff${site}` : undefined,
  );
  expect(loaded.shelters.map(({ name }) => name)).toEqual(['plug-house']);
  expect(loaded.problems.map(({ id, from }) => [id, from])).toEqual([
    ['needs-unit', { line: 3, character: 11 }],
  ]);
  const first = await loadWorkspace([{ uri, text: '\ufeffimportt "site.shelter"\n' }], () => undefined);
  expect(first.problems[0]?.from).toEqual({ line: 0, character: 0 });
});
