import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { MessageChannel } from 'node:worker_threads';
import { evaluate } from '@tautline/checks';
import { resolveShelter } from '@tautline/shelter';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type {
  CodeAction,
  CodeLens,
  CompletionList,
  Diagnostic,
  Hover,
  InlayHint,
} from 'vscode-languageserver';
import { type Analyst, createInProcessAnalyst } from '../src/analyst/analyst.ts';
import type { FromWorker, Port, ToWorker } from '../src/analyst/messages.ts';
import { toldFinding } from '../src/analyst/result.ts';
import { createWorkerAnalyst } from '../src/analyst/worker-analyst.ts';
import { serveAnalyst } from '../src/analyst/worker-side.ts';
import { loadWorkspace } from '../src/index.ts';
import { threadPort } from '../src/node/threads.ts';
import type { AssumedAnswer, PreviewAnswer } from '../src/protocol.ts';
import { applied, type Editor, startEditor } from './editor.ts';

/** A weak house: 1 in pipe over 14 ft, in a gust of 42 m/s. */
const weak = `site terrace { gust 42 m/s; soil loam; rain 110 mm/h }
shelter plug-house on terrace {
  footprint 14 ft by 40 ft
  bows spaced 4 ft of pvc40-25 { shape elastic; rise 7 ft; foot stub of rebar-12 { length 4 ft; deep 2 ft } }
  cover roof with film-uv-150 { fastened by channel-spring; installed 2026-03-01 }
}
`;
const uri = 'file:///gully/weak.shelter';
const textDocument = { uri };

async function world(text = weak) {
  const { shelters } = await loadWorkspace([{ uri, text }]);
  return shelters[0]!.world;
}

