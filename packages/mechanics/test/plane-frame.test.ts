import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arcOf, criticalLoadPath, type PlaneLoads, type PlaneModel, solvePlaneFrame } from '../src/index.ts';
import { assemble, emptyPass } from '../src/plane/assemble.ts';
import { type LoadSet, layLoads } from '../src/plane/loads.ts';
import { type PlaneSystem, planeSystem } from '../src/plane/system.ts';
import { multiply } from '../src/skyline.ts';
import { level, pinned, sprungBow } from './frames.ts';

const bow = sprungBow();
const locked = solvePlaneFrame(bow, {});
const force = fc.double({ min: -30, max: 30, noNaN: true });

/** A different push on every member. */
const loadsOf = (wx: number, wy: number, p: number): PlaneLoads => ({
  line: bow.elements.map((_, element) => ({
    element,
    wx: wx * Math.cos(element),
    wy: wy * Math.sin(0.3 * element),
  })),
  pressure: bow.elements.map((_, element) => ({ element, p: p * Math.cos(0.2 * element) })),
  nodal: [{ node: 5, fx: wx, fy: wy, m: p }],
});

const total = (model: PlaneModel, loads: PlaneLoads) => {
  let [fx, fy, m] = [0, 0, 0];
  const put = (x: number, y: number, ax: number, ay: number) => {
    fx += ax;
    fy += ay;
    m += x * ay - y * ax;
  };
  for (const l of loads.line ?? []) {
    const e = model.elements[l.element]!;
    const [i, j] = [model.nodes[e.i]!, model.nodes[e.j]!];
    put((i.x + j.x) / 2, (i.y + j.y) / 2, l.wx * e.restLength!, l.wy * e.restLength!);
  }
  for (const l of loads.pressure ?? []) {
    const e = model.elements[l.element]!;
    const [i, j] = [model.nodes[e.i]!, model.nodes[e.j]!];
    put((i.x + j.x) / 2, (i.y + j.y) / 2, -l.p * (j.y - i.y), l.p * (j.x - i.x));
  }
  for (const l of loads.nodal ?? []) put(model.nodes[l.node]!.x, model.nodes[l.node]!.y, l.fx, l.fy);
  return { fx, fy, m };
};

