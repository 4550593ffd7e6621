/** The changes offered for a short last bay come out even. */

import { evaluate, fixesFor } from '@tautline/checks';
import { loadWorkspace } from '@tautline/language';
import { applyEdits, newNotes, resolveItems, resolveShelter } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';

const house = (footprint: string, spacing: string): string => `site field { gust 20 m/s; soil loam }
shelter h on field {
  footprint ${footprint}
  bows spaced ${spacing} { of pvc40-25; shape elastic; rise 1.2 m; foot stub of rebar-12 { length 4 ft; deep 2 ft } }
}`;

async function told(footprint: string, spacing: string, system: 'metric' | 'us') {
  const workspace = await loadWorkspace([{ uri: 'file:///t/h.shelter', text: house(footprint, spacing) }]);
  const { world, name: shelterName } = workspace.shelters[0]!;
  const { shelter } = resolveShelter(shelterName, world);
  const evaluation = evaluate(shelter!, { gusts: false });
  const finding = evaluation.findings.find(({ id }) => id === 'last-bay')!;
  const stock = { items: resolveItems(world, newNotes()) };
  const fixes = fixesFor(finding, evaluation, { world, shelterName, stock, system });
  const lastBays = fixes.map(({ edits }) => {
    const after = resolveShelter(shelterName, {
      ...world,
      definitions: applyEdits(world.definitions, edits),
    });
    const { stations, spacing: apart } = after.shelter!.roof;
    return { apart, share: (stations.at(-1)! - stations.at(-2)!) / apart, length: after.shelter!.length };
  });
  return { finding, lastBays };
}

describe('a short last bay', () => {
  it('of 6 in is mended by a handy spacing that divides, or by a length of whole bays', async () => {
    const { finding, lastBays } = await told('12 ft by 32 ft', '3 ft 6 in', 'us');
    expect(finding.verdict).toBe('fails');
    expect(finding.severity).toBe('warning');
    expect(finding.utilisation).toBeCloseTo(21 / 6, 6);
    // 32 ft in twelve bays of 32 in; or 31 ft 6 in, or 35 ft.
    expect(lastBays.map(({ apart }) => apart / 0.0254)).toEqual([
      expect.closeTo(32, 6),
      expect.closeTo(42, 6),
      expect.closeTo(42, 6),
    ]);
    for (const { share } of lastBays) expect(share).toBeCloseTo(1, 6);
    expect(lastBays.map(({ length }) => length / 0.3048)).toEqual([
      expect.closeTo(32, 6),
      expect.closeTo(31.5, 6),
      expect.closeTo(35, 6),
    ]);
  });

  it('gets a spacing to the centimetre where none divides, with a last bay like the others', async () => {
    const { lastBays } = await told('3 m by 10.07 m', '1.2 m', 'metric');
    const [first] = lastBays;
    expect(first!.apart).toBeLessThanOrEqual(1.2);
    expect(first!.apart / 0.01).toBeCloseTo(Math.round(first!.apart / 0.01), 6);
    expect(first!.share).toBeGreaterThan(0.9);
  });

  it('passes where the rest is half a bay or more', async () => {
    expect((await told('3 m by 10.2 m', '1.2 m', 'metric')).finding.verdict).toBe('passes');
    expect((await told('3 m by 9.6 m', '1.2 m', 'metric')).finding.utilisation).toBeCloseTo(0.5, 6);
  });
});
