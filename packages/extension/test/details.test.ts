import { readFileSync } from 'node:fs';
import { atGust, evaluate } from '@tautline/checks';
import { loadWorkspace } from '@tautline/language';
import { resolveShelter } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
import type { DetailWanted } from '../src/details.ts';
import { gustScale } from '../src/server/at-gust.ts';
import { detail } from '../src/server/details.ts';
import { jobs } from '../src/server/jobs.ts';
import { draw } from '../src/server/sheet-data.ts';

const folder = new URL('../../../examples/', import.meta.url);
const text = readFileSync(new URL('stub-arch.shelter', folder), 'utf8');
const [loaded] = (
  await loadWorkspace([{ uri: 'file:///growers/stub-arch.shelter', text }], (wanted) =>
    readFileSync(new URL(wanted.split('/').at(-1) ?? '', folder), 'utf8'),
  )
).shelters;
const shelter = loaded && resolveShelter(loaded.name, loaded.world).shelter;
if (loaded === undefined || shelter === undefined) throw new Error('the example cannot be worked out');
const { world } = loaded;
const evaluation = evaluate(shelter);
const { gusts: _gusts, analysis: _analysis, ...bare } = evaluation;
const ask = (wanted: DetailWanted, of: typeof bare = evaluation) => detail(of, world, wanted, 'metric');
const textOf = (wanted: DetailWanted): string => {
  const answer = ask(wanted);
  return answer.kind === 'file' && 'text' in answer ? answer.text : '';
};

