/** Several houses in one file: an edit in one is worked out for that one, and everybody is told the same as anew. */
import { exampleSpecs } from '@tautline/checks';
import type { SpecWorld } from '@tautline/shelter';
import { afterEach, describe, expect, it } from 'vitest';
import type { CodeLens, Diagnostic } from 'vscode-languageserver';
import { type Analyst, createInProcessAnalyst } from '../src/analyst/analyst.ts';
import { bearingOn } from '../src/analyst/bearing.ts';
import { countedFor } from '../src/analyst/bill.ts';
import { loadWorkspace } from '../src/index.ts';
import type { PreviewAnswer } from '../src/protocol.ts';
import type { Drawn, Sheets } from '../src/services/sheet-of.ts';
import { type Editor, startEditor } from './editor.ts';

const houseOf = (name: string, spaced: string): string => `shelter ${name} on terrace {
  footprint 14 ft by 40 ft
  bows spaced ${spaced} of pvc40-25 { shape elastic; rise 7 ft; foot stub of rebar-12 { length 4 ft; deep 2 ft } }
  cover roof with film-uv-150 { fastened by channel-spring; installed 2026-03-01 }
}
`;
const file = `site terrace { gust 42 m/s; soil loam; rain 110 mm/h }
project { currency XTS }
prices { price of rebar-12 6.30 per 20 ft }
pipe our-pipe like pvc40-25 { wall 3.4 mm }
${houseOf('plug-house', '4 ft')}
${houseOf('ginger-house', '5 ft').replace('pvc40-25', 'our-pipe')}
variant close-bows of plug-house { bows spaced 3 ft }
variant closer-bows of close-bows { bows spaced 2 ft }
range both { stand 1 of plug-house; stand 1 of ginger-house; gap 0.4 m }
range alone { stand 2 of ginger-house; gap 0.4 m }
`;
const uri = 'file:///gully/several.shelter';
const everything = ['plug-house', 'ginger-house', 'close-bows', 'closer-bows', 'both', 'alone'] as const;

/** What was typed, and which results it makes a difference to. */
const edits: readonly (readonly [from: string, to: string, of: readonly string[]])[] = [
  ['spaced 4 ft', 'spaced 3.9 ft', ['plug-house', 'close-bows', 'closer-bows', 'both']],
  ['spaced 5 ft', 'spaced 4.9 ft', ['ginger-house', 'both', 'alone']],
  ['spaced 3 ft', 'spaced 2.9 ft', ['close-bows', 'closer-bows']],
  ['spaced 2 ft', 'spaced 1.9 ft', ['closer-bows']],
  ['stand 2 of ginger', 'stand 3 of ginger', ['alone']],
  ['gust 42', 'gust 40', everything],
  ['wall 3.4', 'wall 3.5', everything],
  ['rebar-12 6.30', 'rebar-12 7.30', []],
  ['range both', '// only words\nrange both', []],
  ['rebar-12 7.30', 'rebar-12 8.30', []],
];

const open: Editor[] = [];
afterEach(async () => {
  for (const editor of open.splice(0)) await editor.close();
});

/** An editor that writes down which results it has worked out, gusts aside. */
async function asking() {
  const real = createInProcessAnalyst();
  const asked: string[] = [];
  const analyse: Analyst['analyse'] = (world, name, options, token) => {
    if (options?.gusts !== true) asked.push(name);
    return real.analyse(world, name, options, token);
  };
  const editor = await startEditor({ analyst: { ...real, analyse }, sheets });
  open.push(editor);
  return { editor, asked };
}

/** Sheets with nothing on them but what things cost. */
const summed = (what: Parameters<typeof countedFor>[0], world: SpecWorld): Drawn => ({
  ...{ drawings: [], parts: [], materials: [] },
  facts: [{ label: 'Cost', value: String(countedFor(what, world).cost.total) }],
});
const sheets: Sheets = {
  draw: ({ shelter }, world) => summed(shelter, world),
  drawRange: ({ range }, world) => summed(range, world),
};