describe('results in the editor', () => {
  let editor: Editor;
  let diagnostics: readonly Diagnostic[];
  beforeAll(async () => {
    editor = await startEditor({ explanation: (check) => `https://example.invalid/${check}` });
    await editor.open(uri, weak);
    diagnostics = await editor.diagnostics(uri, (list) => list.some(({ code }) => code === 'pull-out'));
  }, 30_000);
  afterAll(() => editor.close());

  it('shows findings at their line, with id, link and severity', () => {
    const pullOut = diagnostics.find(({ code }) => code === 'pull-out');
    expect(pullOut).toMatchObject({
      source: 'tautline',
      severity: 1,
      codeDescription: { href: 'https://example.invalid/pull-out' },
      range: { start: { line: 3, character: 59 } },
    });
    expect(pullOut?.message).toMatch(/pulls each bow's foot up with [\d.]+ lbf/);
    expect(diagnostics.every(({ message }) => !/NaN|undefined/.test(message))).toBe(true);
  });

  it('offers computed fixes that make the finding go away', async () => {
    const pullOut = diagnostics.find(({ code }) => code === 'pull-out');
    const actions = await editor.ask<CodeAction[]>('textDocument/codeAction', {
      textDocument,
      range: pullOut?.range,
      context: { diagnostics: [pullOut] },
    });
    const fix = actions.find(({ title }) => title.endsWith('% used after)'));
    const after = applied(weak, fix?.edit?.changes?.[uri] ?? []);
    expect(after).not.toBe(weak);
    const result = await createInProcessAnalyst().analyse(await world(after), 'plug-house');
    const verdicts = result?.evaluation?.findings
      .filter(({ id }) => id === 'pull-out')
      .map(({ verdict }) => verdict);
    expect(verdicts?.length).toBeGreaterThan(0);
    expect(verdicts).not.toContain('fails');
  });

  it('offers to accept a finding with a reason, and then shows it no more', async () => {
    const pullOut = diagnostics.find(({ code }) => code === 'pull-out');
    const actions = await editor.ask<CodeAction[]>('textDocument/codeAction', {
      textDocument,
      range: pullOut?.range,
      context: { diagnostics: [pullOut] },
    });
    const accept = actions.find(({ title }) => title === 'Accept `pull-out` here, with a reason');
    const after = applied(weak, accept?.edit?.changes?.[uri] ?? []);
    expect(after).toContain('  accept pull-out because "say why"\n}');
    // The words that stand for a reason accept nothing yet.
    await editor.change(uri, after);
    const told = await editor.diagnostics(uri, (list) => list.some(({ code }) => code === 'reason-missing'));
    expect(told.some(({ code }) => code === 'pull-out')).toBe(true);
    await editor.change(uri, after.replace('say why', 'pulled by hand in May'));
    await editor.diagnostics(uri, (list) => list.length > 0 && !list.some(({ code }) => code === 'pull-out'));
    await editor.change(uri, weak);
    await editor.diagnostics(uri, (list) => list.some(({ code }) => code === 'pull-out'));
  });

  it('shows assumed and derived values, a lens, and findings on hover', async () => {
    const hints = await editor.ask<InlayHint[]>('textDocument/inlayHint', {
      textDocument,
      range: { start: { line: 0, character: 0 }, end: { line: 9, character: 0 } },
    });
    const labels = hints.map(({ label }) => String(label)).join('\n');
    expect(labels).toMatch(/pipe 21 ft \d/);
    expect(labels).toContain('exposure open');
    expect(labels).toMatch(/\d{3,} % used/);
    const lenses = await editor.ask<CodeLens[]>('textDocument/codeLens', { textDocument });
    expect(lenses[0]?.command?.title).toMatch(/^\d+ fails?, governed by [a-z-]+ \((over )?\d+ % used\)$/);
    expect(lenses[0]?.command?.command).toBe('tautline.showCalculation');
    expect(lenses[0]?.range.start).toEqual({ line: 1, character: 8 });
    const hover = await editor.ask<Hover>('textDocument/hover', {
      textDocument,
      position: { line: 3, character: 61 },
    });
    expect((hover.contents as { value: string }).value).toMatch(/\*\*fails\*\*: Wind pulls/);
    const bows = await editor.ask<Hover>('textDocument/hover', {
      textDocument,
      position: { line: 3, character: 3 },
    });
    expect((bows.contents as { value: string }).value).toMatch(
      /Worked out:\n\n- length 21 ft .*\(6\.\d+ m\).*, 11 of them\n- largest moment \d+ lbf·ft \(\d+ N·m\), .* along, under .*\n- governed by [a-z-]+: \d+ % used.*\(\[calculation\]\(command:tautline\.showCalculation\?/,
    );
  });

  it('gives the drawing sheet what it shows', async () => {
    const preview = await editor.ask<PreviewAnswer>('tautline/preview', { uri });
    expect(preview.broken).toBe(undefined);
    const [shelter] = preview.shelters;
    expect(shelter?.name).toBe('plug-house');
    expect(shelter?.findings.some(({ id, place }) => id === 'pull-out' && place.range.start.line === 3)).toBe(
      true,
    );
    expect(shelter?.assumed.length).toBeGreaterThan(5);
    expect(shelter?.notChecked.length).toBeGreaterThan(3);
    expect(shelter?.stale).toBe(undefined);
  });

  it('writes assumed values into the text so that they are no longer assumed', async () => {
    const answer = await editor.ask<AssumedAnswer>('tautline/assumed', { uri });
    const after = applied(weak, answer.edits as Parameters<typeof applied>[1]);
    expect(after).toContain('held clamped');
    expect(after).toContain('screwed with screw-tube-10x1in');
    const loaded = await loadWorkspace([{ uri, text: after }]);
    expect(loaded.problems).toEqual([]);
    const analyst = createInProcessAnalyst();
    const before = await analyst.analyse(await world(), 'plug-house');
    const now = await analyst.analyse(await world(after), 'plug-house');
    expect(now?.evaluation?.assumed.length).toBeLessThan((before?.evaluation?.assumed.length ?? 0) / 2);
    const verdicts = (result: typeof now) =>
      result?.evaluation?.findings.map(({ id, verdict }) => `${id} ${verdict}`);
    expect(verdicts(now)).toEqual(verdicts(before));
  });

  it('offers for screws only screws', async () => {
    const text = weak.replace('installed 2026-03-01', 'screwed with ');
    await editor.change(uri, text);
    const before = text.slice(0, text.indexOf('screwed with ') + 'screwed with '.length).split('\n');
    const position = { line: before.length - 1, character: before.at(-1)!.length };
    const list = await editor.ask<CompletionList>('textDocument/completion', { textDocument, position });
    const labels = list.items.map(({ label }) => label);
    expect(labels).toContain('screw-5x50');
    expect(labels).not.toContain('concrete-25kg');
    await editor.change(uri, weak);
  });

  it('keeps the last good results while a line is half-typed, and marks them', async () => {
    await editor.change(uri, weak.replace('14 ft by', '14 ft b'));
    const list = await editor.diagnostics(uri, (all) => all.some(({ code }) => code === 'unexpected'));
    expect(list.some(({ code }) => code === 'pull-out')).toBe(true);
    const noticed = editor.evaluated();
    await editor.change(uri, `// a remark\n${weak}`);
    expect((await noticed).version).toBeGreaterThan(1);
    const moved = await editor.diagnostics(uri, (all) =>
      all.some(({ code, range }) => code === 'pull-out' && range.start.line === 4),
    );
    expect(moved.some(({ code }) => code === 'unexpected')).toBe(false);
  });
});

/** A worker's line without a worker: both ends in this thread. */
function lineTo(serve: (port: Port<FromWorker, ToWorker>) => void): () => Port<ToWorker, FromWorker> {
  return () => {
    const { port1, port2 } = new MessageChannel();
    const end = (port: typeof port1) => ({
      post: (message: unknown) => port.postMessage(message),
      onMessage: (listener: (message: never) => void) =>
        void port.on('message', listener as (message: unknown) => void),
      onGone: (listener: (reason: string) => void) => void port.on('close', () => listener('closed')),
      close: () => port.close(),
    });
    serve(end(port2));
    return end(port1);
  };
}

const cancelled = {
  isCancellationRequested: true,
  onCancellationRequested: () => ({ dispose: () => undefined }),
};

describe('the analysis worker', () => {
  it('answers as the analyst in place does', async () => {
    const worker = createWorkerAnalyst(lineTo(serveAnalyst));
    const here = createInProcessAnalyst();
    for (const analyst of [worker, worker]) {
      expect(await analyst.analyse(await world(), 'plug-house', { on: '2026-06-01' })).toEqual(
        await here.analyse(await world(), 'plug-house', { on: '2026-06-01' }),
      );
    }
    // In stages it comes to what it comes to at once, for its own part of it.
    const whole = evaluate(resolveShelter('plug-house', await world()).shelter!, { on: '2026-06-01' });
    const asked = { on: '2026-06-01', gusts: true, frame: true };
    const told = { ...whole, findings: whole.findings.map(toldFinding) };
    expect((await worker.analyse(await world(), 'plug-house', asked))?.evaluation).toEqual(told);
    const { analysis: _frame, gusts: _gusts, ...quick } = told;
    const own = await worker.analyse(await world(), 'plug-house', { on: '2026-06-01' });
    expect(own?.evaluation).toEqual(quick);
    // Calculations cross when somebody opens them, and then whole.
    const opened = await worker.analyse(await world(), 'plug-house', { on: '2026-06-01', steps: true });
    expect(opened?.calculated).toEqual(whole.findings);
    expect(whole.findings.some(({ steps }) => steps.length > 1)).toBe(true);
    expect(JSON.stringify(own)).not.toContain('"steps"');
    expect(await worker.analyse(await world(), 'no-such')).toMatchObject({
      shelter: 'no-such',
      problems: [{ severity: 'error' }],
    });
    expect(await worker.analyse(await world(), 'plug-house', {}, cancelled)).toBe(undefined);
    worker.dispose();
  });

  it('takes questions back', async () => {
    const worker = createWorkerAnalyst(lineTo(serveAnalyst));
    const listeners: (() => void)[] = [];
    const token = {
      isCancellationRequested: false,
      onCancellationRequested: (listener: () => void) => {
        listeners.push(listener);
        return { dispose: () => undefined };
      },
    };
    const first = worker.analyse(await world(), 'plug-house', {}, token);
    for (const listener of listeners) listener();
    expect(await first).toBe(undefined);
    expect((await worker.analyse(await world(), 'plug-house'))?.evaluation?.findings.length).toBeGreaterThan(
      0,
    );
    worker.dispose();
  });

  it('says so when the worker dies, and starts another', async () => {
    let deaths = 0;
    const worker = createWorkerAnalyst(
      lineTo((port) => {
        if (deaths > 0) serveAnalyst(port);
        else port.onMessage(() => port.close());
        deaths += 1;
      }),
    );
    expect((await worker.analyse(await world(), 'plug-house'))?.failure).toBe('closed');
    expect((await worker.analyse(await world(), 'plug-house'))?.evaluation?.findings.length).toBeGreaterThan(
      0,
    );
    worker.dispose();
  });

  it('runs in a thread of Node', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'tautline-'));
    const script = join(folder, 'analysis.mjs');
    await build({
      stdin: {
        contents: "import { serveInThread } from './src/node/threads.ts'; serveInThread();",
        resolveDir: join(import.meta.dirname, '..'),
      },
      bundle: true,
      platform: 'node',
      format: 'esm',
      outfile: script,
      logLevel: 'error',
    });
    const analyst: Analyst = createWorkerAnalyst(() => threadPort(script));
    const result = await analyst.analyse(await world(), 'plug-house');
    expect(
      result?.evaluation?.findings.some(({ id, verdict }) => id === 'pull-out' && verdict === 'fails'),
    ).toBe(true);
    const fixes = await analyst.fixes(await world(), 'plug-house', {
      finding: { id: 'pull-out', part: 'bows/foot' },
      system: 'metric',
    });
    expect(fixes.length).toBeGreaterThan(0);
    analyst.dispose();
    rmSync(folder, { recursive: true });
  });
});
