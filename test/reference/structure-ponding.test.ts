/**
 * Water on a frame that gives, against closed forms. A level beam under water that follows its bent shape:
 * the pond runs away from E I = γ b L⁴ / π⁴ on, and below that grows by 1 / (1 - E I_crit / E I) in the first
 * mode. Source: ponding of a simply supported beam (AISC 360 appendix on ponding, from memory; derived in
 * Marino's paper of 1966 by the same first-mode argument, from memory).
 */
import { solvePlaneFrame, WATER } from '@tautline/mechanics';
import { type MemberItem, originOf } from '@tautline/shelter';
import { type BuiltState, type FrameSystem, framePonding } from '@tautline/structure';
import { describe, expect, it } from 'vitest';

const span = 4;
const breadth = 1.2;
const divisions = 32;
const critical = (WATER * breadth * span ** 4) / Math.PI ** 4;

const member = {
  kind: 'pipe',
  id: 'beam',
  title: 'beam',
  prices: [],
  source: 'test',
  origin: originOf('t'),
} as unknown as MemberItem;

/** A level beam on two supports, of a stiffness relative to the critical one. */
function levelBeam(stiffness: number): BuiltState {
  const step = span / divisions;
  const nodes = Array.from({ length: divisions + 1 }, (_, k) => ({ x: k * step, y: 0 }));
  const model: FrameSystem['model'] = {
    nodes,
    elements: Array.from({ length: divisions }, (_, k) => ({
      i: k,
      j: k + 1,
      EA: 1e9,
      EI: stiffness * critical,
      restCurvature: 0,
    })),
    supports: [
      { node: 0, dof: 'x', kind: 'fixed' },
      { node: 0, dof: 'y', kind: 'fixed' },
      { node: divisions, dof: 'y', kind: 'fixed' },
    ],
  };
  const elements = Array.from({ length: divisions }, (_, k) => ({
    part: 'beam',
    item: member,
    from: k * step,
    to: (k + 1) * step,
    role: 'roof' as const,
    perFrame: 1,
    dx: step,
    dy: 0,
    length: step,
  }));
  const system: FrameSystem = {
    model,
    nodes: nodes.map((node) => ({ ...node, part: 'beam', at: node.x })),
    elements,
    supports: [],
    roof: elements.map((_, k) => k),
    leftWall: [],
    rightWall: [],
    sprung: false,
    tributary: breadth,
    notes: [],
  };
  return { system, result: solvePlaneFrame(model, {}, {}), status: 'holds' };
}

const nothing = {
  id: 'none',
  title: 'no load',
  source: 'derived',
  lines: [],
  points: [],
  duration: 'permanent',
  use: 'service',
} as const;
/** Small against the span, so that the beam stays in the linear range. */
const sag = 0.002;

/** Water of the film alone on an unbent beam: two thirds of a parabola along it and from frame to frame. */
const unbent = breadth * (2 / 3) * (2 / 3) * sag * span;

describe('ponding of a simply supported beam (AISC 360 appendix on ponding, from memory)', () => {
  it.each([1.2, 2, 3, 5])(
    'at %s times the critical stiffness the pond comes to rest at the water of the exact solution (derived)',
    (times) => {
      const ponding = framePonding(levelBeam(times), nothing, sag);
      expect(ponding.verdict).toBe('comes to rest');
      const q = times ** -0.25;
      const grown =
        (12 / Math.PI ** 3 / q ** 3) * (Math.tan((Math.PI * q) / 2) - Math.tanh((Math.PI * q) / 2));
      expect(ponding.standing / (WATER * unbent) / grown).toBeCloseTo(1, 3);
      expect(ponding.reserve).toBeGreaterThan(1);
    },
  );

  it('stands as deep as the film hangs and the beam has sunk', () => {
    const { rest, fall } = framePonding(levelBeam(2), nothing, sag);
    expect(rest?.depth).toBeCloseTo(sag + fall, 5);
  });

  it('below the critical stiffness the pond runs away', () => {
    expect(framePonding(levelBeam(0.8), nothing, sag).verdict).toBe('runs away');
    expect(framePonding(levelBeam(0.95), nothing, sag).reserve).toBeLessThan(1);
  });

  it('the pocket on the unbent beam is two thirds of a parabola', () => {
    const { first } = framePonding(levelBeam(5), nothing, sag);
    expect(first?.volume).toBeCloseTo(unbent, 9);
    expect(first?.depth).toBeCloseTo(sag, 9);
  });
});
