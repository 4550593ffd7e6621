/**
 * Every check has a good and a bad spec beside its explanation, and they do what the explanation says: nothing
 * of the good one fails, and the bad one fails by the check.
 */
import { checks, type EvaluateOptions, exampleSpecs } from '@tautline/checks';
import { formatText, type LoadedWorkspace } from '@tautline/language';
import { beforeAll, describe, expect, it } from 'vitest';
import { failedIn, judgeSpec, loadSpecs } from './specs.ts';

/** The day of the check; ages are counted to it. */
const on = '2026-11-25';
/** What only the whole house in space answers. */
const inSpace = new Set(['whole-house', 'tier-difference', 'end-frame']);
/** What else fails in a bad spec, because the one cannot be had without the other. */
const also: Readonly<Record<string, readonly string[]>> = {
  'hot-slack': ['flutter'], // film that hangs in the heat lies loose in the wind
  'post-buckling': ['over-span'], // a slender post bends before it buckles
  'rail-span': ['eave-sag'], // a rail that breaks has sagged before
  'whole-house': ['racking'], // what falls over in space falls over along the house
};
/** This one tells what was not said instead of failing. */
const told = 'site-facts';
let workspace: LoadedWorkspace;
beforeAll(async () => {
  workspace = await loadSpecs();
}, 60_000);

describe('the specs beside the explanations', () => {
  it.each(checks.map(({ id }) => id).filter((id) => id !== told))(
    '%s: the bad one fails by it, the good one by nothing',
    (id) => {
      const options: EvaluateOptions = { on, gusts: false, ...(inSpace.has(id) ? { tier: 'full' } : {}) };
      expect(failedIn(judgeSpec(workspace, `${id}.bad`, options))).toEqual([id, ...(also[id] ?? [])].sort());
      expect(failedIn(judgeSpec(workspace, `${id}.good`, options))).toEqual([]);
    },
    60_000,
  );

  it(`${told}: the bad one leaves them out, the good one says them`, () => {
    const says = (side: string): boolean =>
      judgeSpec(workspace, `${told}.${side}`, { on }).notChecked.some(({ id }) => id === told);
    expect(says('bad')).toBe(true);
    expect(says('good')).toBe(false);
  });

  it('stand for checks that there are, and are embedded as they are written', () => {
    const ids = new Set(checks.map(({ id }) => id));
    for (const { uri, text } of workspace.files) {
      const [, id = '', side] = /\/([a-z-]+)\.(good|bad)\.shelter$/.exec(uri) ?? [];
      expect(ids.has(id), uri).toBe(true);
      expect(side === undefined ? undefined : exampleSpecs(id)?.[side as 'good' | 'bad'], uri).toBe(text);
      expect(formatText(text), uri).toBe(text);
    }
  });

  it('can be read aloud', () => {
    for (const { uri, text } of workspace.files) expect(text.split('\n').length, uri).toBeLessThan(40);
  });
}, 60_000);
