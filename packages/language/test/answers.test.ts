/** What a shelter's lines answer: explanations, prices of fixes, ranges, severities, and fixing all slips at once. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CodeAction, CodeLens, Diagnostic } from 'vscode-languageserver';
import { type Analyst, createInProcessAnalyst } from '../src/analyst/analyst.ts';
import { templateFor, textOfTemplate } from '../src/files/templates.ts';
import { type CalculationAnswer, explainedCheck, type PreviewAnswer } from '../src/protocol.ts';
import type { Sheets } from '../src/services/sheet-of.ts';
import { applied, type Editor, startEditor } from './editor.ts';

const site = 'site terrace { gust 42 m/s; soil loam; rain 110 mm/h }\n';
const shelter = `shelter plug-house on terrace {
  footprint 14 ft by 40 ft
  bows spaced 4 ft of pvc40-25 { shape elastic; rise 7 ft; foot stub of rebar-12 { length 4 ft; deep 2 ft } }
  cover roof with film-uv-150 { fastened by channel-spring; installed 2026-03-01 }
}
`;
const prices = `project { currency XTS }
prices { price of pvc40-25 4.20 per 20 ft; price of rebar-12 6.30 per 20 ft }
`;
const uri = 'file:///gully/own.shelter';
const rangeUri = 'file:///gully/range.shelter';
const textDocument = { uri };

let editor: Editor;
let found: readonly Diagnostic[];
beforeAll(async () => {
  editor = await startEditor();
  await editor.open(uri, `${prices}${site}${shelter}`);
  found = await editor.diagnostics(uri, (list) => list.some(({ code }) => code === 'pull-out'));
}, 30_000);
afterAll(() => editor.close());

const actionsAt = (diagnostic: Diagnostic | undefined, only?: string[]): Promise<CodeAction[]> =>
  editor.ask('textDocument/codeAction', {
    textDocument,
    range: diagnostic?.range ?? { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } },
    context: { diagnostics: diagnostic ? [diagnostic] : [], ...(only ? { only } : {}) },
  });

describe('explanations', () => {
  it('are linked from findings, and nothing else is such a link', () => {
    const link = found.find(({ code }) => code === 'pull-out')?.codeDescription?.href;
    expect(link).toBe('tautline-check:/pull-out.md');
    expect(explainedCheck(link ?? '')).toBe('pull-out');
    for (const at of [
      'tautline-check:/../pull-out.md',
      'file:///pull-out.md',
      'tautline-check:/pull-out',
      '',
    ])
      expect(explainedCheck(at), at).toBe(undefined);
  });

  it('are not linked from slips of writing', async () => {
    await editor.change(uri, `${prices}${site}${shelter.replace('14 ft by', '14 by')}`);
    const problems = await editor.diagnostics(uri, (list) => list.some(({ code }) => code === 'needs-unit'));
    expect(problems.find(({ code }) => code === 'needs-unit')?.codeDescription).toBe(undefined);
    await editor.change(uri, `${prices}${site}${shelter}`);
    await editor.diagnostics(uri, (list) => !list.some(({ code }) => code === 'needs-unit'));
  });
});

describe('prices', () => {
  it('stand in a lens, with what has none', async () => {
    const lenses = await editor.ask<CodeLens[]>('textDocument/codeLens', { textDocument });
    expect(lenses.map(({ command }) => command?.title)).toContainEqual(
      expect.stringMatching(/^cost: XTS \d+\.\d\d, \d+ without a price$/),
    );
  });

  it('stand beside a fix as what it adds', async () => {
    const actions = await actionsAt(found.find(({ code }) => code === 'frame-ponding'));
    const title = actions.map((one) => one.title).find((one) => one.startsWith('Space the bows'));
    // More bows are more pipe and rod, all of which have a price here.
    expect(title).toMatch(/% used after, \+XTS \d+\.\d\d\)$/);
  });

  it('are left out where they would compare different things', async () => {
    const actions = await actionsAt(found.find(({ code }) => code === 'pull-out'));
    const fixes = actions.filter(({ title }) => title.includes('% used after'));
    // Concrete has no price, so what a foot of it adds cannot be said.
    expect(fixes.length).toBeGreaterThan(0);
    expect(fixes.every(({ title }) => /% used after\)$/.test(title))).toBe(true);
  });
});

describe('a range', () => {
  const range = 'range row { stand 3 of plug-house; gap 16 in; tied by wire-4 every 8 ft }\n';

  it('shows at its line what fails in a shelter of another file', async () => {
    await editor.change(uri, `${site}${shelter}`);
    found = await editor.diagnostics(uri, (list) =>
      list.some(({ code, range }) => code === 'pull-out' && range.start.line === 3),
    );
    await editor.open(rangeUri, `import "own.shelter"\n${range}`);
    const list = await editor.diagnostics(rangeUri, (all) => all.some(({ code }) => code === 'pull-out'));
    const pullOut = list.find(({ code }) => code === 'pull-out');
    expect(pullOut?.message).toMatch(/^plug-house: Wind pulls/);
    expect(pullOut?.range).toEqual({ start: { line: 1, character: 12 }, end: { line: 1, character: 33 } });
    const lenses = await editor.ask<CodeLens[]>('textDocument/codeLens', { textDocument: { uri: rangeUri } });
    expect(lenses.map(({ command }) => command?.title)).toEqual([
      expect.stringMatching(
        /^3 shelters, neighbour-gap to watch, the weakest plug-house: \d+ fails?, governed by/,
      ),
      'cost: no prices',
    ]);
  });

  it('does not repeat what stands at the shelter in the same file, and is no broken drawing', async () => {
    const before = found.filter(({ code }) => code === 'pull-out').length;
    await editor.settled(uri, `${site}${shelter}${range}`);
    const list = await editor.diagnostics(uri, (all) => all.some(({ code }) => code === 'pull-out'));
    expect(list.filter(({ code }) => code === 'pull-out').length).toBe(before);
    const preview = await editor.ask<PreviewAnswer>('tautline/preview', { uri });
    expect(preview.broken).toBe(undefined);
    expect(preview.shelters.map(({ name, kind }) => [name, kind])).toEqual([
      ['plug-house', undefined],
      ['row', 'range'],
    ]);
    const [, sheet] = preview.shelters;
    // A gap that is too narrow brings nothing down.
    expect(sheet?.findings.map(({ id, verdict, word }) => [id, verdict, word])).toEqual([
      ['neighbour-gap', 'fails', 'to watch'],
      ['neighbour-gap', 'passes', 'passes'],
    ]);
    expect(sheet?.notChecked.map(({ what }) => what)).toContain('model');
  });

  it('is judged as a whole, with a gap worked out that would do and a way to live with it', async () => {
    const list = await editor.diagnostics(uri, (all) => all.some(({ code }) => code === 'neighbour-gap'));
    const gap = list.find(({ code }) => code === 'neighbour-gap');
    expect(gap?.message).toMatch(/it takes 1 ft 6 in to walk there/);
    const line = `${site}${shelter}`.split('\n').length - 1;
    expect(gap?.range).toEqual({ start: { line, character: 0 }, end: { line, character: 9 } });
    const [fix, ...others] = await actionsAt(gap);
    expect(fix?.title).toMatch(/^Keep .* between neighbours \(\d+ % used after\)$/);
    expect(others.map(({ title }) => title)).toContain('Accept `neighbour-gap` here, with a reason');
    const text = `${site}${shelter}${range}`;
    const wide = applied(text, fix?.edit?.changes?.[uri] ?? []);
    expect(wide).toMatch(/stand 3 of plug-house; gap \d+ (ft|in)/);
    await editor.change(uri, wide);
    await editor.diagnostics(uri, (all) => all.every(({ code }) => code !== 'neighbour-gap'));
    const accepting = others.find(({ title }) => title.startsWith('Accept'));
    await editor.settled(uri, applied(text, accepting?.edit?.changes?.[uri] ?? []));
    // Until somebody says why, nothing is accepted.
    await editor.diagnostics(uri, (all) => all.some(({ code }) => code === 'reason-missing'));
    expect(accepting?.command?.arguments).toEqual(['say why']);
    const reasoned = applied(text, accepting?.edit?.changes?.[uri] ?? []).replace('say why', 'it drains');
    await editor.change(uri, reasoned);
    await editor.diagnostics(uri, (all) => all.every(({ code }) => code !== 'reason-missing'));
    const preview = await editor.ask<PreviewAnswer>('tautline/preview', { uri });
    expect(preview.shelters[1]?.findings.map(({ id, accepted }) => [id, accepted])).toEqual([
      ['neighbour-gap', 'it drains'],
      ['neighbour-gap', undefined],
    ]);
  });

  it('reports what is wrong with itself', async () => {
    await editor.change(rangeUri, `import "own.shelter"\n${range.replace('stand 3', 'stand 1000')}`);
    const list = await editor.diagnostics(rangeUri, (all) => all.some(({ code }) => code === 'out-of-range'));
    expect(list.find(({ code }) => code === 'out-of-range')?.range.start.line).toBe(1);
  });
});

describe('severity by check', () => {
  const set = (severity: object): Promise<void> =>
    editor.client.sendNotification('workspace/didChangeConfiguration', {
      settings: { tautline: { severity } },
    });
  const pullOut = (list: readonly Diagnostic[]) => list.find(({ code }) => code === 'pull-out');

  it("is the user's, and a check turned off is still on the drawing sheet", async () => {
    await set({ 'pull-out': 'information' });
    const told = await editor.diagnostics(uri, (list) => pullOut(list)?.severity === 3);
    expect(told.some(({ severity, code }) => severity === 1 && code !== 'pull-out')).toBe(true);
    await set({ 'pull-out': 'off' });
    await editor.diagnostics(uri, (list) => list.length > 0 && !pullOut(list));
    const preview = await editor.ask<PreviewAnswer>('tautline/preview', { uri });
    expect(preview.shelters[0]?.findings.some(({ id }) => id === 'pull-out')).toBe(true);
    await set({ 'pull-out': 'nonsense' });
    await editor.diagnostics(uri, (list) => pullOut(list)?.severity === 1);
  });
});

describe('fixing all', () => {
  it('puts right what has one remedy, and leaves choices to the grower', async () => {
    const slips = shelter
      .replace('footprint', 'footprnt')
      .replace('shape elastic', 'shape elastik')
      .replace('pvc40-25', 'pvc40-2');
    await editor.change(uri, `${site}${slips}`);
    await editor.diagnostics(uri, (list) => list.filter(({ code }) => code === 'unknown-word').length === 2);
    const [all, ...more] = await actionsAt(undefined, ['source.fixAll']);
    expect(more).toEqual([]);
    expect(all?.kind).toBe('source.fixAll.tautline');
    expect(all?.title).toBe('Put right 2 slips of writing');
    expect(applied(`${site}${slips}`, all?.edit?.changes?.[uri] ?? [])).toBe(
      `${site}${shelter}`.replace('pvc40-25', 'pvc40-2'),
    );
    await editor.change(uri, `${site}${shelter}`);
    await editor.diagnostics(uri, (list) => !list.some(({ code }) => code === 'unknown-word'));
    expect(await actionsAt(undefined, ['source.fixAll'])).toEqual([]);
  });
});

describe('warming up', () => {
  it('works out a house before a file is open, so that the first question finds the worker awake', async () => {
    const asked: { shelter: string; named: boolean }[] = [];
    const real = createInProcessAnalyst();
    const analyst: Analyst = {
      ...real,
      analyse: async (world, name, options, token) => {
        const result = await real.analyse(world, name, options, token);
        asked.push({ shelter: name, named: result?.evaluation !== undefined });
        return result;
      },
    };
    const warm = await startEditor({ analyst, warm: true });
    while (asked.length === 0) await new Promise((resolve) => setTimeout(resolve, 20));
    expect(asked).toEqual([{ shelter: 'warm-up', named: true }]);
    const template = templateFor('cable-house');
    await warm.open('file:///gully/t.shelter', template ? textOfTemplate(template) : '');
    expect((await warm.evaluated()).uri).toBe('file:///gully/t.shelter');
    await warm.close();
  });
});

describe('a calculation', () => {
  const house = 'file:///gully/calculated.shelter';
  const text = `${site}${shelter}range row { stand 3 of plug-house; gap 16 in; tied by wire-4 every 8 ft }\n`;
  /** Checks with the number of steps of their calculations. */
  const calculation: NonNullable<Sheets['calculation']> = (title, findings) => ({
    title,
    markdown: findings.map(({ id, steps }) => `${id}: ${steps.length}`).join('\n'),
  });

  it('is told whole of a house, of a range, and of a text that can no longer be read', async () => {
    const own = await startEditor({ sheets: { calculation } });
    const open = async (line: number, check?: string) =>
      (
        await own.ask<CalculationAnswer>('tautline/calculation', {
          uri: house,
          position: { line, character: 8 },
          ...(check === undefined ? {} : { check }),
        })
      )?.markdown ?? '';
    const evaluated = own.evaluated();
    await own.open(house, text);
    await evaluated;
    const whole = await open(1);
    expect(whole).toMatch(/^pull-out: [2-9]/m);
    expect(await open(1, 'pull-out')).toMatch(/^pull-out: [2-9]\d*$/);
    const range = await open(text.split('\n').findIndex((line) => line.startsWith('range')));
    expect(range).toMatch(/^neighbour-gap: [1-9]/m);
    await own.settled(house, text.replace('bows spaced 4 ft of', 'bows spaced 4 elephants of'));
    expect(await open(1)).toBe(whole);
    await own.close();
  });
});
