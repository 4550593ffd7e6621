import { evaluate } from '@tautline/checks';
import { loadWorkspace } from '@tautline/language';
import { resolveShelter } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
import { type Duty, dutiesOf, sourcesOf } from '../src/index.ts';

const on = '2029-06-15';

async function duties(facts: string, installed = 'installed 2026-03-01'): Promise<readonly Duty[]> {
  const text = `site here { gust 20 m/s once per 50 yr; exposure sheltered; elevation 10 m; rain 80 mm/h; soil loam; basis asce7-asd }
shelter row on here {
  footprint 6 ft by 24 ft
  bows spaced 4 ft of pvc40-25 { shape elastic; rise 3 ft; foot stub of rebar-16 { length 4 ft; deep 2 ft } }
  cover roof with film-uv-150 { tension 150 N/m; ${installed} }
  ${facts}
}
`;
  const workspace = await loadWorkspace([{ uri: 'file:///row.shelter', text }]);
  expect(workspace.problems).toEqual([]);
  const loaded = workspace.shelters[0]!;
  const { shelter } = resolveShelter(loaded.name, loaded.world);
  return dutiesOf(sourcesOf(loaded).shelter!, evaluate(shelter!, { on, gusts: false }), { on, within: 3 });
}

const of = (all: readonly Duty[], kind: Duty['kind']): [string | undefined, string][] =>
  all.filter((duty) => duty.kind === kind).map(({ day, state }) => [day, state]);

describe('renewals', () => {
  // The film lasts 4 yr of 365.25 days: 1461 days from 2026-03-01 are 2030-03-01.
  it.each([
    ['installed 2026-03-01', '2030-03-01', 'later'],
    ['installed 2025-07-01', '2029-07-01', 'due'],
    ['installed 2025-06-14', '2029-06-14', 'overdue'],
    ['installed 2025-06-15', '2029-06-15', 'due'],
  ])('%s: %s, %s', async (installed, day, state) => {
    expect(of(await duties('', installed), 'renewal')).toEqual([[day, state]]);
  });

  it('are due of straps and clips too, from the day of the film or their own', async () => {
    const with_ = async (more: string): Promise<[string, string | undefined][]> =>
      (await duties('', `installed 2026-03-01; ${more}`))
        .filter(({ kind, part }) => kind === 'renewal' && part !== 'cover-roof')
        .map(({ part, day }) => [part, day]);
    // 3 yr and 5 yr of 365.25 days.
    expect(await with_('strapped by rope-over-6 every 4 ft')).toEqual([['cover-roof/straps', '2029-02-28']]);
    expect(await with_('strapped by rope-over-6 every 4 ft since 2028-03-01')).toEqual([
      ['cover-roof/straps', '2031-03-01'],
    ]);
    expect(await with_('fastened by snap-clip every 1 ft since 2027-01-01')).toEqual([
      ['cover-roof/edge', '2032-01-01'],
    ]);
    expect(await with_('fastened by channel-spring')).toEqual([]);
  });

  it('has no day where the spec does not say when it went on', async () => {
    expect(of(await duties('', ''), 'renewal')).toEqual([[undefined, 'not known']]);
  });
});

describe('the inspection log', () => {
  it.each([
    ['', undefined, 'not known'],
    ['built 2029-05-01', '2029-08-01', 'due'],
    ['built 2028-01-01; inspected 2029-05-31 "strap renewed at bay 3"', '2029-08-31', 'due'],
    ['inspected 2029-05-01; inspected 2028-11-30', '2029-08-01', 'due'],
    ['inspected 2028-11-30', '2029-02-28', 'overdue'],
  ])('%s', async (facts, day, state) => {
    expect(of(await duties(facts), 'inspection')).toEqual([[day, state]]);
  });

  it('tells the last entry', async () => {
    const found = await duties('inspected 2029-05-01 "strap renewed at bay 3"');
    expect(JSON.stringify(found.find(({ kind }) => kind === 'inspection')?.why)).toContain(
      'strap renewed at bay 3',
    );
  });
});

describe('promises and seasons', () => {
  it('run out on their day', async () => {
    const found = await duties(
      'accept abrasion because "old film between" until 2029-07-01; season from 2029-01-01 to 2029-06-01',
    );
    expect(of(found, 'acceptance')).toEqual([['2029-07-01', 'due']]);
    expect(of(found, 'season')).toEqual([['2029-06-01', 'overdue']]);
  });
});

describe('wood in the soil', () => {
  const posts =
    'ridge rail of lumber-2x4 { posts of pole spaced 8 ft { foot hole { deep 2 ft; across 10 in } } }';
  it('is counted from the day the frame stood', async () => {
    const wood = posts.replace('pole', 'bamboo-75');
    // The check of rot gives bamboo two years in the soil.
    expect(of(await duties(`built 2027-01-01; ${wood}`), 'rot')).toEqual([['2028-12-31', 'overdue']]);
    expect(of(await duties(wood), 'rot')).toEqual([[undefined, 'not known']]);
    expect((await duties(wood)).find(({ kind }) => kind === 'rot')?.what).toMatch(/^set new [a-z ]+$/);
  });
});
