/** Space frames against published large-displacement results and closed forms. */
import { criticalSpacePath, type SpaceModel, solveSpaceFrame } from '@tautline/mechanics';
import { describe, expect, it } from 'vitest';

const clamp = (node: number) =>
  (['x', 'y', 'z', 'rx', 'ry', 'rz'] as const).map((dof) => ({ node, dof, kind: 'fixed' as const }));

/** Cantilever bend of 45 degrees and radius 100 in its plane, section 1 x 1, E = 1e7, no Poisson effect, tip load across. */
function bend(elements: number): SpaceModel {
  const E = 1e7;
  const half = Math.PI / 8 / elements;
  return {
    nodes: Array.from({ length: elements + 1 }, (_, k) => {
      const t = (Math.PI * k) / (4 * elements);
      return { x: 100 * Math.sin(t), y: 100 * (1 - Math.cos(t)), z: 0 };
    }),
    elements: Array.from({ length: elements }, (_, i) => ({
      i,
      j: i + 1,
      EA: E,
      EIy: E / 12,
      EIz: E / 12,
      GJ: (E / 2) * 0.1406,
      bent: { yI: 0, yJ: 0, zI: -half, zJ: half },
    })),
    supports: clamp(0),
  };
}

describe('space frame', () => {
  it.each([
    [300, 58.84, 22.33, 40.08],
    [600, 47.23, 15.79, 53.37],
  ])(
    '45 degree bend, tip load %s: tip at %s, %s, %s within 1 % of its reach (Bathe and Bolourchi 1979; figures of Simo and Vu-Quoc 1986, from memory)',
    (P, x, y, z) => {
      const answer = solveSpaceFrame(bend(16), { nodal: [{ node: 16, fx: 0, fy: 0, fz: P }] });
      expect(answer.status, answer.reason).toBe('converged');
      const tip = answer.displacements[16]!;
      const start = { x: 100 * Math.sin(Math.PI / 4), y: 100 * (1 - Math.cos(Math.PI / 4)) };
      expect(Math.hypot(start.x + tip.dx - x, start.y + tip.dy - y, tip.dz - z)).toBeLessThan(
        0.01 * Math.hypot(start.x, start.y),
      );
    },
  );

  it('cantilever under a tip moment rolls into a full circle: M = 2 pi EI/L (closed form)', () => {
    const [L, EI, n] = [4, 50, 20];
    const model: SpaceModel = {
      nodes: Array.from({ length: n + 1 }, (_, k) => ({ x: (L * k) / n, y: 0, z: 0 })),
      elements: Array.from({ length: n }, (_, i) => ({ i, j: i + 1, EA: 1e7, EIy: EI, EIz: EI, GJ: EI })),
      supports: clamp(0),
    };
    const half = solveSpaceFrame(
      model,
      { nodal: [{ node: n, fx: 0, fy: 0, fz: 0, mz: (Math.PI * EI) / L }] },
      { steps: 8 },
    );
    expect(half.status, half.reason).toBe('converged');
    // half a circle: tip at twice the radius L/pi above its root
    expect(half.displacements[n]!.dy / ((2 * L) / Math.PI)).toBeCloseTo(1, 3);
    expect((L + half.displacements[n]!.dx) / L).toBeCloseTo(0, 3);
  });

  it('cantilever out of plane: PL³/3EI, torsion TL/GJ (closed forms)', () => {
    const [L, EI, GJ, n] = [2, 400, 300, 4];
    const model: SpaceModel = {
      nodes: Array.from({ length: n + 1 }, (_, k) => ({ x: 0, y: (L * k) / n, z: 0 })),
      elements: Array.from({ length: n }, (_, i) => ({
        i,
        j: i + 1,
        EA: 1e7,
        EIy: EI,
        EIz: 2 * EI,
        GJ,
        towards: [0, 0, 1] as const,
      })),
      supports: clamp(0),
    };
    const P = 0.01;
    const up = solveSpaceFrame(model, { nodal: [{ node: n, fx: 0, fy: 0, fz: P }] });
    const side = solveSpaceFrame(model, { nodal: [{ node: n, fx: P, fy: 0, fz: 0 }] });
    const twist = solveSpaceFrame(model, { nodal: [{ node: n, fx: 0, fy: 0, fz: 0, my: P }] });
    expect(up.displacements[n]!.dz / ((P * L ** 3) / (3 * EI))).toBeCloseTo(1, 5);
    expect(side.displacements[n]!.dx / ((P * L ** 3) / (6 * EI))).toBeCloseTo(1, 5);
    expect(twist.displacements[n]!.ry / ((P * L) / GJ)).toBeCloseTo(1, 5);
    const uniform = solveSpaceFrame(model, {
      line: [0, 1, 2, 3].map((element) => ({ element, wx: 0, wy: 0, wz: -P })),
    });
    expect(-uniform.displacements[n]!.dz / ((P * L ** 4) / (8 * EI))).toBeCloseTo(1, 5);
    expect(Math.abs(uniform.elementForces[0]!.momentYI) / ((P * L ** 2) / 2)).toBeCloseTo(1, 5);
  });

  it('strut in space gives way at pi² EI/L² about its weaker axis', () => {
    const [L, EI, n] = [2, 400, 8];
    const model: SpaceModel = {
      nodes: Array.from({ length: n + 1 }, (_, k) => ({ x: 0, y: 0, z: (L * k) / n })),
      elements: Array.from({ length: n }, (_, i) => ({ i, j: i + 1, EA: 1e6, EIy: 3 * EI, EIz: EI, GJ: EI })),
      supports: [
        ...(['x', 'y', 'z', 'rz'] as const).map((dof) => ({ node: 0, dof, kind: 'fixed' as const })),
        ...(['x', 'y'] as const).map((dof) => ({ node: n, dof, kind: 'fixed' as const })),
      ],
    };
    const euler = (Math.PI ** 2 * EI) / L ** 2;
    const at = (times: number) =>
      solveSpaceFrame(model, { nodal: [{ node: n, fx: 0, fy: 0, fz: -times * euler }] });
    expect(at(0.99).status).toBe('converged');
    const over = at(1.25);
    expect(over.status).toBe('unstable');
    expect(over.loadFactor * 1.25).toBeCloseTo(1, 1);
    const path = criticalSpacePath(model, { nodal: [{ node: n, fx: 0, fy: 0, fz: -euler }] }, { cap: 1.5 });
    expect(path.status).toBe('gives-way');
    expect(Math.abs(path.givesWayAt! - 1)).toBeLessThan(0.01);
    expect(
      criticalSpacePath(model, { nodal: [{ node: n, fx: 0, fy: 0, fz: -euler }] }, { cap: 0.9 }),
    ).toMatchObject({ status: 'holds-to-cap', givesWayAt: null, stableAt: 0.9 });
  });

  it('deep cantilever tips over sideways at 4.013 √(EI_y GJ) / L² under its end load (Timoshenko and Gere, Theory of Elastic Stability, from memory)', () => {
    const [L, weak, GJ, n] = [3, 400, 300, 12];
    const model: SpaceModel = {
      nodes: Array.from({ length: n + 1 }, (_, k) => ({ x: (L * k) / n, y: 0, z: 0 })),
      elements: Array.from({ length: n }, (_, i) => ({
        i,
        j: i + 1,
        EA: 1e8,
        EIy: weak,
        EIz: 2000 * weak,
        GJ,
        towards: [0, 0, 1] as const,
      })),
      supports: clamp(0),
    };
    const critical = (4.0126 * Math.sqrt(weak * GJ)) / L ** 2;
    const path = criticalSpacePath(
      model,
      { nodal: [{ node: n, fx: 0, fy: -critical, fz: 0 }] },
      { cap: 1.6 },
    );
    expect(path.status, path.reason).toBe('gives-way');
    expect(path.givesWayAt).toBeGreaterThan(0.985);
    expect(path.givesWayAt).toBeLessThan(1.01);
  });
});
