import { describe, expect, it } from 'vitest';
import { criticalPondingStiffness, pondingPath, solvePlaneFrame, WATER } from '../src/index.ts';
import { level, sprungBow } from './frames.ts';

const [L, b] = [6, 1.2];
const elements = Array.from({ length: 12 }, (_, i) => i);
const limit = criticalPondingStiffness(WATER, b, L);
const dip = { at: L / 2, halfWidth: 1.5, depth: 0.02 };

describe('ponding path', () => {
  it('a stiff beam holds what the hollow itself holds: depth·b·half width', () => {
    const answer = pondingPath(level(L, 12, 1e4 * limit), { elements, breadth: b, baseLoads: {} }, { dip });
    expect(answer.verdict).toBe('bounded');
    expect(answer.volume / (dip.depth * b * dip.halfWidth)).toBeCloseTo(1, 2);
    expect(answer.depth).toBeCloseTo(dip.depth, 3);
    expect(answer.at).toBeCloseTo(L / 2, 6);
  });

  it('water pushes down with its own weight', () => {
    const answer = pondingPath(level(L, 12, 2 * limit), { elements, breadth: b, baseLoads: {} }, { dip });
    expect(answer.reactions[1]! + answer.reactions[2]!).toBeCloseTo(WATER * answer.volume, 1);
    expect(answer.peakMoment).toBeGreaterThan(0);
  });

  it('the softer the beam, the more it holds, until it runs away', () => {
    const verdicts = [8, 4, 2, 1.2, 0.6].map((times) =>
      pondingPath(level(L, 12, times * limit), { elements, breadth: b, baseLoads: {} }, { dip }),
    );
    for (let k = 1; k < verdicts.length; k++)
      expect(verdicts[k]!.volume).toBeGreaterThan(verdicts[k - 1]!.volume);
    expect(verdicts.map((v) => v.verdict)).toEqual(['bounded', 'bounded', 'bounded', 'bounded', 'runaway']);
  });

  it('an arch without a hollow drains; so does a tilted beam', () => {
    const bow = sprungBow(32);
    const start = solvePlaneFrame(bow, {}).state;
    const roof = { elements: bow.elements.map((_, k) => k), breadth: 1.2, baseLoads: {} };
    expect(pondingPath(bow, roof, { start, sheet: 0.001 }).verdict).toBe('drains');
    const beam = level(L, 12, 2 * limit);
    const tilted = { ...beam, nodes: beam.nodes.map((p) => ({ x: p.x, y: 0.2 * p.x })) };
    expect(pondingPath(tilted, { elements, breadth: b, baseLoads: {} }, { dip }).verdict).toBe('drains');
  });

  it('only so much water as there is', () => {
    const answer = pondingPath(
      level(L, 12, 0.5 * limit),
      { elements, breadth: b, baseLoads: {} },
      { dip, maxVolume: 0.001 },
    );
    expect(answer.verdict).toBe('bounded');
    expect(answer.volume).toBeCloseTo(0.001, 9);
  });

  it('a frame that does not carry its base loads is not called drained', () => {
    const bow = sprungBow(16);
    const start = solvePlaneFrame(bow, {}).state;
    const roof = {
      elements: bow.elements.map((_, k) => k),
      breadth: 1.2,
      baseLoads: { nodal: [{ node: 8, fx: 0, fy: -5000 }] },
    };
    expect(pondingPath(bow, roof, { start }).verdict).toBe('not-converged');
    expect(pondingPath(bow, { ...roof, elements: [0, 5] }, { start }).reason).toContain('continuous');
  });
});
