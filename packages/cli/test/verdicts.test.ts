import { loadWorkspace } from '@tautline/language';
import { describe, expect, it } from 'vitest';
import { summarise } from '../src/report/summary.ts';
import { textReport } from '../src/report/text.ts';
import { verdictsOf } from '../src/verdicts.ts';

const site = 'site terrace { gust 30 m/s; soil loam; rain 110 mm/h }\n';
const problemsOf = async (text: string) => {
  const workspace = await loadWorkspace([{ uri: 'file:///gully/a.shelter', text: `${site}${text}` }]);
  return verdictsOf(workspace, undefined).problems.map(({ id, from }) => `${from.line}: ${id}`);
};

describe('problems', () => {
  it('that both the text and its resolution show are told once', async () => {
    const bows = 'bows spaced 4 ft of pvc40-25 { shape elastic; rise 7 ft; foot stub of rebar-12 }';
    expect(await problemsOf(`shelter a on terrace {\n  ${bows}\n}\n`)).toEqual(['1: missing-fact']);
    expect(await problemsOf(`shelter a on nowhere {\n  footprint 4 m by 9 m\n  ${bows}\n}\n`)).toEqual([
      '1: unknown-name',
    ]);
  });

  it('that only the resolution shows are told, as sentences', async () => {
    const bows = 'bows spaced 4 ft of pvc40-25 { shape elastic; rise 7 ft; foot stub of rebar-12 }';
    const text = `${site}shelter a on terrace {\n  footprint 0 m by 9 m\n  ${bows}\n}\n`;
    const workspace = await loadWorkspace([{ uri: 'file:///gully/a.shelter', text }]);
    expect(workspace.problems).toEqual([]);
    const { problems } = verdictsOf(workspace, undefined);
    expect(problems.length).toBe(1);
    expect(problems[0]?.from.line).toBe(2);
    expect(problems[0]?.message).toMatch(/^[A-Z].*[.!?]$/);
  });
});

describe('timings', () => {
  it('are told when asked for, with what ran out of its time, and never else', async () => {
    const bows =
      'bows spaced 4 ft { of pvc40-25; shape elastic; rise 5 ft; foot stub of rebar-12 { deep 2 ft } }';
    const text = `${site}shelter a on terrace {\n  footprint 3 m by 9 m\n  ${bows}\n}\n`;
    const workspace = await loadWorkspace([{ uri: 'file:///gully/a.shelter', text }]);
    let seconds = 0;
    const clock = { now: () => seconds++, budget: { form: 1e6, plane: 2 } };
    const verdicts = verdictsOf(workspace, undefined, { clock });
    const plain = summarise(verdicts);
    expect(plain.shelters[0]?.stages).toBeUndefined();
    expect(textReport(plain, { all: true })).not.toContain('took  ');
    const timed = textReport(summarise(verdicts, { timings: true }), { all: true });
    expect(timed).toMatch(/took {2}form {2}\d+\.\d{3} s/);
    expect(timed).toMatch(/took {2}plane {2}\d+\.\d{3} s, more than the 2 s it may/);
    expect(timed).toContain('took longer than 2 s');
  });
});