describe('what the sheet asks for on demand', () => {
  it('draws movement under the load asked for, and says which loads there are', () => {
    const first = ask({ kind: 'overlay', overlay: 'deflected' });
    if (first.kind !== 'drawing' || first.loads === undefined) throw new Error('no drawing with loads');
    const other = first.loads.choices.find(({ id }) => id !== first.loads?.shown);
    const second = ask({ kind: 'overlay', overlay: 'deflected', load: other?.id ?? '' });
    expect(second).toMatchObject({ kind: 'drawing', loads: { shown: other?.id } });
    expect(second.kind === 'drawing' && second.svg).not.toBe(first.svg);
    expect(second.kind === 'drawing' && second.captions[0]).toContain(other?.title);
  });
  it('marks what fails first and the film-off gust, in words', () => {
    const chart = ask({ kind: 'gusts' });
    expect(chart).toMatchObject({ kind: 'drawing' });
    expect(chart.kind === 'drawing' && chart.svg).toMatch(/first to fail/);
    expect(chart.kind === 'drawing' && chart.svg).toMatch(/film-off gust/);
    const [now, old] = [undefined, true as const].map(
      (gustsOld) =>
        draw(evaluation, world, 'metric', { gustsOld }).facts.find(({ label }) => label === 'First to fail')
          ?.value,
    );
    expect(now).toMatch(/, gust \d+(\.\d+)? m\/s$/);
    expect(old).toBe(`${now} (before the last edits)`);
  });
  it('draws for a narrow page with the letters as large as ever', () => {
    const pageOf = (svg = ''): number => Number(/viewBox="0 0 (\d+)/.exec(svg)?.[1]);
    const sheets = [undefined, 480].map((wide) => draw(evaluation, world, 'metric', { wide }).drawings);
    for (const [n, { view, svg }] of (sheets[1] ?? []).entries()) {
      expect(pageOf(svg), view).toBeLessThanOrEqual(pageOf(sheets[0]?.[n]?.svg));
      expect(pageOf(svg), view).toBeLessThan(650);
      expect(svg).not.toMatch(/font-size="[1-9](\.|")/);
    }
    const over = detail(evaluation, world, { kind: 'overlay', overlay: 'along' }, 'metric', undefined, 480);
    expect(over.kind === 'drawing' && pageOf(over.svg)).toBeLessThan(650);
  });
  it('says that nothing is worked out rather than show an empty picture', () => {
    expect(ask({ kind: 'gusts' }, bare)).toMatchObject({ kind: 'nothing' });
    const water = ask({ kind: 'overlay', overlay: 'water' }, bare);
    expect(water.kind === 'drawing' && water.captions[0]).toMatch(/not calculated/);
  });
  it('gives the house in space with squares a reader of the units knows', () => {
    expect(ask({ kind: 'space' })).toMatchObject({ kind: 'space', grid: 1 });
    const feet = detail(evaluation, world, { kind: 'space' }, 'us');
    expect(feet.kind === 'space' && feet.description).toMatch(/Squares on the ground are 5 ft/);
  });
  it('writes files with colours of their own', () => {
    const plan = { kind: 'file', file: { format: 'svg', view: 'plan' } } as const;
    expect(ask(plan)).toMatchObject({ kind: 'file', name: expect.stringMatching(/-plan\.svg$/) });
    expect(textOf(plan)).toMatch(/^<svg/);
    expect(textOf(plan)).not.toMatch(/var\(/);
    expect(textOf({ kind: 'file', file: { format: 'png', view: 'plan' } })).toBe(textOf(plan));
    expect(textOf({ kind: 'file', file: { format: 'dxf', view: 'section' } })).toMatch(/SECTION[\s\S]*EOF/);
    expect(textOf({ kind: 'file', file: { format: 'csv' } }).split('\r\n').length).toBeGreaterThan(5);
  });
});

describe('the sheet at a gust', () => {
  const { analysis: frame } = evaluation;
  if (frame === undefined) throw new Error('the example has no frame');
  const slide = (
    gust: number,
    overlay: 'use' | 'deflected' | 'bending' | 'along' = 'deflected',
    load?: string,
  ) =>
    detail(
      evaluation,
      world,
      { kind: 'overlay', overlay, gust, ...(load === undefined ? {} : { load }) },
      'metric',
      atGust(shelter, frame, gust),
    );
  const first = evaluation.gusts?.failures.find(({ estimated }) => !estimated);
  if (first === undefined) throw new Error('nothing fails');

  it('has round stops in the units of the reader, and those one looks for', () => {
    for (const [system, unit] of [
      ['metric', 1],
      ['us', 0.44704],
    ] as const) {
      const { stops, marks, shown } = gustScale(evaluation, undefined, system);
      expect(stops[0]?.gust).toBe(0);
      expect(stops[shown]?.gust).toBe(shelter.site.gust);
      const own = marks.map(({ stop }) => stop);
      for (const [index, { gust, text }] of stops.entries()) {
        expect(text).toMatch(system === 'us' ? / mph$/ : / m\/s$/);
        if (!own.includes(index)) expect(gust / unit).toBeCloseTo(Math.round(gust / unit), 6);
      }
      expect(stops.map(({ gust }) => gust)).toEqual([...stops.map(({ gust }) => gust)].sort((a, b) => a - b));
      expect(marks.map(({ title }) => title)).toContain('first to fail');
    }
  });
  it('shows who has reached the limit above the first failure, and nobody below', () => {
    const below = slide(first.gust * 0.97);
    const above = slide(first.gust * 1.03);
    if (below.kind !== 'drawing' || above.kind !== 'drawing') throw new Error('no drawing');
    expect(below.uses?.every(({ state }) => state !== 'reached')).toBe(true);
    expect(above.uses?.filter(({ state }) => state === 'reached').map(({ part }) => part)).toContain(
      first.part,
    );
    expect(below.captions[0]).toMatch(/^At a gust of \d+.* m\/s none of \d+ limits is reached/);
    expect(above.captions[0]).toContain(first.what);
    expect(above.gusts?.stops[above.gusts.shown]?.text).toMatch(/m\/s/);
  });
  it('shows what bends along the house from its side', () => {
    const answer = slide(shelter.site.gust, 'along');
    if (answer.kind !== 'drawing') throw new Error('no drawing');
    expect(answer.svg).toContain('data-view="side"');
    expect(answer.captions.join(' ')).toContain('nothing along the house bends');
    expect(answer.loads?.choices.length).toBeGreaterThan(1);
  });
  it('moves more in a stronger gust, drawn to the same factor, and not at all without wind in the load', () => {
    const windy = frame.responses.find(({ load }) => load.wind !== undefined && load.use === 'service');
    const calm = frame.responses.find(
      ({ load, condition }) => load.wind === undefined && condition === 'permanent',
    );
    if (windy === undefined || calm === undefined) throw new Error('no such loads');
    const moved = (gust: number): string => {
      const answer = slide(gust, 'deflected', `${windy.condition}:${windy.load.id}`);
      return answer.kind === 'drawing' ? (answer.captions[1] ?? '') : '';
    };
    expect(moved(shelter.site.gust)).not.toBe(moved(shelter.site.gust * 0.5));
    const still = slide(5, 'bending', `${calm.condition}:${calm.load.id}`);
    expect(still.kind === 'drawing' && still.captions.at(-1)).toMatch(/no wind in this load/);
  });
});

describe('what exploring found', () => {
  const variant = {
    values: ['1 m'],
    verdict: 'holds',
    best: true,
    holds: true,
    cost: 400,
    costText: '400',
    gust: 30,
    gustText: '30 m/s',
  };
  const explored = {
    shelter: 'house',
    version: 1,
    varied: '',
    axes: ['bows spaced'],
    aims: [],
    of: 2,
    markdown: '',
    variants: [
      { ...variant, number: 1 },
      { ...variant, number: 2, best: false, holds: false, cost: 300, gust: 20 },
    ],
  };
  it('is drawn as cost against gust, with each variant in words', () => {
    const answer = ask({ kind: 'variants', explored });
    expect(answer).toMatchObject({ kind: 'drawing' });
    expect(answer.kind === 'drawing' && answer.svg).toContain('no other beats it');
    expect(answer.kind === 'drawing' && answer.description).toContain(
      '1: bows spaced 1 m; 400, 30 m/s, holds',
    );
  });
  it('has no chart without prices, and says so', () => {
    const bare = explored.variants.map(({ cost: _cost, costText: _text, ...rest }) => rest);
    expect(ask({ kind: 'variants', explored: { ...explored, variants: bare } })).toMatchObject({
      kind: 'nothing',
      why: expect.stringMatching(/prices/),
    });
  });
});

describe('the house in space as a file', () => {
  it('is binary glTF 2.0 of the shelter', async () => {
    const doing = { cancelled: () => false, progress: () => undefined };
    const bytes = (await jobs['glb']?.([world], { shelter: loaded.name }, doing)) as Uint8Array;
    expect(new TextDecoder().decode(bytes.subarray(0, 4))).toBe('glTF');
    expect(new DataView(bytes.buffer, bytes.byteOffset).getUint32(4, true)).toBe(2);
    expect(new DataView(bytes.buffer, bytes.byteOffset).getUint32(8, true)).toBe(bytes.length);
  });
});
