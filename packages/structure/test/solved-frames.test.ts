import { type PlaneResult, solvePlaneFrame } from '@tautline/mechanics';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyseFrame, type FrameAnalysis, type Solve, solvedFrames } from '../src/index.ts';
import { sprungHouse } from './fixtures.ts';

function analysed(shelter: ReturnType<typeof sprungHouse>, solve?: Solve): FrameAnalysis {
  const result = analyseFrame(shelter, { solve });
  if (!result.ok) throw new Error(result.reason);
  return result.analysis;
}

const narrower = () => {
  const house = sprungHouse();
  if (house.roof.type !== 'bows') throw new Error('the sprung house has bows');
  return { ...house, roof: { ...house.roof, spacing: 0.9 * house.roof.spacing } };
};

describe('frames that were solved before', () => {
  it('are found again for what says the same of the frame, and not for what says something else', () => {
    const solve = solvedFrames();
    const first = analysed(sprungHouse(), solve);
    const renamed = analysed({ ...sprungHouse(), name: 'another' }, solve);
    for (const condition of ['built', 'permanent', 'days', 'gust'] as const)
      expect(renamed.states[condition]!.result.state).toBe(first.states[condition]!.result.state);
    const other = analysed(narrower(), solve);
    expect(other.responses.map(({ forces }) => forces)).not.toEqual(
      first.responses.map(({ forces }) => forces),
    );
  });

  it('give what solving gives, whatever was asked before', () => {
    const solve = solvedFrames();
    for (const house of [sprungHouse(), narrower(), sprungHouse(), narrower()])
      expect(analysed(house, solve)).toEqual(analysed(house));
  });

  it('give what solving gives also where only a few are kept', () => {
    const solve = solvedFrames(3);
    for (const house of [sprungHouse(), narrower(), sprungHouse()])
      expect(analysed(house, solve)).toEqual(analysed(house));
  });

  it('give what solving gives under loads that differ by a little, of one kind or another', () => {
    const { model } = analysed(sprungHouse()).built.system;
    const solve = solvedFrames();
    const moved = ({ displacements, elementForces }: PlaneResult) => ({ displacements, elementForces });
    const size = fc.constantFrom(0, 1, 1 + 1e-15, -1, 5);
    const line = fc.record({ element: fc.nat(3), wx: size, wy: size });
    const nodal = fc.record({ node: fc.integer({ min: 1, max: 3 }), fx: size, fy: size });
    const loads = fc.record(
      { line: fc.array(line, { maxLength: 2 }), nodal: fc.array(nodal, { maxLength: 2 }) },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(loads, (laid) => {
        expect(moved(solve(model, laid, {}))).toEqual(moved(solvePlaneFrame(model, laid)));
      }),
      { numRuns: 150 },
    );
  });

  it('are not kept when the work was called off', () => {
    const solve = solvedFrames();
    const { model } = analysed(sprungHouse()).built.system;
    expect(solve(model, {}, { cancelled: () => true }).status).toBe('cancelled');
    expect(solve(model, {}, {})).toEqual(solvePlaneFrame(model, {}));
  });
});
