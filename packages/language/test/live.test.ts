/** What happens while somebody types: newest edit wins, nothing jumps, nothing good is lost on the way. */
import { afterEach, describe, expect, it } from 'vitest';
import type { CodeLens, InlayHint } from 'vscode-languageserver';
import { type Analyst, type CancelToken, createInProcessAnalyst } from '../src/analyst/analyst.ts';
import type { PreviewAnswer } from '../src/protocol.ts';
import { type Editor, startEditor } from './editor.ts';

const house = `site terrace { gust 42 m/s; soil loam; rain 110 mm/h }
shelter plug-house on terrace {
  footprint 14 ft by 40 ft
  bows spaced 4 ft of pvc40-25 { shape elastic; rise 7 ft; foot stub of rebar-12 { length 4 ft; deep 2 ft } }
  cover roof with film-uv-150 { fastened by channel-spring; installed 2026-03-01 }
}
`;
const uri = 'file:///gully/live.shelter';
const textDocument = { uri };
const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

let editor: Editor;
afterEach(() => editor.close());

/** An analyst as slow as `wait`, that writes down what it was asked. */
function slowAnalyst(wait: (token?: CancelToken) => Promise<void>) {
  const real = createInProcessAnalyst();
  const begun: number[] = [];
  const cancelled: number[] = [];
  const spacing = (world: Parameters<Analyst['analyse']>[0]): number => {
    const bows = world.definitions.get('plug-house')?.children.find(({ word }) => word === 'bows');
    const spaced = bows?.children.find(({ word }) => word === 'spaced')?.slots['value'];
    return spaced?.type === 'quantity' ? Math.round(spaced.si * 1000) : Number.NaN;
  };
  const analyst: Analyst = {
    ...real,
    analyse: async (world, shelter, options, token?: CancelToken) => {
      begun.push(spacing(world));
      await wait(token);
      const result = await real.analyse(world, shelter, options, token);
      if (token?.isCancellationRequested) cancelled.push(spacing(world));
      return token?.isCancellationRequested ? undefined : result;
    },
  };
  return { analyst, begun, cancelled };
}

const spaced = (mm: number): string => house.replace('spaced 4 ft', `spaced ${mm} mm`);

describe('fast typing', () => {
  it('works out the newest text only, and drops what was begun for older ones', async () => {
    // Slow enough to be overtaken, however fast or busy the machine is: until it is let go, or called off.
    let letGo: () => void = () => undefined;
    let held: Promise<void> = Promise.resolve();
    const { analyst, begun, cancelled } = slowAnalyst((token) =>
      Promise.race([
        held,
        new Promise<void>((resolve) => void token?.onCancellationRequested(() => resolve())),
      ]),
    );
    editor = await startEditor({ analyst });
    const notices: number[] = [];
    const listen = (): void =>
      void editor.evaluated().then(({ version }) => {
        notices.push(version);
        listen();
      });
    await editor.open(uri, house);
    await editor.evaluated();
    listen();
    begun.length = 0;
    cancelled.length = 0;
    held = new Promise((resolve) => {
      letGo = resolve;
    });
    for (let mm = 1000; mm < 1020; mm += 1) {
      await editor.change(uri, spaced(mm));
      await pause(40);
    }
    while (begun.at(-1) !== 1019) await pause(5);
    const last = editor.evaluated();
    letGo();
    const { version } = await last;
    expect(version).toBe(21);
    // Notices never go back, and between the first text and the last none got through: each was overtaken.
    expect(notices.filter((one) => one > 1 && one < 21)).toEqual([]);
    expect(begun.length).toBeGreaterThan(1);
    expect(cancelled).toEqual(begun.slice(0, -1));
    const preview = await editor.ask<PreviewAnswer>('tautline/preview', { uri });
    expect(preview.version).toBe(21);
    expect(preview.shelters[0]?.stale).toBe(undefined);
  });
});

