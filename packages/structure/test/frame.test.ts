import { describe, expect, it } from 'vitest';
import { analyseFrame, type FrameAnalysis, stateIn } from '../src/index.ts';
import { pipe, pipeRidge, pvc, sprungHouse } from './fixtures.ts';

function analysed(shelter: ReturnType<typeof sprungHouse>): FrameAnalysis {
  const result = analyseFrame(shelter);
  if (!result.ok) throw new Error(result.reason);
  return result.analysis;
}

describe('typical frame of a sprung house', () => {
  const analysis = analysed(sprungHouse());

  it('stands by itself once built, with the thrust of the elastica', () => {
    expect(analysis.built.status).toBe('holds');
    const [left, , right] = analysis.built.result.reactions;
    expect(left).toBeCloseTo(-(right as number), 6);
    expect(left).toBeGreaterThan(0);
  });

  it('carries its weight: reactions of the dead load are the weight of pipe and film', () => {
    const dead = analysis.responses.find((response) => response.condition === 'built');
    const down = dead?.load.lines.reduce(
      (sum, line) => sum + line.wy * (analysis.built.system.elements[line.element]?.length ?? 0),
      0,
    );
    const up = dead?.reactions.reduce((sum, reaction) => sum + reaction.vertical, 0);
    expect(up).toBeCloseTo(-(down as number), 3);
  });

  it('keeps every combination in balance, across and upright', () => {
    for (const response of analysis.responses.filter((entry) => entry.status === 'holds')) {
      const { elements } = stateIn(analysis.states, response.condition).system;
      const force = (key: 'wx' | 'wy'): number =>
        response.load.lines.reduce((sum, line) => sum + line[key] * (elements[line.element]?.length ?? 0), 0);
      const back = (key: 'horizontal' | 'vertical'): number =>
        response.reactions.reduce((sum, reaction) => sum + reaction[key], 0);
      expect(back('horizontal') + force('wx')).toBeCloseTo(0, 2);
      expect(back('vertical') + force('wy')).toBeCloseTo(0, 2);
    }
  });

  it('bends less when the gust is lighter', () => {
    const most = (result: FrameAnalysis): number =>
      Math.max(
        ...result.responses
          .filter((response) => response.load.wind !== undefined)
          .flatMap((response) => response.forces.map((force) => Math.abs(force.moment))),
      );
    const calm = sprungHouse();
    const lighter = analysed({ ...calm, site: { ...calm.site, gust: 15 } });
    expect(most(lighter)).toBeLessThan(most(analysis));
  });
});

describe('standing water on a sprung house (common practice, no source)', () => {
  it('runs away on a limber arch of 14 ft by 7.5 ft without a ridge', () => {
    expect(analysed(sprungHouse()).ponding?.verdict).toBe('runs away');
  });

  it('comes to rest once a ridge carries the crown', () => {
    const ponding = analysed(sprungHouse({ ridge: pipeRidge(2.286, 2.4) })).ponding;
    expect(ponding?.verdict).toBe('comes to rest');
    expect(ponding?.reserve).toBeGreaterThan(1);
  });

  it('comes to rest on a pipe that is stout enough', () => {
    const stout = pipe('stout', { ...pvc, modulus: 200e9, longTermModulus: 200e9 }, 0.06, 0.004, [8]);
    const ponding = analysed(sprungHouse({ member: stout })).ponding;
    expect(ponding?.verdict).toBe('comes to rest');
  });

  it('holds no pocket when the film is tighter than γ s²/π²', () => {
    const tight = analysed(sprungHouse({ spacing: 0.6, tension: 900 })).ponding;
    expect(tight?.verdict).toBe('drains');
  });
});
