import { loadWorkspace } from '@tautline/language';
import { describe, expect, it } from 'vitest';
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
