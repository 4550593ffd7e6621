import { readFileSync } from 'node:fs';
import { evaluate, evaluateRange } from '@tautline/checks';
import { loadWorkspace } from '@tautline/language';
import { resolveRange, resolveShelter } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
import { calculation } from '../src/server/calculation.ts';
import { detail, rangeDetail } from '../src/server/details.ts';
import { drawRange } from '../src/server/range-sheet.ts';
import { draw } from '../src/server/sheet-data.ts';

const folder = new URL('../../../examples/', import.meta.url);

async function verdictOf(name: string) {
  const text = readFileSync(new URL(name, folder), 'utf8');
  const workspace = await loadWorkspace([{ uri: `file:///growers/${name}`, text }], (wanted) =>
    readFileSync(new URL(wanted.split('/').at(-1) ?? '', folder), 'utf8'),
  );
  const [loaded] = workspace.shelters;
  if (loaded === undefined) {
    throw new Error(`${name} holds no shelter`);
  }
  const { shelter, problems } = resolveShelter(loaded.name, loaded.world);
  if (shelter === undefined) {
    throw new Error(problems.map(({ message }) => message).join('; '));
  }
  const evaluation = evaluate(shelter);
  return {
    text,
    workspace,
    evaluation,
    world: loaded.world,
    sheet: draw(evaluation, loaded.world, 'metric'),
  };
}

describe('the sheet of an example', () => {
  it.each([
    ['stub-arch.shelter', ['section', 'plan', 'side', 'setting-out']],
    ['cable-house.shelter', ['section', 'plan', 'side', 'setting-out']],
    ['timber-gable.shelter', ['section', 'plan', 'side', 'setting-out']],
    ['conduit-arch.shelter', ['section', 'plan', 'side', 'end', 'setting-out']],
  ] as const)('draws %s with every part written on a line of a text', async (name, views) => {
    const { text, workspace, sheet } = await verdictOf(name);
    expect(sheet.drawings.map(({ view }) => view)).toEqual(views);
    expect(sheet.parts.length).toBeGreaterThan(2);
    for (const part of sheet.parts) {
      const place = workspace.placeOf(part.origin);
      expect(place?.from.line, part.id).toBeLessThan(text.split('\n').length);
    }
    const section = sheet.drawings[0]?.svg ?? '';
    const drawn = [...section.matchAll(/data-part="([^"]+)" data-kind="part"/g)].map((match) => match[1]);
    expect(sheet.parts.filter(({ id }) => drawn.includes(id)).length).toBeGreaterThan(1);
    expect(sheet.materials.length).toBeGreaterThan(3);
    expect(JSON.stringify(sheet)).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('draws only what is on show, and the rest alike when it is asked for', async () => {
    const { evaluation, world, sheet } = await verdictOf('conduit-arch.shelter');
    const parted = draw(evaluation, world, 'metric', { view: 'plan' });
    expect(parted.drawings.map(({ view }) => view)).toEqual(sheet.drawings.map(({ view }) => view));
    for (const [n, { view, svg }] of parted.drawings.entries()) {
      const whole = sheet.drawings[n];
      if (view === 'plan') expect(svg).toBe(whole?.svg);
      else {
        expect(svg).toBe(undefined);
        const { svg: alone, description } = whole ?? {};
        expect(detail(evaluation, world, { kind: 'view', view }, 'metric')).toMatchObject({
          kind: 'drawing',
          svg: alone,
          description,
        });
      }
    }
    expect({ ...parted, drawings: [] }).toEqual({ ...sheet, drawings: [] });
    const none = draw(evaluation, world, 'metric', { view: 'none' });
    expect(none.drawings).toEqual(sheet.drawings.map(({ view }) => ({ view })));
  });

  it('prices what has a price, in the currency of the project', async () => {
    const { sheet } = await verdictOf('stub-arch.shelter');
    expect(sheet.facts.find(({ label }) => label.startsWith('Cost'))?.value).toMatch(/\d.* XTS$/);
  });
});

describe('the sheet of a range', () => {
  it('has a plan whose parts are lines of the text, and the materials of all its shelters', async () => {
    const { workspace, sheet: one } = await verdictOf('row-arch.shelter');
    const loaded = workspace.shelters.find(({ kind }) => kind === 'range');
    const { range } = resolveRange('salad-rows', loaded!.world);
    const sheet = drawRange({ range: range!, verdict: evaluateRange(range!) }, loaded!.world, 'metric');
    expect(sheet.drawings.map(({ view }) => view)).toEqual(['plan']);
    expect(sheet.parts.map(({ id, title }) => [id, title])).toEqual([
      ['range', '6 shelters, 1 m apart'],
      ['stand-1', '6 of row-arch'],
      ['tied', expect.stringMatching(/^Ties of .*, 5 m apart$/)],
    ]);
    for (const { id, origin } of sheet.parts) {
      expect(sheet.drawings[0]?.svg).toContain(`data-part="${id}"`);
      expect(workspace.placeOf(origin), id).toBeDefined();
    }
    expect(sheet.materials.length).toBeGreaterThanOrEqual(one.materials.length);
    expect(sheet.facts.find(({ label }) => label === 'Shelters')?.value).toBe('6');
    expect(JSON.stringify(sheet)).not.toMatch(/NaN|undefined|Infinity/);
    const list = rangeDetail(range!, loaded!.world, { kind: 'file', file: { format: 'csv' } }, 'metric');
    expect(list).toMatchObject({ kind: 'file', name: 'salad-rows-materials.csv' });
    expect(rangeDetail(range!, loaded!.world, { kind: 'gusts' }, 'metric')).toMatchObject({
      kind: 'nothing',
    });
  });
});

describe('the calculation page', () => {
  it('shows steps, inputs and source of a finding', async () => {
    const { evaluation } = await verdictOf('stub-arch-flawed.shelter');
    const [finding] = evaluation.findings.filter(({ verdict }) => verdict === 'fails');
    if (finding === undefined) {
      throw new Error('the flawed example has no failing check');
    }
    const page = calculation(evaluation.shelter.name, [finding], 'metric');
    expect(page.title).toContain(finding.id);
    for (const step of finding.steps) {
      expect(page.markdown).toContain(`\`${step.formula}\``);
    }
    expect(page.markdown).toMatch(/^Source: /m);
    expect(page.markdown).not.toMatch(/NaN|undefined/);
  });
});
