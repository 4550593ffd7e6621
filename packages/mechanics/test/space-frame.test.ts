import { describe, expect, it } from 'vitest';
import { pinnedBow, type SpaceModel, solvePlaneFrame, solveSpaceFrame } from '../src/index.ts';
import { sprungBow } from './frames.ts';

const EI = 300;
const plane = sprungBow(16);
const bow = pinnedBow({ span: 4, length: 6, points: 17 });
if (!bow.ok) throw new Error(bow.reason);

/** The plane bow put into space: plane x along `along`, plane y along z. Sideways it is held at its crown. */
function inSpace(turn: number): SpaceModel {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const nodes = plane.nodes.map((p) => ({ x: c * p.x, y: s * p.x, z: p.y }));
  const elements = plane.elements.map((e, k) => {
    const [i, j] = [plane.nodes[e.i]!, plane.nodes[e.j]!];
    const chord = Math.atan2(j.y - i.y, j.x - i.x);
    const bent = { yI: 0, yJ: 0, zI: i.angle! - chord, zJ: j.angle! - chord };
    const none = { yI: 0, zI: 0, yJ: 0, zJ: 0 };
    const towards = [s, -c, 0] as const;
    return {
      i: e.i,
      j: e.j,
      EA: e.EA,
      EIy: EI,
      EIz: EI,
      GJ: EI / 1.3,
      towards,
      restLength: e.restLength!,
      bent,
      restBent: none,
      ...(k === 5 ? { springJ: { z: 80 } } : {}),
    };
  });
  const supports = [0, 16].flatMap((node) =>
    (['x', 'y', 'z'] as const).map((dof) => ({ node, dof, kind: 'fixed' as const })),
  );
  // sideways means across the plane: y for a bow along x, x for one along y
  const side = { node: 8, dof: turn === 0 ? ('y' as const) : ('x' as const), kind: 'fixed' as const };
  return { nodes, elements, supports: [...supports, side] };
}

