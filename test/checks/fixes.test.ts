/** Fixes that take more than one lever, and what they do to other checks. */
import { evaluate, exampleSpecs, fixesFor, messageText } from '@tautline/checks';
import { loadWorkspace } from '@tautline/language';
import { applyEdits, newNotes, resolveItems, resolveShelter } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';

const text = `site plot {
  gust 20 m/s
  exposure open
  soil loam
}
shelter house on plot {
  footprint 5 m by 12 m
  bows spaced 2.4 m {
    of emt-21
    shape cold-bent
    rise 2.2 m
    leg 0.6 m
    foot concrete { deep 1.2 m; across 0.5 m; held clamped }
  }
  braces along of emt-21 { at corners }
  cover roof with film-uv-150 { fastened by channel-spring every 0.5 m; tension 250 N/m }
}
`;

async function opened(system: 'metric' | 'us', spec = text, tier: 'live' | 'full' = 'live') {
  const workspace = await loadWorkspace([{ uri: 'file:///fixes.shelter', text: spec }]);
  const loaded = workspace.shelters[0]!;
  const { shelter } = resolveShelter(loaded.name, loaded.world);
  if (shelter === undefined) throw new Error('the spec cannot be resolved');
  const stock = { items: resolveItems(loaded.world, newNotes()) };
  return {
    evaluation: evaluate(shelter, { tier }),
    context: { world: loaded.world, shelterName: loaded.name, stock, system },
  };
}

describe('fixes', () => {
  it('take other stock and closer bows together where neither does it alone', async () => {
    const { evaluation, context } = await opened('metric');
    const finding = evaluation.findings.find((one) => one.id === 'over-span' && one.verdict === 'fails');
    if (finding === undefined) throw new Error('nothing fails');
    const fixes = fixesFor(finding, evaluation, context);
    const told = fixes.map((fix) => messageText(fix.title, 'metric'));
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(/^Use .*, and space the bows [\d.]+ m apart$/);
    expect(fixes[0]!.utilisationAfter).toBeLessThanOrEqual(1);
    expect(new Set(fixes[0]!.edits.map((edit) => ('word' in edit ? edit.word : edit.type)))).toEqual(
      new Set(['of', 'spaced']),
    );
  });

  it('make nothing worse that fails, as far as they can', async () => {
    const { evaluation, context } = await opened('metric');
    for (const finding of evaluation.findings.filter((one) => one.severity === 'error'))
      for (const [index, fix] of fixesFor(finding, evaluation, context).entries())
        if (index === 0) expect(fix.worse, finding.id).toEqual([]);
  });

  it('dig whole inches where the grower thinks in inches', async () => {
    const shallow = text.replace(/foot concrete .*/, 'foot driven { deep 0.3 m; held clamped }');
    const { evaluation, context } = await opened('us', shallow);
    const finding = evaluation.findings.find((one) => one.id === 'pull-out' && one.verdict === 'fails')!;
    const told = fixesFor(finding, evaluation, context).map((fix) => messageText(fix.title, 'us'));
    expect(told.find((title) => title.startsWith('Set each foot in concrete'))).toMatch(
      /, \d+ in across and [\d ]+(ft|in)/,
    );
  });

  it('of the whole house are tried on whole houses', async () => {
    const { evaluation, context } = await opened('us', exampleSpecs('end-frame')!.bad, 'full');
    const finding = evaluation.findings.find((one) => one.id === 'end-frame' && one.verdict === 'fails')!;
    const fixes = fixesFor(finding, evaluation, context);
    expect(fixes.length).toBeGreaterThan(0);
    for (const { edits, utilisationAfter } of fixes) {
      const definitions = applyEdits(context.world.definitions, edits);
      const { shelter } = resolveShelter(context.shelterName, { ...context.world, definitions });
      const after = evaluate(shelter!, { tier: 'full', gusts: false }).findings.filter(
        (one) => one.id === 'end-frame' && one.part === finding.part,
      );
      expect(after[0]?.utilisation).toBeCloseTo(utilisationAfter, 9);
      expect(utilisationAfter).toBeLessThanOrEqual(1);
    }
  }, 60_000);

  it('of uprights and of the rail in an end are stouter stock, or more uprights', async () => {
    const spindly = exampleSpecs('end-frame')!
      .good.replace(/gust 20/, 'gust 40')
      .replace('end-frames of lumber-2x4', 'end-frames of lumber-1x3')
      .replace('rail of lumber-2x4', 'rail of lumber-1x3');
    const { evaluation, context } = await opened('us', spindly, 'full');
    const told = (part: string): string[] => {
      const finding = evaluation.findings.find((one) => one.id === 'end-frame' && one.part === part);
      // Not all of them fail: what would be tried is asked all the same.
      return fixesFor({ ...finding!, verdict: 'fails' }, evaluation, context).map(({ title }) =>
        messageText(title, 'us'),
      );
    };
    expect(told('end-frames').join()).toMatch(/Use Lumber/);
    expect(told('end-frames/rail').join()).toMatch(/Use Lumber|uprights in each end/);
    const ranked = evaluation.gusts!.failures.filter(({ check }) => check === 'end-frame');
    expect(new Set(ranked.map(({ part }) => part))).toEqual(
      new Set(['end-frames', 'end-frames/rail', 'end-frames/foot']),
    );
    for (const { part, gust } of ranked) {
      const own = evaluation.findings.find((one) => one.id === 'end-frame' && one.part === part)!;
      expect(gust < evaluation.shelter.site.gust, part).toBe(own.utilisation! > 1);
    }
  }, 120_000);
});
