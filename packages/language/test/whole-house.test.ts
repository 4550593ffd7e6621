/** The whole house in space, beside what is found while typing: when it is worked out, stopped, old and new. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { exampleSpecs } from '@tautline/checks';
import { build } from 'esbuild';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { type CodeAction, CodeActionTriggerKind, type Diagnostic } from 'vscode-languageserver';
import { createInPlaceWork, type LongWork } from '../src/analyst/long-work.ts';
import { languageJobs } from '../src/analyst/whole-house.ts';
import { createWorkerWork } from '../src/analyst/worker-work.ts';
import { threadPort } from '../src/node/threads.ts';
import type { PreviewAnswer, WholeHouseAnswer } from '../src/protocol.ts';
import { type Editor, startEditor } from './editor.ts';

/** Small, so that it is quick; nothing holds it along its length. */
const house = `site terrace { gust 42 m/s; soil loam; rain 110 mm/h }
shelter plug-house on terrace {
  footprint 3 m by 3.6 m
  bows spaced 1.2 m of pvc40-25 { shape elastic; rise 1.6 m; foot stub of rebar-12 { length 1.2 m; deep 0.6 m; held pinned } }
  cover roof with film-uv-150 { fastened by channel-spring; installed 2026-03-01 }
}
`;
const uri = 'file:///gully/whole.shelter';
const longer = house.replace('by 3.6 m', 'by 4.8 m');
const whole = (list: readonly Diagnostic[]) =>
  list.filter(({ code }) => code === 'whole-house' || code === 'tier-difference');

/** Work in place that counts, and can be held up. */
function heldWork() {
  const real = createInPlaceWork(languageJobs);
  const held = { until: Promise.resolve() as Promise<unknown>, begun: 0, stopped: 0 };
  const work: LongWork = {
    ...real,
    run: async (job, worlds, input, doing) => {
      held.begun += 1;
      await held.until;
      const given = await real.run(job, worlds, input, doing);
      if (given === undefined) held.stopped += 1;
      return given as never;
    },
  };
  return { work, held };
}

describe('the whole house in the editor', () => {
  let editor: Editor;
  afterEach(() => editor.close());
  const preview = async () => (await editor.ask<PreviewAnswer>('tautline/preview', { uri })).shelters[0];

  it('has its fixes worked out for who asks by hand, and not for the light bulb', async () => {
    editor = await startEditor();
    const ends = exampleSpecs('end-frame')!.bad;
    await editor.open(uri, ends);
    await editor.ask<WholeHouseAnswer>('tautline/wholeHouse', { uri });
    const list = await editor.diagnostics(uri, (all) => all.some(({ code }) => code === 'end-frame'));
    const diagnostic = list.find(({ code }) => code === 'end-frame')!;
    const offered = async (triggerKind: CodeActionTriggerKind): Promise<CodeAction[]> => {
      const context = { diagnostics: [diagnostic], triggerKind };
      const { range } = diagnostic;
      const params = { textDocument: { uri }, range, context };
      const all = await editor.ask<CodeAction[]>('textDocument/codeAction', params);
      return all.filter(({ title }) => title.includes('used after'));
    };
    expect(await offered(CodeActionTriggerKind.Automatic)).toEqual([]);
    const [first] = await offered(CodeActionTriggerKind.Invoked);
    expect(first?.title).toMatch(/^Go .* into the ground \(\d+ % used after/);
    expect(first?.edit?.changes?.[uri]?.length).toBeGreaterThan(0);
  }, 60_000);

  it('is told when asked for, marked as old after an edit, and known again when the edit is taken back', async () => {
    editor = await startEditor();
    await editor.open(uri, house);
    await editor.diagnostics(uri, (list) => list.some(({ code }) => code === 'pull-out'));
    expect((await preview())?.wholeHouse).toBe(undefined);
    const progress: unknown[] = [];
    editor.client.onNotification('$/progress', ({ value }: { value: object }) => progress.push(value));
    const answer = await editor.ask<WholeHouseAnswer>('tautline/wholeHouse', { uri, workDoneToken: 'a' });
    expect(answer).toMatchObject({ done: true });
    expect(answer.told).toMatch(/^plug-house: .*whole house/);
    expect(progress[0]).toMatchObject({ kind: 'begin', title: 'Checking the whole house' });
    expect(progress.at(-1)).toEqual({ kind: 'end' });
    const shares = progress.flatMap((one) => (one as { percentage?: number }).percentage ?? []);
    expect(shares.length).toBeGreaterThan(5);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));

    const now = await editor.diagnostics(uri, (list) => whole(list).length > 0);
    expect(whole(now).some(({ message }) => /before the last edits/.test(message))).toBe(false);
    const sheet = await preview();
    expect(sheet?.wholeHouse).toBe('now');
    expect(sheet?.findings.some(({ id, tier, old }) => id === 'whole-house' && tier === 'full' && !old)).toBe(
      true,
    );
    expect(sheet?.notChecked.some(({ why }) => why.includes('end bow'))).toBe(false);

    await editor.change(uri, longer);
    const then = await editor.diagnostics(uri, (list) =>
      whole(list).some(({ message }) =>
        message.endsWith('(As the whole house stood before the last edits.)'),
      ),
    );
    // The findings of the typical frame are there at once, and not marked.
    expect(then.some(({ code, message }) => code === 'pull-out' && !/before the last/.test(message))).toBe(
      true,
    );
    expect(await preview()).toMatchObject({ wholeHouse: 'old' });
    await editor.change(uri, house);
    await editor.diagnostics(
      uri,
      (list) => whole(list).length > 0 && !list.some(({ message }) => /before the last edits/.test(message)),
    );
    expect(await preview()).toMatchObject({ wholeHouse: 'now' });
  });

  it('is worked out on saving, once for the same text, and never while typing', async () => {
    const { work, held } = heldWork();
    editor = await startEditor({ longWork: work });
    await editor.open(uri, house);
    for (const text of [longer, house, `// remark\n${house}`]) {
      await editor.settled(uri, text);
    }
    expect(held.begun).toBe(0);
    const save = () => editor.client.sendNotification('textDocument/didSave', { textDocument: { uri } });
    await save();
    await editor.diagnostics(uri, (list) => whole(list).length > 0);
    await save();
    await preview();
    expect(held.begun).toBe(1);
  });

  it('is dropped for a newer text, which does not wait for it', async () => {
    const { work, held } = heldWork();
    let letGo: () => void = () => undefined;
    held.until = new Promise<void>((resolve) => {
      letGo = resolve;
    });
    editor = await startEditor({ longWork: work });
    await editor.open(uri, house);
    await editor.evaluated();
    const first = editor.ask<WholeHouseAnswer>('tautline/wholeHouse', { uri });
    await vi.waitFor(() => expect(held.begun).toBe(1));
    await editor.change(uri, longer);
    // Findings of the newer text come while the older house is still under way.
    await editor.diagnostics(uri, (list) => list.length > 0);
    await vi.waitFor(async () => expect((await preview())?.wholeHouse).toBe(undefined));
    const second = editor.ask<WholeHouseAnswer>('tautline/wholeHouse', { uri });
    await vi.waitFor(() => expect(held.begun).toBe(2));
    letGo();
    await first;
    expect(await second).toMatchObject({ done: true });
    expect(held.stopped).toBe(1);
    expect((await preview())?.wholeHouse).toBe('now');
  });

  it('says why there is nothing to tell', async () => {
    editor = await startEditor();
    await editor.open(uri, 'site terrace { gust 42 m/s }\n');
    const ask = (of: string) => editor.ask<WholeHouseAnswer>('tautline/wholeHouse', { uri: of });
    expect(await ask(uri)).toEqual({
      done: false,
      told: 'There is no shelter in this file that can be worked out as it is now.',
    });
    expect((await ask('file:///gully/none.shelter')).told).toMatch(/not open/);
  });
});