describe('hints, lenses and findings while typing', () => {
  const hints = async () =>
    (
      await editor.ask<InlayHint[]>('textDocument/inlayHint', {
        textDocument,
        range: { start: { line: 0, character: 0 }, end: { line: 30, character: 0 } },
      })
    ).map(({ label, position }) => `${position.line}: ${label}`);
  const lenses = async () =>
    (await editor.ask<CodeLens[]>('textDocument/codeLens', { textDocument })).map(
      ({ command, range }) => `${range.start.line}: ${command?.title}`,
    );
  const down = (lines: readonly string[], from: number, by: number): string[] =>
    lines.map((one) => one.replace(/^\d+/, (line) => `${Number(line) + (Number(line) >= from ? by : 0)}`));

  it('stay at their words before new results are there, also when a line above cannot be read', async () => {
    const { analyst } = slowAnalyst(() => pause(0));
    let hold: Promise<void> = Promise.resolve();
    editor = await startEditor({
      analyst: { ...analyst, analyse: (...asked) => hold.then(() => analyst.analyse(...asked)) },
    });
    await editor.open(uri, house);
    await editor.evaluated();
    const [hintsBefore, lensesBefore] = [await hints(), await lenses()];
    expect(hintsBefore.length).toBeGreaterThan(3);
    let letGo: () => void = () => undefined;
    hold = new Promise((resolve) => {
      letGo = resolve;
    });
    for (const line of ['p', 'posts', 'posts } of ', 'posts "', '/* ']) {
      await editor.change(uri, house.replace('  bows', `  ${line}\n  bows`));
      expect(await hints(), line).toEqual(down(hintsBefore, 3, 1));
      expect(await lenses(), line).toEqual(lensesBefore);
    }
    letGo();
  });

  it('reserve the lines of lenses from the first moment', async () => {
    const { analyst } = slowAnalyst(() => pause(150));
    editor = await startEditor({ analyst });
    await editor.open(uri, house);
    const first = await lenses();
    await editor.evaluated();
    const then = await lenses();
    expect(first.length).toBe(3);
    expect(then.map((one) => one.slice(0, 2))).toEqual(first.map((one) => one.slice(0, 2)));
    expect(then).not.toEqual(first);
  });

  it('keep the last findings of a text that cannot be worked out, and say so', async () => {
    editor = await startEditor();
    await editor.open(uri, house);
    await editor.diagnostics(uri, (list) => list.some(({ code }) => code === 'pull-out'));
    await editor.settled(uri, house.replace('  footprint 14 ft by 40 ft\n', ''));
    const list = await editor.diagnostics(uri, (all) =>
      all.some(({ code, message }) => code === 'pull-out' && message.endsWith('last be worked out.)')),
    );
    expect(list.some(({ code }) => code === 'missing-fact')).toBe(true);
    expect(list.find(({ code }) => code === 'pull-out')?.range.start.line).toBe(2);
    const preview = await editor.ask<PreviewAnswer>('tautline/preview', { uri });
    expect(preview.broken).toMatch(/footprint/);
    expect(preview.shelters).toEqual([]);
  });

  it('mark a drawing of a text that can be read only in part', async () => {
    editor = await startEditor();
    await editor.open(uri, house);
    await editor.diagnostics(uri, (list) => list.some(({ code }) => code === 'pull-out'));
    const whole = await editor.ask<PreviewAnswer>('tautline/preview', { uri });
    expect(whole.shelters[0]?.stale).toBe(undefined);
    await editor.settled(uri, house.replace(/\}\s*$/, ''));
    const partly = await editor.ask<PreviewAnswer>('tautline/preview', { uri });

    expect(partly.shelters[0]?.stale).toMatch(/not closed/);
  });

  it('find out what fails first a little later, and show the old order until then', async () => {
    editor = await startEditor();
    await editor.open(uri, house);
    await editor.evaluated();
    expect((await lenses())[1]).toBe('1: first to fail: ...');
    await editor.evaluated();
    const [, first] = await lenses();
    expect(first).toMatch(/^1: first to fail: .*(gust \d+(\.\d+)? mph|without wind)$/);
    const noticed = editor.evaluated();
    await editor.settled(uri, spaced(1000));
    // The notice is what the status bar shows.
    expect((await noticed).summary).toMatch(/^plug-house: first to fail: .* \(before the last edits\)$/);
    expect((await lenses())[1]).toBe(`${first} (before the last edits)`);
    const preview = await editor.ask<PreviewAnswer>('tautline/preview', { uri });
    expect(preview.shelters[0]?.gustsOld).toBe(true);
    await editor.evaluated();
    expect((await editor.ask<PreviewAnswer>('tautline/preview', { uri })).shelters[0]?.gustsOld).toBe(
      undefined,
    );
    expect((await lenses())[1]).not.toMatch(/before the last edits/);
  });
});

describe('a file that imports another', () => {
  it('is worked out with what the other says now', async () => {
    editor = await startEditor();
    const measures = 'file:///gully/measures.shelter';
    await editor.open(measures, 'let bay = 4 ft\n');
    await editor.open(uri, `import "measures.shelter"\n${house.replace('spaced 4 ft', 'spaced bay')}`);
    const pull = async (after?: string): Promise<string> => {
      const list = await editor.diagnostics(uri, (all) =>
        all.some(({ code, message }) => code === 'pull-out' && message !== after),
      );
      return list.find(({ code }) => code === 'pull-out')?.message ?? '';
    };
    const first = await pull();
    // An edit of the importing file alone reads the other as it is known.
    await editor.change(
      uri,
      `import "measures.shelter"\n// a remark\n${house.replace('spaced 4 ft', 'spaced bay')}`,
    );
    await editor.change(measures, 'let bay = 3 ft\n');
    expect(await pull(first)).toMatch(/pulls each bow's foot up/);
  });
});
