import { footSprings } from '@tautline/loads';
import type { Shelter } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
import { analyseFrame, analyseHouse, frameView, sectionOf } from '../src/index.ts';
import { foot, pipe, pipeRidge, pvc, sprungHouse } from './fixtures.ts';

const stout = pipe('stout', pvc, foot(1.9), foot(0.145), [9]);

/** A house of sprung bows with their feet clamped on stubs. */
function clamped(options: Parameters<typeof sprungHouse>[0] = {}): Shelter {
  const base = sprungHouse({ member: stout, ...options });
  const { roof } = base;
  if (roof.type !== 'bows') throw new Error('bows');
  return { ...base, roof: { ...roof, foot: { ...roof.foot!, fixity: 'clamped' } } };
}

const analysed = (shelter: Shelter, soil: boolean) => {
  const answer = analyseFrame(shelter, { soil });
  if (!answer.ok) throw new Error(answer.reason);
  return answer.analysis;
};

describe('feet that give as the soil does', () => {
  const shelter = clamped();
  const firm = analysed(shelter, false);
  const giving = analysed(shelter, true);
  const wind = (analysis: typeof firm) =>
    analysis.responses.find(({ load }) => load.wind?.startsWith('across') === true)!;

  it('move by the push over their spring, and turn the less the deeper they stand', () => {
    const { roof, site } = shelter;
    if (roof.type !== 'bows') throw new Error('bows');
    const { driven, stub } = roof.foot!;
    const stake = stub ?? roof.member;
    const rigidity = stake.material.modulus * sectionOf(stake).secondMoment;
    const springs = footSprings({ soil: site.soil, depth: driven, rigidity, waterlogged: site.soaked });
    const response = wind(giving);
    const { horizontal } = response.reactions.find(({ side }) => side === 'left')!;
    const state = giving.states.gust!;
    const before = state.result.displacements[0]!.dx;
    const moved = before + response.displacements[0]!.dx;
    expect(-moved * springs.sideways).toBeCloseTo(horizontal, 3);
    const deep = footSprings({
      soil: site.soil,
      depth: 2 * driven,
      rigidity,
      waterlogged: site.soaked,
    });
    expect(deep.turning).toBeGreaterThanOrEqual(springs.turning);
  });

  it('let the frame sway more, and the whole house too', () => {
    const sway = (analysis: typeof firm): number =>
      Math.max(...wind(analysis).displacements.map(({ dx }) => Math.abs(dx)));
    expect(sway(giving)).toBeGreaterThan(1.001 * sway(firm));
    expect(giving.notes.join()).toContain('Feet give');
    const [house, soft] = [false, true].map((soil) => {
      const answer = analyseHouse(shelter, { soil });
      if (!answer.ok) throw new Error(answer.reason);
      return frameView(shelter, firm, answer.house, 1);
    });
    expect(sway(soft!)).toBeGreaterThan(sway(house!));
  });

  it('leave feet that only stand on the ground, and rock, as they are', () => {
    const on = (change: (shelter: Shelter) => Shelter) => {
      const changed = change(shelter);
      expect(analysed(changed, true).responses).toEqual(analysed(changed, false).responses);
    };
    on((one) => ({ ...one, site: { ...one.site, soil: 'rock' } }));
    on((one) => {
      const { roof } = one;
      if (roof.type !== 'bows') throw new Error('bows');
      return { ...one, roof: { ...roof, foot: { ...roof.foot!, kind: 'bearing' } } };
    });
  });

  it('hold a tied ridge less sideways by its posts', () => {
    const ridged = clamped({ ridge: pipeRidge(2.286, 2.4) });
    const crown = (soil: boolean): number => {
      const { model, supports } = analysed(ridged, soil).states.built.system;
      const k = supports.findIndex(({ side, acts }) => side === 'crown' && acts === 'x');
      return model.supports[k]!.stiffness!;
    };
    expect(crown(true)).toBeLessThan(0.95 * crown(false));
    expect(crown(true)).toBeGreaterThan(0);
  });
});
