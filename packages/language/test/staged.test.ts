/** What is found by the order of failure comes after everything else, and is never told as fresh before. */
import { evaluate, gustChecks } from '@tautline/checks';
import { resolveShelter } from '@tautline/shelter';
import { afterEach, describe, expect, it } from 'vitest';
import type { CodeLens } from 'vscode-languageserver';
import { type Analyst, createInProcessAnalyst } from '../src/analyst/analyst.ts';
import { answer, completed, workOut } from '../src/analyst/work-out.ts';
import { loadWorkspace } from '../src/index.ts';
import { type Editor, startEditor } from './editor.ts';

const house = `site terrace { gust 42 m/s; soil loam; rain 110 mm/h }
shelter plug-house on terrace {
  footprint 14 ft by 40 ft
  bows spaced 4 ft of pvc40-25 { shape elastic; rise 7 ft; foot stub of rebar-12 { length 4 ft; deep 2 ft } }
  cover roof with film-uv-150 { fastened by channel-spring; installed 2026-03-01 }
  withstand 60 m/s
  accept withstand because "the film is off in storms"
}
`;
const open = house.replace(/ {2}accept .*\n/, '');
const uri = 'file:///gully/staged.shelter';
const on = '2026-06-01';
const name = 'plug-house';

let editor: Editor | undefined;
afterEach(() => editor?.close());

describe('an evaluation in stages', () => {
  it('leaves out what needs the gusts, says so, and comes to the same in the end', async () => {
    for (const text of [house, open]) {
      const { world } = (await loadWorkspace([{ uri, text }])).shelters[0]!;
      const whole = evaluate(resolveShelter(name, world).shelter!, { on, gusts: false });
      const first = workOut(world, name, on, {}, 'later');
      expect(first.evaluation?.awaits).toEqual(['withstand']);
      expect(first.evaluation?.findings).toEqual(whole.findings.filter(({ id }) => !gustChecks.has(id)));
      expect(completed(first, on).evaluation).toEqual(whole);
      expect(answer(completed(first, on), { on, gusts: true }).evaluation?.gusts).toEqual(whole.gusts);
    }
  });

  it('awaits nothing where no check needs the gusts', async () => {
    const text = open.replace(/ {2}withstand .*\n/, '');
    const { world } = (await loadWorkspace([{ uri, text }])).shelters[0]!;
    const first = workOut(world, name, on, {}, 'later');
    expect(first.evaluation?.awaits).toBe(undefined);
    expect(first).toEqual(workOut(world, name, on));
  });
});

describe('findings by the order of failure', () => {
  it('come second, and those of an earlier text are marked until then', async () => {
    const real = createInProcessAnalyst();
    let letGo: () => void = () => undefined;
    let held: Promise<void> = Promise.resolve();
    const hold = (): void => {
      held = new Promise((resolve) => {
        letGo = resolve;
      });
    };
    const analyse: Analyst['analyse'] = async (world, shelter, options, token) => {
      if (options?.gusts === true) await held;
      return real.analyse(world, shelter, options, token);
    };
    hold();
    const typing = await startEditor({ analyst: { ...real, analyse } });
    editor = typing;
    const summary = async () =>
      (await typing.ask<CodeLens[]>('textDocument/codeLens', { textDocument: { uri } }))[0]?.command?.title;
    const first = typing.evaluated();
    await typing.open(uri, open);
    await first;
    const before = await typing.diagnostics(uri, (list) => list.some(({ code }) => code === 'pull-out'));
    expect(before.some(({ code }) => code === 'withstand')).toBe(false);
    expect(await summary()).toMatch(/, withstand to come$/);
    letGo();
    const fresh = (
      await typing.diagnostics(uri, (list) => list.some(({ code }) => code === 'withstand'))
    ).find(({ code }) => code === 'withstand');
    expect(fresh?.message).not.toMatch(/before the last edits/);
    expect(await summary()).not.toMatch(/to come/);

    hold();
    await typing.settled(uri, open.replace('spaced 4 ft', 'spaced 2 ft'));
    const old = await typing.diagnostics(uri, (list) =>
      list.some(({ code, message }) => code === 'withstand' && /before the last edits/.test(message)),
    );
    expect(old.find(({ code }) => code === 'withstand')?.message).toContain(fresh?.message);
    letGo();
    const newest = await typing.diagnostics(
      uri,
      (list) => !list.some(({ message }) => /before the last edits/.test(message)),
    );
    const now = newest.find(({ code }) => code === 'withstand');
    expect(now?.message).not.toBe(fresh?.message);
  });
});