describe('space frame', () => {
  const planeSprung = {
    ...plane,
    elements: plane.elements.map((e, k) => (k === 5 ? { ...e, springJ: 80 } : e)),
  };
  const start = solvePlaneFrame(planeSprung, {}).state;
  const line = plane.elements.map((_, element) => ({ element, wx: 0, wy: -5 }));
  const flat = solvePlaneFrame(planeSprung, { line }, { start });

  it.each([0, Math.PI / 2])(
    'a sprung bow with a coupler answers as in its plane (turned by %s rad)',
    (turn) => {
      const model = inSpace(turn);
      const locked = solveSpaceFrame(model, {});
      expect(locked.status, locked.reason).toBe('converged');
      const answer = solveSpaceFrame(
        model,
        { line: line.map(({ element }) => ({ element, wx: 0, wy: 0, wz: -5 })) },
        { start: locked.state },
      );
      expect(answer.status, answer.reason).toBe('converged');
      const along = (d: { dx: number; dy: number }) => d.dx * Math.cos(turn) + d.dy * Math.sin(turn);
      for (const [k, d] of flat.displacements.entries()) {
        expect(Math.abs(answer.displacements[k]!.dz - d.dy)).toBeLessThan(2e-3 * 0.1);
        expect(Math.abs(along(answer.displacements[k]!) - d.dx)).toBeLessThan(2e-3 * 0.1);
      }
      expect(answer.elementForces[3]!.momentZI / flat.elementForces[3]!.momentI).toBeCloseTo(1, 2);
      expect(answer.elementForces[3]!.momentMid / Math.abs(flat.elementForces[3]!.momentMid)).toBeCloseTo(
        1,
        2,
      );
    },
  );

  it('a sprung bow carried at an angle, bent out of its plane by a stiff sideways support, still finds balance', () => {
    const { nodes, elements, supports } = inSpace(0.7);
    const crown = { node: 8, kind: 'spring' as const, stiffness: 1e5 };
    const answer = solveSpaceFrame({ nodes, elements, supports: [...supports, { ...crown, dof: 'y' }] }, {});
    expect(answer.status, answer.reason).toBe('converged');
    expect(answer.iterations).toBeLessThan(40);
    expect(answer.residual).toBeLessThan(1e-7);
  });

  it('turning the whole frame turns the answer', () => {
    const [a, b] = [0, 0.9].map((turn) => {
      const [c, s] = [Math.cos(turn), Math.sin(turn)];
      const at = (x: number, y: number, z: number) => ({ x: c * x - s * y, y: s * x + c * y, z });
      const model: SpaceModel = {
        nodes: [at(0, 0, 0), at(1, 0, 1), at(2, 0.5, 1.2), at(2.5, 1, 0)],
        elements: [0, 1, 2].map((i) => ({ i, j: i + 1, EA: 1e5, EIy: 40, EIz: 40, GJ: 30 })),
        supports: [0, 3].flatMap((node) =>
          (['x', 'y', 'z', 'rx', 'ry', 'rz'] as const).map((dof) => ({ node, dof, kind: 'fixed' as const })),
        ),
      };
      const f = at(8, 12, 0);
      const answer = solveSpaceFrame(model, { nodal: [{ node: 1, fx: f.x, fy: f.y, fz: -20 }] });
      expect(answer.status).toBe('converged');
      const d = answer.displacements[2]!;
      return {
        dx: c * d.dx + s * d.dy,
        dy: -s * d.dx + c * d.dy,
        dz: d.dz,
        axial: answer.elementForces[1]!.axial,
        mid: answer.elementForces[1]!.momentMid,
      };
    });
    for (const key of ['dx', 'dy', 'dz', 'axial', 'mid'] as const) expect(b![key]).toBeCloseTo(a![key], 6);
  });

  it('reactions balance loads, a slack wire carries nothing, a loose frame is a mechanism', () => {
    const post = { EA: 1e6, EIy: 500, EIz: 500, GJ: 400 };
    const model: SpaceModel = {
      nodes: [
        { x: 0, y: 0, z: 0 },
        { x: 0, y: 0, z: 2 },
        { x: 2, y: 0, z: 0 },
        { x: -2, y: 0, z: 0 },
      ],
      elements: [
        { i: 0, j: 1, ...post },
        { i: 1, j: 2, EA: 1e5, EIy: 0, EIz: 0, GJ: 0, tensionOnly: true },
        { i: 1, j: 3, EA: 1e5, EIy: 0, EIz: 0, GJ: 0, tensionOnly: true },
      ],
      supports: [
        ...(['x', 'y', 'z', 'rx', 'ry', 'rz'] as const).map((dof) => ({
          node: 0,
          dof,
          kind: 'fixed' as const,
        })),
        ...[2, 3].flatMap((node) =>
          (['x', 'y', 'z'] as const).map((dof) => ({ node, dof, kind: 'fixed' as const })),
        ),
      ],
    };
    const answer = solveSpaceFrame(model, { nodal: [{ node: 1, fx: 100, fy: 10, fz: 0 }] });
    expect(answer.status).toBe('converged');
    expect(answer.elementForces[1]!.slack).toBe(true);
    expect(answer.elementForces[2]!.axial).toBeGreaterThan(90);
    const sum = (dof: string) =>
      model.supports.reduce((total, s, k) => total + (s.dof === dof ? answer.reactions[k]! : 0), 0);
    expect(sum('x')).toBeCloseTo(-100, 4);
    expect(sum('y')).toBeCloseTo(-10, 4);
    expect(sum('z')).toBeCloseTo(0, 4);
    expect(solveSpaceFrame({ ...model, supports: [] }, {}).status).toBe('mechanism');
    expect(solveSpaceFrame({ ...model, supports: [] }, {}, { cancelled: () => true }).status).toBe(
      'cancelled',
    );
  });
});
