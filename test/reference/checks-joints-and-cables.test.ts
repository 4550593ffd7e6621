/** Bearing of wood, pressed tubes and cables against published numbers; each names its source. */
import { tubeCrushing, woodBearing, woodBearingEn } from '@tautline/loads';
import { describe, expect, it } from 'vitest';
import { evaluated } from './spec-loader.ts';

const inch = 0.0254;

describe('wood across the grain', () => {
  it.each([
    [0.5, 1.75],
    [1, 1.38],
    [1.5, 1.25],
    [2, 1.19],
    [3, 1.13],
    [4, 1.1],
  ])('NDS table 3.10.4, bearing area factor at %s in: %s (rounded table, from memory)', (long, factor) => {
    const bare = 1e6 * (long * inch) * 0.1;
    const got = woodBearing(1e6, long * inch, 0.1, false, 'asce7-asd').force / bare;
    // The table rounds to hundredths, upwards at the longer ones.
    expect(Math.abs(got - factor)).toBeLessThan(0.007);
  });

  it('EN 1995-1-1 6.1.5 (its factors in two public calculations) for C24 on 100 mm by 50 mm, medium term, service class 2: 18.5 kN (computed by hand)', () => {
    // 1.5 · 0.8 · 2.5 N/mm2 / 1.3 · (100 + 2 · 30) mm · 50 mm
    const { force } = woodBearingEn(2.5e6, 0.1, 0.05, 'weeks', false);
    expect(force).toBeCloseTo((1.5 * 0.8 * 2.5 * 160 * 50) / 1.3, 6);
  });

  it('EN 1995-1-1 6.1.5 (1) lends no more at each side than the bearing is long', () => {
    const per = (l: number): number => woodBearingEn(2.5e6, l, 0.05, 'weeks', false).force / l;
    expect(per(0.01) / per(0.03)).toBeCloseTo(1, 12);
  });
});

describe('a tube pressed flat', () => {
  it('EN 1993-1-8 table 7.3, plate along S235 48.3 x 3.2 over 100 mm: 18.3 kN (formula from memory)', () => {
    const { force } = tubeCrushing(235e6, 0.0483, 0.0032, 0.1);
    expect(force / 1000).toBeCloseTo(5 * 0.235 * 3.2 ** 2 * (1 + (0.25 * 100) / 48.3), 9);
    expect(force / 1000).toBeCloseTo(18.26, 2);
  });
});

describe('a ridge cable', () => {
  const house = `shelter cabled on test-plot {
  footprint 13 ft by 40 ft
  bows spaced 2 ft 6 in {
    of pvc40-25; shape elastic; length 20 ft
    foot stub of rebar-16 { length 6 ft; deep 3 ft 6 in; held clamped }
  }
  ridge cable of wire-4 {
    tension 2 kN
    frames tied
    posts of lumber-4x4 spaced 10 ft { foot concrete { deep 2 ft 6 in; across 14 in } }
    foot deadman of log-deadman { deep 3 ft }
  }
  ends open
  cover roof with film-uv-150 { fastened by board-1x3; tension 200 N/m }
}`;
  /** Metal area and breaking load of `wire-4` in the catalogue. */
  const area = 12.6e-6;
  const breaking = 12_500;

  it('handbooks, steel that may not grow: 195 psi for each degree Fahrenheit (from memory), within 5 %', async () => {
    const { findings } = await evaluated(house);
    const slack = findings.find(({ id }) => id === 'cable-slack');
    // From the 20 °C of setting up to the 50 °C of the site.
    const perFahrenheit = slack!.demand!.value / area / 6894.757 / (30 * 1.8);
    expect(Math.abs(perFahrenheit / 195 - 1)).toBeLessThan(0.05);
  });

  it('TM 5-3810-305-10 table 4, terminal efficiency of clips: 80 %', async () => {
    const { findings } = await evaluated(house);
    const span = findings.find(({ id, part }) => id === 'rail-span' && part === 'ridge');
    expect((3 * span!.capacity!.value) / breaking).toBeCloseTo(0.8, 9);
  });
});