describe('the worker for long work', () => {
  const folder = mkdtempSync(join(tmpdir(), 'tautline-'));
  const script = join(folder, 'work.mjs');
  beforeAll(() =>
    build({
      stdin: {
        contents: `
          import { threadId } from 'node:worker_threads';
          import { serveInThread } from './src/node/threads.ts';
          serveInThread({
            who: () => threadId,
            break: () => { throw new Error('a fault'); },
            spin: (_worlds, _input, { cancelled, progress }) => {
              progress(0, 'spinning');
              while (!cancelled()) Math.sqrt(2);
              return 'half of it';
            },
            deaf: (_worlds, _input, { progress }) => { progress(0, 'spinning'); for (;;) Math.sqrt(2); },
          });`,
        resolveDir: join(import.meta.dirname, '..'),
      },
      bundle: true,
      platform: 'node',
      format: 'esm',
      outfile: script,
      logLevel: 'error',
    }),
  );
  afterAll(() => rmSync(folder, { recursive: true }));

  /** Runs a job, and takes it back when it says that it has begun. */
  async function stopped(work: LongWork, job: string, partial = false): Promise<unknown> {
    const listeners: (() => void)[] = [];
    const token = {
      isCancellationRequested: false,
      onCancellationRequested: (listener: () => void) => {
        listeners.push(listener);
        return { dispose: () => undefined };
      },
    };
    return work.run(job, [], undefined, {
      token,
      partial,
      progress: () => listeners.pop()?.(),
    });
  }

  it('is stopped in the middle of a calculation and goes on with the next in the same thread', async () => {
    const work = createWorkerWork(() => threadPort(script));
    const thread = await work.run<number>('who', [], undefined);
    expect(await stopped(work, 'spin')).toBe(undefined);
    expect(await work.run('who', [], undefined)).toBe(thread);
    expect(await stopped(work, 'spin', true)).toBe('half of it');
    await expect(work.run('break', [], undefined)).rejects.toThrow('a fault');
    await expect(work.run('no-such', [], undefined)).rejects.toThrow('no job called no-such');
    expect(await work.run('who', [], undefined)).toBe(thread);
    work.dispose();
  });

  it('is put down where it does not listen, or where memory cannot be shared', async () => {
    const work = createWorkerWork(() => threadPort(script));
    const thread = await work.run<number>('who', [], undefined);
    expect(await stopped(work, 'deaf')).toBe(undefined);
    const second = await work.run<number>('who', [], undefined);
    expect(second).not.toBe(thread);
    vi.stubGlobal('SharedArrayBuffer', undefined);
    expect(await stopped(work, 'spin')).toBe(undefined);
    vi.unstubAllGlobals();
    expect(await work.run<number>('who', [], undefined)).not.toBe(second);
    work.dispose();
  });
});
