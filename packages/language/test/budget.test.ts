/** Time budgets of the editor's calculations: a stage that runs out is told as not checked, and the rest stands. */
import { describe, expect, it } from 'vitest';
import type { Clock } from '../src/analyst/clock.ts';
import { type WholeHouse, wholeHouseBy } from '../src/analyst/whole-house.ts';
import { answer, workOut } from '../src/analyst/work-out.ts';
import { loadWorkspace } from '../src/index.ts';

const text = `site terrace { gust 42 m/s; soil loam; rain 110 mm/h }
shelter plug-house on terrace {
  footprint 3 m by 3.6 m
  bows spaced 1.2 m of pvc40-25 { shape elastic; rise 1.6 m; foot stub of rebar-12 { length 1.2 m; deep 0.6 m } }
  cover roof with film-uv-150 { fastened by channel-spring; installed 2026-03-01 }
}
`;
const name = 'plug-house';
const world = async () =>
  (await loadWorkspace([{ uri: 'file:///gully/a.shelter', text }])).shelters[0]!.world;

/** One second on each time it is read. */
const ticking = (budget: NonNullable<Clock['budget']>): Clock => {
  let seconds = 0;
  const most = { form: 1e6, plane: 1e6, ponding: 1e6, gusts: 1e6, 'whole-house': 1e6 };
  return { now: () => seconds++, budget: { ...most, ...budget } };
};

describe('time budgets in the editor', () => {
  it('end standing water that takes too long, say so, and judge everything else', async () => {
    const { evaluation } = workOut(await world(), name, undefined, { clock: ticking({ ponding: 1 }) });
    expect(evaluation?.notChecked).toContainEqual({
      id: 'frame-ponding',
      reason: 'water standing on the frame: took longer than 1 s',
    });
    expect(evaluation?.findings.map(({ id }) => id)).toContain('over-span');
  });

  it('end gusts that were asked for afterwards', async () => {
    const result = workOut(await world(), name, undefined, { clock: ticking({}) });
    const told = answer(result, { gusts: true }, { clock: ticking({ gusts: 1 }) }).evaluation;
    expect(told?.gusts).toBe(undefined);
    expect(told?.notChecked).toContainEqual({
      id: 'gusts',
      reason: 'the order in which parts give way: took longer than 1 s',
    });
    expect(answer(result, { gusts: true }, { clock: ticking({}) }).evaluation?.gusts).toBeDefined();
  });

  it('end the whole house', async () => {
    const doing = { cancelled: () => false, progress: () => undefined };
    const short = wholeHouseBy(ticking({ 'whole-house': 1 }));
    const { notChecked } = (await short([await world()], { shelter: name }, doing)) as WholeHouse;
    expect(notChecked).toContainEqual({
      id: 'whole-house',
      reason: 'the whole house in space: took longer than 1 s',
    });
  });

  it('leave the same answer for the same words, however long it took', async () => {
    const one = workOut(await world(), name, undefined);
    const other = workOut(await world(), name, undefined, { clock: ticking({}) });
    expect(JSON.stringify(one)).toBe(JSON.stringify(other));
  });
});
