import { WATER_WEIGHT } from '@tautline/loads';
import { WATER } from '@tautline/mechanics';
import { describe, expect, it } from 'vitest';
import { cableUnderLoad, filmPanel, pocketDepth, pullAt, sagUnder } from '../src/index.ts';
import { film, sprungHouse } from './fixtures.ts';

const cover = { ...sprungHouse().covers[0]!, tension: 200 };
const panel = filmPanel(cover, 1.2)!;

it('water weighs the same for the loads as for what it stands on', () => {
  expect(WATER).toBe(WATER_WEIGHT);
});

describe('film between two frames', () => {
  it('keeps half its pull at the temperature it was fitted at, and loses E t α per degree above', () => {
    expect(pullAt(panel, cover.fittedAt).pull).toBeCloseTo(100, 9);
    const warmer = pullAt(panel, cover.fittedAt + 5);
    expect(warmer.pull).toBeCloseTo(100 - film.modulus * film.thickness * film.expansion * 5, 9);
    const hot = pullAt(panel, cover.fittedAt + 40);
    expect(hot.pull).toBe(0);
    expect(hot.slack).toBeGreaterThan(0);
  });

  it('sags as a strip of given pull while the sag is small: f = p s²/8T', () => {
    const state = { pull: 5000, slack: 0 };
    expect(sagUnder(panel, state, 10)).toBeCloseTo((10 * 1.2 ** 2) / (8 * 5000), 6);
  });

  it('holds water without a pocket from the pull γ s²/π² on', () => {
    const limit = (WATER * 1.2 ** 2) / Math.PI ** 2;
    expect(pocketDepth(panel, { pull: limit * 1.001, slack: 0 })).toBe(0);
    expect(pocketDepth(panel, { pull: limit * 0.9, slack: 0 })).toBeGreaterThan(0);
  });
});

describe('cable ridge', () => {
  const cable = {
    kind: 'cable',
    id: 'c',
    title: 'wire',
    source: 'test',
    origin: cover.origin,
    prices: [],
    diameter: 0.004,
    breakingLoad: 9e3,
    modulus: 110e9,
    area: 7e-6,
    massPerLength: 0.06,
  } as const;

  it('with a large pretension sags w L²/8T', () => {
    expect(cableUnderLoad(cable, 3, 1e6, 50).sag).toBeCloseTo((50 * 9) / (8 * 1e6), 9);
  });

  it('without pretension follows T = (w² L² E A / 24)^(1/3)', () => {
    const { tension } = cableUnderLoad(cable, 3, 0, 50);
    expect(tension).toBeCloseTo(((50 ** 2 * 3 ** 2 * cable.modulus * cable.area) / 24) ** (1 / 3), 3);
  });
});
