/** How far joints reach along a member. */
import { describe, expect, it } from 'vitest';
import { jointLap, jointReach } from '../src/index.ts';
import type { JointItem } from '../src/model/items.ts';

const joint = (form: JointItem['form'], insertion: number) => ({ form, insertion }) as JointItem;

describe('joints along a member', () => {
  it('a lashed lap lies half on either side of its place', () => {
    expect(jointLap(joint('lashing', 0.5), {})).toBe(0.5);
    expect(jointReach(joint('lashing', 0.5), {})).toBe(0.25);
  });

  it('a swaged end slides into its neighbour, and the joint is no longer than that', () => {
    expect(jointLap(joint('socket', 0.127), { swage: 0.127 })).toBe(0.127);
    expect(jointReach(joint('socket', 0.127), { swage: 0.127 })).toBe(0.0635);
  });

  it('in a coupler the ends meet in the middle, and it takes in each of them', () => {
    expect(jointLap(joint('sleeve', 0.08), {})).toBe(0);
    expect(jointReach(joint('sleeve', 0.08), {})).toBe(0.08);
  });
});
