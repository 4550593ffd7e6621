/** Typing over an amount of a price list comes to what working everything out again would come to. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { bearingButForAmounts } from '../src/analyst/bearing.ts';
import { billOf, billOfNamed } from '../src/analyst/bill.ts';
import { repriced } from '../src/analyst/repriced.ts';
import type { AnalysisResult } from '../src/analyst/result.ts';
import { workOut } from '../src/analyst/work-out.ts';
import { loadWorkspace } from '../src/index.ts';

const folder = new URL('../../../examples/', import.meta.url);
const read = (uri: string): string => readFileSync(new URL(uri), 'utf8');
const day = '2026-11-25';

/** The shelters of an example, with a price list that says this. */
async function sheltersOf(name: string, change: (yard: string) => string) {
  const { shelters } = await loadWorkspace(
    [{ uri: new URL(name, folder).href, text: read(new URL(name, folder).href) }],
    (uri) => (uri.endsWith('yard.shelter') ? change(read(uri)) : read(uri)),
  );
  return shelters;
}

/** The frame holds the items of its members: nobody asks there what they cost. */
function parts(result: AnalysisResult | undefined) {
  const { evaluation, ...rest } = result ?? { evaluation: undefined };
  const { analysis, ...found } = evaluation ?? {};
  const frame = JSON.stringify(analysis, (key, value) => (key === 'prices' ? [] : value));
  return { ...rest, found, frame };
}

const dearer = (yard: string): string => yard.replace(/^( {2}price of \S+) (\d+)\./gm, '$1 1$2.');
const examples = readdirSync(folder).filter((name) => /-flawed\.shelter$|^lower-terrace/.test(name));

describe('a change of amounts', () => {
  it.each(examples)('in %s changes the bill, and all else is as it was', async (name) => {
    const [before, after] = [await sheltersOf(name, (yard) => yard), await sheltersOf(name, dearer)];
    for (const [index, { name: shelter, world }] of after.entries()) {
      const old = before[index]!;
      expect(bearingButForAmounts(shelter, world)).toBe(bearingButForAmounts(shelter, old.world));
      const first = workOut(old.world, shelter, day, {}, 'later');
      const fresh = workOut(world, shelter, day, {}, 'later');
      const kept = repriced(world, first);
      expect(parts(kept)).toEqual(parts(fresh));
      const [cheap, dear] = [old.world, world].map((one) => billOfNamed(shelter, one));
      if (cheap) expect(dear?.total).toBeGreaterThan(cheap.total);
      // As the sheet sums it up: from what was worked out, with the prices in that.
      expect(kept && billOf(kept.evaluation?.shelter ?? kept.judged!.range, world)).toEqual(dear);
    }
  });

  it('is not one where things gain or lose their price, or are sold another way', async () => {
    const name = 'bed-arch.shelter';
    const [old] = await sheltersOf(name, (yard) => yard);
    for (const [from, to] of [
      [/ {2}price of pvc40-25 .*\n/, ''],
      ['price of pvc40-25 6.20 per 20 ft', 'price of pvc40-25 6.20 per 10 ft'],
      ['price of pvc40-25 6.20', 'price of pvc40-40 6.20'],
      ['prices {', 'prices {\n  price of emt-16 4.00 per piece'],
      ['at 20 ft', 'at 10 ft'],
    ] as const) {
      const [changed] = await sheltersOf(name, (yard) => yard.replace(from, to));
      expect(bearingButForAmounts('bed-arch', changed!.world), String(from)).not.toBe(
        bearingButForAmounts('bed-arch', old!.world),
      );
    }
  });

  it('keeps nothing of what was never worked out', async () => {
    const [loaded] = await sheltersOf('bed-arch.shelter', (yard) => yard);
    expect(repriced(loaded!.world, { shelter: 'bed-arch', problems: [] })).toBe(undefined);
  });
});
