import { type Rafters, type Shelter, singleSlopeLine } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
import { bothWays } from '../src/actions/wind.ts';
import { analyseFrame, build, conditionAt, gustSweep, rafterFrame, windCaseOnFrame } from '../src/index.ts';
import { postStock, site, sprungHouse } from './fixtures.ts';

/** A lean-to whose right side is the high one, held at its eaves. */
function leanTo(): { shelter: Shelter; rafters: Rafters } {
  const base = sprungHouse();
  const rafters: Rafters = {
    type: 'rafters',
    id: 'rafters',
    origin: base.origin,
    form: 'single-slope',
    member: postStock,
    spacing: 1,
    stations: [0, 1, 2],
    span: 4,
    rise: 1,
    camber: 0,
    overhang: 0,
    springing: 2,
    length: Math.hypot(4, 1),
    line: singleSlopeLine(4, 1, 0).map((point) => ({ ...point, y: point.y + 2 })),
    joints: [],
    wrapped: false,
  };
  return { shelter: { ...base, width: 4, roof: rafters, site: { ...site, gust: 30 } }, rafters };
}

const { shelter, rafters } = leanTo();
const system = rafterFrame(shelter, rafters, conditionAt(site, 'gust'), undefined);
const windCase = {
  id: 'test',
  title: 'test',
  direction: 'across',
  source: 'test',
  steps: [],
  zones: [
    { surface: 'roof', from: 0, to: 0.5, net: 100 },
    { surface: 'roof', from: 0.5, to: 1, net: 300 },
  ],
} as const;

/** Downward load of the left and the right half of the roof, N. */
function halves(from?: 'low side' | 'high side'): [number, number] {
  const loaded = windCaseOnFrame(shelter, system, from === undefined ? windCase : { ...windCase, from });
  const sum = [0, 0] as [number, number];
  for (const line of loaded.lines) {
    const element = system.elements[line.element]!;
    const middle = (element.from + element.to) / 2;
    sum[middle < rafters.length / 2 ? 0 : 1] -= line.wy * element.length;
  }
  return sum;
}

describe('wind on a single slope', () => {
  it('lays the zones on from the windward foot, whichever side that is', () => {
    const low = halves('low side');
    const high = halves('high side');
    expect(low[0]).toBeLessThan(low[1]);
    expect(high[0]).toBeCloseTo(low[1], 6);
    expect(high[1]).toBeCloseTo(low[0], 6);
  });

  it('is blown from both sides where the standard names none', () => {
    expect(bothWays(shelter, [windCase]).map((entry) => entry.from)).toEqual(['low side', 'high side']);
    expect(bothWays(sprungHouse(), [windCase])).toEqual([windCase]);
  });

  it('has a frame that stands once built', () => {
    expect(build(system).status).toBe('holds');
  });
});

describe('a person', () => {
  it('is in the combinations only when asked for', () => {
    const house = sprungHouse();
    const ids = (person: boolean): string[] => {
      const result = analyseFrame(house, { person });
      return result.ok ? result.analysis.cases.map((entry) => entry.nature) : [];
    };
    expect(ids(false)).not.toContain('person');
    expect(ids(true).filter((nature) => nature === 'person').length).toBe(3);
  });
});

describe('other gusts', () => {
  const result = analyseFrame(sprungHouse());
  if (!result.ok) throw new Error(result.reason);
  const { analysis } = result;
  const sweep = gustSweep(sprungHouse(), analysis);

  it('find the gust of a load that goes with the pressure alone: V √(1/u)', () => {
    // Share of the wind itself, read off the loads: a measure without any static part.
    const share = (response: (typeof analysis.responses)[number]): number => {
      const dead = analysis.cases.find((entry) => entry.nature === 'dead')!;
      const first = dead.lines[0]!;
      const line = response.load.lines.find((entry) => entry.element === first.element)!;
      return Math.abs(line.wx) / 40;
    };
    const now = Math.max(
      ...analysis.responses
        .filter((response) => response.load.wind !== undefined && response.load.use !== 'service')
        .map(share),
    );
    const limit = sweep.limitOf((response) => share(response) / (1.2 * now));
    expect(limit?.gust).toBeCloseTo(25 * Math.sqrt(1.2), 1);
  });

  it('has no limit for what never grows', () => {
    expect(sweep.limitOf(() => 0)).toBeUndefined();
    expect(sweep.limitOf(() => undefined)).toBeUndefined();
  });
});