const costs = async (editor: Editor): Promise<readonly (string | undefined)[]> => {
  const lenses = await editor.ask<CodeLens[]>('textDocument/codeLens', { textDocument: { uri } });
  return lenses.map(({ command }) => command?.title).filter((title) => title?.startsWith('cost: '));
};

const told = (list: readonly Diagnostic[]): readonly string[] =>
  list
    .map(({ code, message, range }) => `${range.start.line}:${range.start.character} ${code} ${message}`)
    .filter((one) => !/order of failure/.test(one))
    .sort();

const shown = async (editor: Editor): Promise<unknown> => {
  const { shelters } = await editor.ask<PreviewAnswer>('tautline/preview', { uri });
  return shelters.map(({ gustsOld: _late, ...rest }) => rest);
};

describe('several houses in one file', () => {
  it('are worked out again only where an edit bears on them, and come to what a fresh start comes to', async () => {
    const { editor, asked } = await asking();
    const first = editor.evaluated();
    await editor.open(uri, file);
    await first;
    expect([...asked].sort()).toEqual([...everything].sort());
    let text = file;
    for (const [from, to, of] of edits) {
      expect(text).toContain(from);
      text = text.replace(from, to);
      asked.length = 0;
      await editor.settled(uri, text);
      expect([...asked].sort(), to).toEqual([...of].sort());
      const { editor: fresh } = await asking();
      const opened = fresh.evaluated();
      await fresh.open(uri, text);
      await opened;
      expect(await shown(editor), to).toEqual(await shown(fresh));
      const [cost, anewCost] = [await costs(editor), await costs(fresh)];
      expect(cost, to).toEqual(anewCost);
      expect(cost[0], to).toMatch(/^cost: XTS \d/);
      const [now, anew] = [editor, fresh].map((one) =>
        one.diagnostics(uri, (list) => list.some(({ code }) => code === 'pull-out')),
      );
      expect(told((await now) ?? []), to).toEqual(told((await anew) ?? []));
    }
  }, 120_000);

  it('are looked at again while something about them is wrong, whatever was edited', async () => {
    const { editor, asked } = await asking();
    const first = editor.evaluated();
    await editor.open(uri, file.replace('our-pipe {', 'no-such-pipe {'));
    await first;
    asked.length = 0;
    await editor.settled(
      uri,
      file.replace('our-pipe {', 'no-such-pipe {').replace('spaced 2 ft', 'spaced 1 ft'),
    );
    expect([...asked].sort()).toEqual(['alone', 'both', 'closer-bows', 'ginger-house']);
  });
});

