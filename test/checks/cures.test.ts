/** The bad specs of checks that a change of the spec cures are offered one, and it is written as text that passes. */
import { fixesFor } from '@tautline/checks';
import { applySpecEdits, changed, type LoadedWorkspace, loadWorkspace } from '@tautline/language';
import { newNotes, resolveItems } from '@tautline/shelter';
import { beforeAll, describe, expect, it } from 'vitest';
import { judgeSpec, loadSpecs, shelterOf } from './specs.ts';

const on = '2026-11-25';
const cured = [
  ...['rot', 'heat', 'irrigation', 'mesh-airflow', 'light', 'runoff', 'film-life'],
  ...[
    'beam-bearing',
    'cable-anchor',
    'cable-slack',
    'filled-pipe',
    'flat-crown',
    'guy-anchor',
    'guy-pull',
    'hot-contact',
    'joint-kind',
  ],
  'stale-acceptance',
];

let workspace: LoadedWorkspace;
beforeAll(async () => {
  workspace = await loadSpecs();
}, 60_000);

describe('a change of the spec', () => {
  it.each(cured)('cures what fails by %s, and the changed text no longer fails by it', async (id) => {
    const loaded = shelterOf(workspace, `${id}.bad`);
    const evaluation = judgeSpec(workspace, `${id}.bad`, { on, gusts: false });
    const finding = evaluation.findings.find((one) => one.id === id && one.verdict === 'fails');
    if (finding === undefined) throw new Error(`${id} does not fail`);
    const fixes = fixesFor(finding, evaluation, {
      world: loaded.world,
      shelterName: loaded.name,
      stock: { items: resolveItems(loaded.world, newNotes()) },
      system: 'us',
      on,
    });
    expect(fixes.length, id).toBeGreaterThan(0);
    const { text } = workspace.files.find(({ uri }) => uri === loaded.uri)!;
    for (const fix of fixes) {
      const edited = applySpecEdits(text, fix.edits, 'us');
      if (!edited.ok) throw new Error(edited.reason);
      const again = await loadWorkspace([{ uri: loaded.uri, text: changed(text, edited.changes) }]);
      const after = judgeSpec(again, `${id}.bad`, { on, gusts: false });
      expect(after.findings.filter((one) => one.id === id && one.verdict === 'fails')).toEqual([]);
    }
  });
}, 60_000);
