/** Other stock in the place of what is named: tried before it is offered, and told with what comes of it. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CodeAction } from 'vscode-languageserver';
import { createInProcessAnalyst } from '../src/analyst/analyst.ts';
import { loadWorkspace } from '../src/index.ts';
import { applied, type Editor, startEditor, withCursor } from './editor.ts';

const marked = `project { currency XTS }
prices {
  price of pvc40-25 4 per 20 ft
  price of pvc40-32 7 per 20 ft
}
site terrace { gust 30 m/s; soil loam; rain 60 mm/h }
shelter plug-house on terrace {
  footprint 3.6 m by 12 m
  bows spaced 1.2 m {
    of pvc40|-25
    shape elastic; rise 2 m; foot stub of rebar-12 { length 1.2 m; deep 0.6 m } }
  cover roof with film-uv-150 { fastened by channel-spring; installed 2026-03-01 }
}
`;
const { text, position } = withCursor(marked);
const uri = 'file:///gully/swap.shelter';
const range = { start: position, end: position };

let editor: Editor;
let offered: readonly CodeAction[];
beforeAll(async () => {
  editor = await startEditor();
  await editor.open(uri, text);
  await editor.diagnostics(uri, (list) => list.some(({ code }) => code === 'over-span'));
  offered = await actionsAt();
});
afterAll(() => editor.close());

const actionsAt = async (at = range, only?: string[]): Promise<CodeAction[]> => {
  const context = { diagnostics: [], ...(only ? { only } : {}) };
  const actions = await editor.ask<CodeAction[]>('textDocument/codeAction', {
    textDocument: { uri },
    range: at,
    context,
  });
  return actions.filter(({ title }) => /^Use `[\w-]+` for `/.test(title));
};

/** Verdicts of checks that fail or come near their limits, by check and part, as the analyst says of a text. */
async function watched(of: string): Promise<Map<string, string>> {
  const { shelters } = await loadWorkspace([{ uri, text: of }]);
  const result = await createInProcessAnalyst().analyse(shelters[0]!.world, 'plug-house', {
    on: '2026-06-01',
  });
  const findings = result?.evaluation?.findings ?? [];
  return new Map(
    findings
      .filter(({ verdict }) => /fails|near/.test(verdict))
      .map(({ id, part, verdict }) => [`${id}/${part}`, verdict]),
  );
}

describe('other stock', () => {
  it('is offered where an item is named, with what it does, and does that when it is taken', async () => {
    expect(offered.length).toBeGreaterThan(2);
    const before = await watched(text);
    for (const { title, edit } of offered.slice(0, 3)) {
      const [, to = ''] = /^Use `([\w-]+)` for `pvc40-25`: /.exec(title) ?? [];
      const after = applied(text, edit?.changes?.[uri] ?? []);
      expect(after, title).toBe(text.replace('    of pvc40-25', `    of ${to}`));
      const now = await watched(after);
      const came = [...now.keys()].filter((one) => !before.has(one));
      const gone = [...before.keys()].filter((one) => !now.has(one));
      const turned = [...now].filter(([one, verdict]) => before.has(one) && before.get(one) !== verdict);
      expect(title.includes('new: '), title).toBe(came.length > 0);
      expect(title.includes('no finding goes'), title).toBe(gone.length === 0);
      expect(/no longer failing|now failing/.test(title), title).toBe(turned.length > 0);
    }
  });

  it('tells what it costs more where both have a price, and says nothing of money where one has not', async () => {
    const priced = offered.find(({ title }) => title.startsWith('Use `pvc40-32`'));
    expect(priced?.title).toMatch(/[+]XTS \d/);
    expect(offered.find(({ title }) => !title.startsWith('Use `pvc40-32`'))?.title).not.toMatch(/XTS/);
  });

  it('is a quick fix where it mends something and breaks nothing, else a rewriting', async () => {
    for (const { title, kind } of offered) {
      const mends =
        (!title.includes('no finding goes') || title.includes('no longer failing')) &&
        title.includes('nothing new');
      expect(kind, title).toBe(mends ? 'quickfix' : 'refactor.rewrite.stock');
    }
    const rewritings = await actionsAt(range, ['refactor.rewrite']);
    expect(rewritings.every(({ kind }) => kind === 'refactor.rewrite.stock')).toBe(true);
  });

  it('is offered nowhere else', async () => {
    const { line } = position;
    for (const [row, character] of [
      [line, 4],
      [line - 1, 14],
      [2, 10],
      [5, 6],
    ] as const) {
      const at = { line: row, character };
      expect(await actionsAt({ start: at, end: at }, ['refactor.rewrite'])).toEqual([]);
    }
  });
});