describe('the sheet of one house of many', () => {
  const preview = (editor: Editor, one: string) =>
    editor.ask<PreviewAnswer>('tautline/preview', { uri, one });

  it('is answered as soon as that one is worked out, and belongs to the text as it is then', async () => {
    const real = createInProcessAnalyst();
    const begun: string[] = [];
    let letGo: () => void = () => undefined;
    const held = new Promise<void>((resolve) => {
      letGo = resolve;
    });
    const editor = await startEditor({
      analyst: {
        ...real,
        analyse: async (world, name, options, token) => {
          begun.push(name);
          if (name !== 'plug-house' && name !== 'both') await held;
          return real.analyse(world, name, options, token);
        },
      },
    });
    open.push(editor);
    await editor.open(uri, file);
    for (const [asked, one] of [
      ['', 'plug-house'],
      ['plug-house', 'plug-house'],
      ['both', 'both'],
      ['no-such-house', 'plug-house'],
    ] as const) {
      const answer = await preview(editor, asked);
      expect(answer.one, asked).toBe(one);
      expect(answer.names.map(({ name }) => name)).toEqual(everything);
      expect(answer.shelters.map(({ name, stale }) => [name, stale])).toEqual([[one, undefined]]);
      expect(answer.broken).toBe(undefined);
    }
    expect(begun).toContain('ginger-house');
    const evaluated = editor.evaluated();
    letGo();
    await evaluated;
    const moved = file.replace('spaced 4 ft', 'spaced 3 ft');
    const again = editor.settled(uri, moved);
    const early = (await preview(editor, 'plug-house')).shelters[0];
    await again;
    const all = (await editor.ask<PreviewAnswer>('tautline/preview', { uri })).shelters;
    const { gustsOld: _early, ...rest } = early!;
    const { gustsOld: _late, ...same } = all[0]!;
    expect(rest).toEqual(same);
  });

  it('keeps to its name while the text in which it stood cannot be read', async () => {
    const { editor } = await asking();
    const first = editor.evaluated();
    await editor.open(uri, file);
    await first;
    await editor.change(uri, file.replace('shelter ginger-house on', 'shelter "ginger-house on'));
    const lost = await preview(editor, 'ginger-house');
    expect(lost).toMatchObject({ one: 'ginger-house', shelters: [] });
    expect(lost.broken).toBeTruthy();
    expect((await preview(editor, 'plug-house')).shelters[0]?.name).toBe('plug-house');
  });

  it('is told of, as last worked out, while its name is lost, and forgotten when it is taken away', async () => {
    const { editor } = await asking();
    const first = editor.evaluated();
    await editor.open(uri, file);
    await first;
    const lenses = async () =>
      (await editor.ask<CodeLens[]>('textDocument/codeLens', { textDocument: { uri } })).map(
        ({ range, command }) => `${range.start.line}: ${command?.title}`,
      );
    const lines = (of: readonly string[]) => of.map((one) => Number.parseInt(one, 10)).sort((a, b) => a - b);
    const before = await lenses();
    const line = file.split('\n').findIndex((one) => one.startsWith('shelter ginger-house'));
    expect(before.filter((one) => one.startsWith(`${line}: `)).length).toBe(3);
    for (const hidden of ['shelter "ginger-house on', 'shelter {']) {
      await editor.settled(uri, file.replace('shelter ginger-house on', hidden));
      expect(lines(await lenses()), hidden).toEqual(lines(before));
      const told = await editor.diagnostics(uri, (list) =>
        list.some(({ message }) => message.endsWith('last be worked out.)')),
      );
      expect(told.some(({ range }) => range.start.line > line && range.start.line < line + 4)).toBe(true);
    }
    // For a moment it has a name that means something else here.
    await editor.settled(uri, file.replace('shelter ginger-house on', 'shelter'));
    expect(lines(await lenses())).toEqual(lines(before));
    await editor.settled(uri, file);
    expect((await lenses()).filter((one) => /as last worked out/.test(one))).toEqual([]);
    const away = file.replace(/shelter ginger-house[\s\S]*?\n}\n/, '');
    expect(away).not.toContain('shelter ginger-house');
    await editor.settled(uri, away);
    expect((await lenses()).length).toBe(before.length - 3);
  });

  it('is empty where a file has none', async () => {
    const { editor } = await asking();
    await editor.open(uri, 'site here { gust 42 m/s }\n');
    expect(await preview(editor, '')).toMatchObject({ names: [], shelters: [] });
    await editor.change(uri, 'shelter { \n');
    expect(await preview(editor, 'gone')).toMatchObject({ names: [], shelters: [] });
  });
});

describe('what bears on a house', () => {
  it('is everything but the houses that it does not name', async () => {
    const { good } = exampleSpecs('neighbour-gap')!;
    const { shelters } = await loadWorkspace([{ uri, text: `${file}${good}` }]);
    const { world } = shelters.find(({ name }) => name === 'plug-house')!;
    for (const { name } of shelters) {
      const said = bearingOn(name, world);
      expect(said).toContain(`${name}#`);
      expect(said).toContain('our-pipe#');
    }
    expect(bearingOn('plug-house', world)).not.toContain('ginger-house#');
    expect(bearingOn('closer-bows', world)).toContain('plug-house#');
    expect(bearingOn('both', world)).toContain('ginger-house#');
    // Nobody's: a house that is not there, and a variant of itself.
    expect(bearingOn('nobody', world)).toContain('terrace#');
    const round = await loadWorkspace([{ uri, text: 'variant one of two { }\nvariant two of one { }\n' }]);
    expect(bearingOn('one', round.shelters[0]!.world)).toContain('two#');
  });
});