describe('plane frame', () => {
  it('the locked-in bow needs no load to push its feet apart', () => {
    expect(locked.status).toBe('converged');
    expect(locked.reactions[0]).toBeGreaterThan(30);
    expect(locked.reactions[0]! + locked.reactions[2]!).toBeCloseTo(0, 6);
  });

  it('finds the same bow from a circular arc as a guess, in under ten corrections', () => {
    const arc = arcOf({ span: 4, length: 6 });
    if (!arc.ok) throw new Error(arc.reason);
    const nodes = bow.nodes.map((_, k) => {
      const t = arc.halfAngle * (1 - k / 8);
      return {
        x: 2 - arc.radius * Math.sin(t),
        y: arc.radius * (Math.cos(t) - Math.cos(arc.halfAngle)),
        angle: t,
      };
    });
    const answer = solvePlaneFrame({ ...bow, nodes }, {});
    expect(answer.status).toBe('converged');
    expect(answer.iterations).toBeLessThan(10);
    expect(answer.reactions[0]! / locked.reactions[0]!).toBeCloseTo(1, 5);
  });

  it('reactions balance the loads (property)', () => {
    fc.assert(
      fc.property(force, force, force, (wx, wy, p) => {
        const loads = loadsOf(wx / 3, wy / 3, p / 3);
        const answer = solvePlaneFrame(bow, loads, { start: locked.state });
        if (answer.status !== 'converged') return answer.status === 'unstable' && answer.loadFactor < 1;
        const sum = total(bow, loads);
        const [ax, ay, bx, by] = answer.reactions as [number, number, number, number];
        return Math.abs(ax + bx + sum.fx) < 1e-3 && Math.abs(ay + by + sum.fy) < 1e-3;
      }),
      { numRuns: 40 },
    );
  });

  it('a mirrored load gives the mirrored answer (property)', () => {
    const n = bow.elements.length;
    fc.assert(
      fc.property(force, force, fc.integer({ min: 1, max: n - 1 }), (fx, fy, node) => {
        const a = solvePlaneFrame(bow, { nodal: [{ node, fx, fy }] }, { start: locked.state });
        const b = solvePlaneFrame(bow, { nodal: [{ node: n - node, fx: -fx, fy }] }, { start: locked.state });
        if (a.status !== b.status) return false;
        if (a.status !== 'converged') return true;
        return a.displacements.every((d, k) => {
          const m = b.displacements[n - k]!;
          return Math.abs(d.dx + m.dx) < 1e-6 && Math.abs(d.dy - m.dy) < 1e-6 && Math.abs(d.dr + m.dr) < 1e-6;
        });
      }),
      { numRuns: 40 },
    );
  });

  it('linear answers add up, and small loads are linear (property)', () => {
    const linear = (loads: PlaneLoads) => solvePlaneFrame(bow, loads, { start: locked.state, linear: true });
    fc.assert(
      fc.property(force, force, force, (a, b, c) => {
        const one = linear(loadsOf(a, b, 0));
        const two = linear(loadsOf(0, 0, c));
        const both = linear(loadsOf(a, b, c));
        const still = locked.displacements;
        const adds = both.displacements.every(
          (d, k) =>
            Math.abs(d.dy + still[k]!.dy - one.displacements[k]!.dy - two.displacements[k]!.dy) < 2e-7,
        );
        const shrunk = 1e-4;
        const tiny = solvePlaneFrame(bow, loadsOf(a * shrunk, b * shrunk, c * shrunk), {
          start: locked.state,
        });
        const steps = both.displacements.map((d, k) => shrunk * (d.dy - still[k]!.dy));
        const sideways = both.displacements.map((d, k) => shrunk * (d.dx - still[k]!.dx));
        const reach = Math.max(...steps.map(Math.abs), ...sideways.map(Math.abs));
        const near = tiny.displacements.every(
          (d, k) => Math.abs(d.dy - still[k]!.dy - steps[k]!) < 5e-3 * reach + 1e-7,
        );
        return adds && near;
      }),
      { numRuns: 25 },
    );
  });

  it('one step or many: the shape is the same, and a frame that bends far is given the many', () => {
    const start = locked.state;
    const spent = { one: 0, many: 0 };
    for (const size of [1, 5, 15, 45]) {
      const loads = loadsOf(0.3 * size, -size, 0);
      // Two steps at the half and the whole, each to its end: never the one step of a straight way.
      const half = solvePlaneFrame(bow, loadsOf(0.15 * size, -size / 2, 0), { start });
      const stepped = solvePlaneFrame(bow, loads, { start: half.state });
      const asked = solvePlaneFrame(bow, loads, { start, steps: 8 });
      expect(asked.status).toBe('converged');
      expect(stepped.status).toBe('converged');
      for (const [n, moved] of asked.displacements.entries()) {
        expect(moved.dx).toBeCloseTo(stepped.displacements[n]!.dx, 6);
        expect(moved.dy).toBeCloseTo(stepped.displacements[n]!.dy, 6);
      }
      if (size === 1) spent.one = asked.iterations;
      else if (size === 45) spent.many = asked.iterations;
    }
    expect(spent.one).toBeLessThan(8);
    expect(spent.many).toBeGreaterThanOrEqual(16);
  });

  it('refining converges at least as the fourth power', () => {
    const crown = (n: number) => {
      const model = sprungBow(n);
      const start = solvePlaneFrame(model, {}).state;
      const line = model.elements.map((_, element) => ({ element, wx: 4, wy: -5 }));
      return solvePlaneFrame(model, { line }, { start }).displacements[n / 2]!.dx;
    };
    const [a, b, c] = [crown(8), crown(16), crown(32)];
    expect(Math.abs(b - c)).toBeLessThan(Math.abs(a - b) / 8);
  });

  it('the tangent is the derivative of the unbalance', () => {
    const model: PlaneModel = {
      nodes: [
        { x: 0, y: 0, angle: 0.3 },
        { x: 1, y: 0.2 },
        { x: 1.5, y: 0.9 },
      ],
      elements: [
        { i: 0, j: 1, EA: 1000, EI: 3, restCurvature: 0.1 },
        { i: 1, j: 2, EA: 900, EI: 2, springJ: 5 },
      ],
      supports: [
        { node: 0, dof: 'x', kind: 'spring', stiffness: 2 },
        { node: 2, dof: 'y', kind: 'contact', stiffness: 20, direction: 1, gap: -0.5 },
      ],
    };
    const system = planeSystem(model) as PlaneSystem;
    const pass = emptyPass(system);
    const u = Float64Array.from({ length: system.dofs }, (_, k) => 0.1 * Math.sin(3 * k + 1));
    // a follower's tangent is symmetric only together with a neighbour's: here the middle node's
    const cases: [PlaneLoads, readonly number[]][] = [
      [{ line: [{ element: 0, wx: 3, wy: 5 }] }, Array.from(u.keys())],
      [{ pressure: [0, 1].map((element) => ({ element, p: 7, follower: true })) }, [2, 3, 4, 5, 8, 9]],
    ];
    for (const [loads, columns] of cases) {
      const set = layLoads(system, loads) as LoadSet;
      for (const j of columns) {
        assemble(system, u, set, pass, true);
        const unit = new Float64Array(system.matrix.size);
        unit[system.equation[j]!] = 1;
        const column = multiply(system.matrix, unit);
        const [ahead, behind] = [1e-6, -1e-6].map((h) => {
          const moved = u.slice();
          moved[j]! += h;
          assemble(system, moved, set, pass, false);
          return pass.unbalance.slice();
        });
        for (let i = 0; i < system.dofs; i++)
          expect((ahead![i]! - behind![i]!) / 2e-6).toBeCloseTo(column[system.equation[i]!]!, 4);
      }
    }
  });

  it('a hinge carries no moment, a tension-only member goes slack, a contact pushes one way only', () => {
    const beam = level(4, 4, 1000);
    const elements = beam.elements.map((e, k) => (k === 1 ? { ...e, springJ: 0 } : e));
    const supports = [...beam.supports, { node: 0, dof: 'r', kind: 'fixed' } as const];
    const load = { nodal: [{ node: 3, fx: 0, fy: -10 }] };
    const hinged = solvePlaneFrame({ ...beam, elements, supports }, load);
    expect(hinged.status).toBe('converged');
    expect(hinged.elementForces[1]!.momentJ).toBeCloseTo(0, 6);
    // above the hinge hangs the far half, with half the load
    expect(hinged.reactions[2]).toBeCloseTo(5, 2);

    const braced: PlaneModel = {
      nodes: [...beam.nodes, { x: 2, y: 1 }, { x: 2, y: -1 }],
      elements: [
        ...beam.elements,
        { i: 2, j: 5, EA: 1e5, EI: 0, tensionOnly: true },
        { i: 2, j: 6, EA: 1e5, EI: 0, tensionOnly: true },
      ],
      supports: [...beam.supports, ...pinned(5, 6)],
    };
    const pulled = solvePlaneFrame(braced, { nodal: [{ node: 2, fx: 0, fy: -50 }] });
    expect(pulled.status).toBe('converged');
    expect(pulled.elementForces[4]!.slack).toBe(false);
    expect(pulled.elementForces[4]!.axial).toBeGreaterThan(40);
    expect(pulled.elementForces[5]!.slack).toBe(true);

    const prop = { node: 2, dof: 'y', kind: 'contact', direction: 1, gap: 0.001 } as const;
    const propped = { ...beam, supports: [...beam.supports, prop] };
    const down = solvePlaneFrame(propped, { nodal: [{ node: 2, fx: 0, fy: -50 }] });
    const up = solvePlaneFrame(propped, { nodal: [{ node: 2, fx: 0, fy: 50 }] });
    expect(down.reactions[3]).toBeGreaterThan(1);
    expect(down.displacements[2]!.dy).toBeCloseTo(-0.001, 5);
    expect(up.reactions[3]).toBe(0);
  });

  it('an imposed movement of a foot is carried through, linear and not', () => {
    const moved = bow.supports.map((s, k) => (k === 2 ? { ...s, value: 0.01 } : s));
    const model = { ...bow, supports: moved };
    const spread = solvePlaneFrame(model, {}, { start: locked.state });
    const linear = solvePlaneFrame(model, {}, { start: locked.state, linear: true });
    expect(spread.status).toBe('converged');
    expect(spread.displacements[16]!.dx).toBeCloseTo(0.01, 12);
    expect(spread.displacements[8]!.dy).toBeLessThan(0);
    expect(linear.displacements[8]!.dy).toBeCloseTo(spread.displacements[8]!.dy, 4);
    expect(linear.reactions[0]).toBeCloseTo(spread.reactions[0]!, 1);
  });

  it('says what is wrong instead of throwing', () => {
    expect(solvePlaneFrame({ nodes: [], elements: [], supports: [] }, {}).status).toBe('invalid');
    expect(solvePlaneFrame({ ...bow, elements: [{ i: 0, j: 99, EA: 1, EI: 1 }] }, {}).reason).toContain(
      'element 0',
    );
    const nan = { nodal: [{ node: 1, fx: Number.NaN, fy: 0 }] };
    expect(solvePlaneFrame(bow, nan).reason).toContain('not finite');
    const loose = solvePlaneFrame({ ...level(2, 2, 10), supports: [] }, {});
    expect(loose.status).toBe('mechanism');
    expect(loose.reason).toMatch(/nothing holds node/);
    expect(solvePlaneFrame(bow, {}, { cancelled: () => true }).status).toBe('cancelled');
  });

  it('too much load gives way, at the factor the load path finds', () => {
    const push = { nodal: [{ node: 8, fx: 0, fy: -1 }] };
    const path = criticalLoadPath(bow, push, { start: locked.state, cap: 1e4 });
    expect(path.status).toBe('gives-way');
    const over = solvePlaneFrame(
      bow,
      { nodal: [{ node: 8, fx: 0, fy: -1.5 * path.givesWayAt! }] },
      { start: locked.state },
    );
    expect(over.status).toBe('unstable');
    expect(over.loadFactor * 1.5 * path.givesWayAt!).toBeCloseTo(path.givesWayAt!, 0);
    // where it stopped it is in balance, and can be gone on from
    const again = solvePlaneFrame(bow, over.state.loads, { start: over.state });
    expect(again.status).toBe('converged');
    expect(again.displacements[8]!.dy).toBeCloseTo(over.displacements[8]!.dy, 6);
  });
});
