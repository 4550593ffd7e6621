import { readFileSync } from 'node:fs';
import { evaluate } from '@tautline/checks';
import { loadWorkspace } from '@tautline/language';
import { resolveShelter } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
import type { DetailWanted } from '../src/details.ts';
import { detail } from '../src/server/details.ts';
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
    expect(draw(evaluation, world, 'metric').facts.map(({ label }) => label)).toContain('First to fail');
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
    const svg = ask({ kind: 'file', file: { format: 'svg', view: 'plan' } });
    expect(svg).toMatchObject({ kind: 'file', name: expect.stringMatching(/-plan\.svg$/) });
    expect(svg.kind === 'file' && svg.text).not.toMatch(/var\(/);
    const dxf = ask({ kind: 'file', file: { format: 'dxf', view: 'section' } });
    expect(dxf.kind === 'file' && dxf.text).toMatch(/SECTION[\s\S]*EOF/);
    const csv = ask({ kind: 'file', file: { format: 'csv' } });
    expect(csv.kind === 'file' && csv.text.split('\r\n').length).toBeGreaterThan(5);
  });
});
