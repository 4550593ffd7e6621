import type { Bows, Filled, Shelter } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
import { analyseFrame, gravity, sectionOf } from '../src/index.ts';
import { barStiffness, fillingAlong, fillingWeight } from '../src/system/filling.ts';
import { ownWeight } from '../src/system/frame-system.ts';
import { pvcOneInch as pipe, sprungHouse } from './fixtures.ts';

const filled: Filled = {
  upTo: 0.6,
  with: 'concrete',
  member: { ...pipe, section: { shape: 'round-solid', outside: 0.012 } },
};

/** Vertical reactions under the house's own weight alone, N. */
function standing(shelter: Shelter): number {
  const frame = analyseFrame(shelter);
  if (!frame.ok) throw new Error(frame.reason);
  const dead = frame.analysis.states.built.system;
  return dead.elements.reduce((sum, one) => sum + ownWeight(one) * one.length, 0);
}

describe('what fills a member', () => {
  it('weighs as much as the concrete in its bore, less the bar, and the bar: up to its height', () => {
    if (pipe.section.shape !== 'round-hollow') throw new Error('not hollow');
    const bore = Math.PI * (pipe.section.outside / 2 - pipe.section.wall) ** 2;
    const bar = Math.PI * 0.006 ** 2;
    const expected = (bore - bar) * 2300 * gravity + bar * pipe.material.density * gravity;
    expect(fillingWeight(filled, pipe, 0.5)).toBeCloseTo(expected, 9);
    expect(fillingWeight(filled, pipe, 0.7)).toBe(0);
    expect(fillingWeight(undefined, pipe, 0.5)).toBe(0);
  });

  it('bends along: the bar adds its own stiffness and no more, since no bond is relied on', () => {
    const bar = filled.member!;
    expect(barStiffness(filled, 0.5)).toBeCloseTo(bar.material.modulus * sectionOf(bar).secondMoment, 9);
    expect(barStiffness({ upTo: 1, with: 'concrete' }, 0.5)).toBe(0);
  });

  it('stands along a post: its bar, or else its concrete, where it reaches the head', () => {
    const bar = filled.member!;
    expect(fillingAlong(filled, pipe, 0.6)).toBeCloseTo(bar.material.modulus * sectionOf(bar).area, 6);
    expect(fillingAlong(filled, pipe, 2)).toBe(0);
    if (pipe.section.shape !== 'round-hollow') throw new Error('not hollow');
    const bore = Math.PI * (pipe.section.outside / 2 - pipe.section.wall) ** 2;
    expect(fillingAlong({ upTo: 2, with: 'concrete' }, pipe, 2)).toBeCloseTo(10e9 * bore, 3);
  });

  it('counts in the own weight of a bow up to its height over the ground, on both legs', () => {
    const house = sprungHouse();
    const bows = house.roof as Bows;
    const heavier = standing({ ...house, roof: { ...bows, filled } }) - standing(house);
    const legs = bows.line.reduce((sum, to, k) => {
      const from = bows.line[k - 1];
      return from && (from.y + to.y) / 2 < filled.upTo ? sum + to.s - from.s : sum;
    }, 0);
    const ofLegs = heavier / fillingWeight(filled, pipe, 0);
    // Whole elements are filled or not: one of 32 is the most either leg can be off.
    expect(Math.abs(ofLegs - legs)).toBeLessThan((2 * bows.length) / 32);
    expect(heavier).toBeGreaterThan(0);
  });
});
