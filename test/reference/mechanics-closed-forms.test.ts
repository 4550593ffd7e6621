/** Published closed forms, each with its source in the title; those from memory say so. */
import {
  bucklingFactor,
  cantilever,
  catenary,
  continuousBeam,
  criticalLoadPath,
  criticalPondingStiffness,
  criticalPondingTension,
  effectiveLengthFactor,
  equalSpans,
  eulerLoad,
  hoopTension,
  type PlaneModel,
  parabolaLength,
  parabolicCable,
  pondingAmplification,
  pondingFactor,
  pondingPath,
  rectangle,
  roundHollow,
  solvePlaneFrame,
  stripUnderLoad,
  tautCable,
  WATER,
} from '@tautline/mechanics';
import { describe, expect, it } from 'vitest';

const near = (actual: number, expected: number, part: number) =>
  expect(Math.abs(actual / expected - 1), `${actual} against ${expected}`).toBeLessThan(part);

const inch = 0.0254;

/** Straight line of equal beam elements along x. */
function level(length: number, elements: number, EI: number, EA = 1e8): PlaneModel {
  return {
    nodes: Array.from({ length: elements + 1 }, (_, k) => ({ x: (k * length) / elements, y: 0 })),
    elements: Array.from({ length: elements }, (_, i) => ({ i, j: i + 1, EA, EI })),
    supports: [
      { node: 0, dof: 'x', kind: 'fixed' },
      { node: 0, dof: 'y', kind: 'fixed' },
      { node: elements, dof: 'y', kind: 'fixed' },
    ],
  };
}

function arch(radius: number, half: number, elements: number, EI: number, EA = 1e9): PlaneModel {
  return {
    nodes: Array.from({ length: elements + 1 }, (_, k) => {
      const t = half * (1 - (2 * k) / elements);
      return { x: -radius * Math.sin(t), y: radius * Math.cos(t), angle: t };
    }),
    elements: Array.from({ length: elements }, (_, i) => ({ i, j: i + 1, EA, EI })),
    supports: [0, elements].flatMap((node) => [
      { node, dof: 'x', kind: 'fixed' } as const,
      { node, dof: 'y', kind: 'fixed' } as const,
    ]),
  };
}

describe('sections', () => {
  it('round tube 1.900 x 0.145 in: area 0.799 in2, I 0.310 in4 (ASME B36.10M pipe 1-1/2 schedule 40 as tabled in AISC, from memory)', () => {
    const s = roundHollow(1.9 * inch, 0.145 * inch);
    near(s.area / inch ** 2, 0.799, 2e-3);
    near(s.secondMoment / inch ** 4, 0.31, 2e-3);
  });
  it('2x4: S 3.063 in3, I 5.359 in4 (NDS Supplement table 1B, from memory)', () => {
    const s = rectangle(3.5 * inch, 1.5 * inch);
    near(s.sectionModulus / inch ** 3, 3.063, 1e-3);
    near(s.secondMoment / inch ** 4, 5.359, 1e-3);
  });
});

describe('beams: AISC Manual table 3-23 (from memory)', () => {
  const beam = (
    spans: readonly number[],
    ...rest: Parameters<typeof continuousBeam> extends [unknown, ...infer R] ? R : never
  ) => {
    const answer = continuousBeam(spans, ...rest);
    if (!answer.ok) throw new Error(answer.reason);
    return answer;
  };
  const [w, L, EI, P] = [120, 3.2, 900, 350];
  it('simple, uniform: 5wL⁴/384EI and wL²/8', () => {
    const b = beam([L], [{ line: w }], EI);
    near(b.deflection, (5 * w * L ** 4) / (384 * EI), 1e-9);
    near(b.sagging, (w * L ** 2) / 8, 1e-12);
  });
  it('simple, midspan load: PL³/48EI', () =>
    near(beam([L], [{ points: [{ at: L / 2, load: P }] }], EI).deflection, (P * L ** 3) / (48 * EI), 1e-9));
  it('simple, load at a third: largest sag at sqrt((L² - b²)/3) = Pb(L² - b²)^1.5/(9 sqrt3 EI L)', () => {
    const b = L / 3;
    near(
      beam([L], [{ points: [{ at: L - b, load: P }] }], EI).deflection,
      (P * b * (L ** 2 - b ** 2) ** 1.5) / (9 * Math.sqrt(3) * EI * L),
      1e-9,
    );
  });
  it('fixed, uniform: wL²/12 at the ends, wL⁴/384EI', () => {
    const b = beam([L], [{ line: w }], EI, ['fixed', 'fixed']);
    near(b.hogging, (w * L ** 2) / 12, 1e-12);
    near(b.deflection, (w * L ** 4) / (384 * EI), 1e-9);
  });
  it('fixed, midspan load: PL/8, PL³/192EI', () => {
    const b = beam([L], [{ points: [{ at: L / 2, load: P }] }], EI, ['fixed', 'fixed']);
    near(b.hogging, (P * L) / 8, 1e-12);
    near(b.deflection, (P * L ** 3) / (192 * EI), 1e-9);
  });
  it('propped, uniform: wL²/8 fixing, 9wL²/128 field, wL⁴/185EI, reactions 5/8 and 3/8', () => {
    const b = beam([L], [{ line: w }], EI, ['fixed', 'pinned']);
    near(b.hogging, (w * L ** 2) / 8, 1e-12);
    near(b.sagging, (9 * w * L ** 2) / 128, 1e-12);
    near(b.deflection, (w * L ** 4) / (185 * EI), 3e-3);
    near(b.reactions[0]!, (5 / 8) * w * L, 1e-12);
    near(b.reactions[1]!, (3 / 8) * w * L, 1e-12);
  });
  it('cantilever: wL⁴/8EI, PL³/3EI', () => {
    const uniform = cantilever(L, { line: w }, EI);
    const tip = cantilever(L, { points: [{ at: L, load: P }] }, EI);
    if (!uniform.ok || !tip.ok) throw new Error('refused');
    near(uniform.deflection, (w * L ** 4) / (8 * EI), 1e-12);
    near(tip.deflection, (P * L ** 3) / (3 * EI), 1e-12);
  });
  it.each([
    [2, 0.125, 0.0703, 1.25, 0.0054],
    [3, 0.1, 0.08, 1.1, 0.0069],
    [4, 0.1071, 0.0772, 1.143, 0.0065],
  ])('%s equal spans, uniform: coefficients %s %s %s %s', (n, hog, sag, reaction, sink) => {
    const b = equalSpans(n, L, w, EI);
    if (!b.ok) throw new Error(b.reason);
    near(b.hogging / (w * L ** 2), hog, 1e-3);
    near(b.sagging / (w * L ** 2), sag, 1e-3);
    near(Math.max(...b.reactions) / (w * L), reaction, 1e-3);
    near((b.deflection * EI) / (w * L ** 4), sink, 8e-3);
  });
});

describe('plane frame, linear', () => {
  it('simple beam 5wL⁴/384EI (Timoshenko, Strength of Materials, from memory)', () => {
    const model = level(4, 8, 1000);
    const line = model.elements.map((_, element) => ({ element, wx: 0, wy: -100 }));
    const answer = solvePlaneFrame(model, { line }, { linear: true });
    near(-answer.displacements[4]!.dy, (5 * 100 * 256) / (384 * 1000), 1e-9);
    near(answer.elementForces[3]!.momentJ, (100 * 16) / 8, 1e-9);
    near(answer.elementForces[0]!.shearI, 200, 1e-9);
  });
  it('two-hinged semicircle under a crown load: H = P/pi, M = PR(1/2 - 1/pi), sag PR³/EI (3pi/8 - 1 - 1/2pi) (Timoshenko, from memory)', () => {
    const [R, EI, P] = [3, 700, 50];
    const answer = solvePlaneFrame(
      arch(R, Math.PI / 2, 64, EI),
      { nodal: [{ node: 32, fx: 0, fy: -P }] },
      { linear: true },
    );
    near(answer.reactions[0]!, P / Math.PI, 1e-4);
    near(answer.elementForces[32]!.momentI, P * R * (0.5 - 1 / Math.PI), 1e-4);
    near(
      -answer.displacements[32]!.dy,
      ((P * R ** 3) / EI) * ((3 * Math.PI) / 8 - 1 - 1 / (2 * Math.PI)),
      1e-4,
    );
  });
  it('parabolic arch under a load uniform on plan: H = wS²/8h and no bending (Timoshenko, from memory)', () => {
    const [S, h, w, n] = [6, 2, 80, 32];
    const nodes = Array.from({ length: n + 1 }, (_, k) => {
      const x = (S * k) / n;
      return { x, y: (4 * h * x * (S - x)) / S ** 2, angle: Math.atan((4 * h * (S - 2 * x)) / S ** 2) };
    });
    const model: PlaneModel = {
      nodes,
      elements: Array.from({ length: n }, (_, i) => ({ i, j: i + 1, EA: 1e9, EI: 700 })),
      supports: arch(1, 1, n, 1).supports,
    };
    // the load per metre of plan, given per metre of each member's developed length: through its nodes
    const nodal = nodes.map((_, node) => ({
      node,
      fx: 0,
      fy: (-w * S) / n / (node === 0 || node === n ? 2 : 1),
    }));
    const answer = solvePlaneFrame(model, { nodal }, { linear: true });
    near(answer.reactions[0]!, (w * S ** 2) / (8 * h), 1e-3);
    const bending = Math.max(...answer.elementForces.map((f) => Math.abs(f.momentI)));
    expect(bending).toBeLessThan((1e-3 * (w * S ** 2)) / 8);
  });
  it('beam on rotational springs k at both ends: end moment (wL²/12)/(1 + 2EI/kL) (slope-deflection, derived)', () => {
    const [L, EI, w, k] = [4, 1000, 100, 600];
    const model = level(L, 8, EI);
    const elements = model.elements.map((e, n) =>
      n === 0 ? { ...e, springI: k } : n === 7 ? { ...e, springJ: k } : e,
    );
    const supports = [
      ...model.supports,
      { node: 0, dof: 'r', kind: 'fixed' } as const,
      { node: 8, dof: 'r', kind: 'fixed' } as const,
    ];
    const line = elements.map((_, element) => ({ element, wx: 0, wy: -w }));
    const answer = solvePlaneFrame({ ...model, elements, supports }, { line }, { linear: true });
    near(-answer.elementForces[0]!.momentI, (w * L ** 2) / 12 / (1 + (2 * EI) / (k * L)), 1e-9);
  });
});

describe('stability', () => {
  it('Euler strut: eigenvalue and load path pi² EI/L²', () => {
    const model = level(2, 8, 100, 1e7);
    const push = { nodal: [{ node: 8, fx: -1, fy: 0 }] };
    near(bucklingFactor(model, push).factor!, eulerLoad(100, 2), 5e-3);
    near(criticalLoadPath(model, push, { cap: 1000 }).givesWayAt!, eulerLoad(100, 2), 5e-3);
  });
  it.each([30, 60, 90])(
    'two-hinged circular arch, hydrostatic pressure, half angle %s degrees: q = EI/R³ (pi²/a² - 1) (Timoshenko and Gere 7.6, from memory)',
    (degrees) => {
      const a = (degrees * Math.PI) / 180;
      const model = arch(3, a, 32, 100);
      const q = (100 / 27) * (Math.PI ** 2 / a ** 2 - 1);
      const pressure = model.elements.map((_, element) => ({ element, p: -1, follower: true }));
      near(bucklingFactor(model, { pressure }).factor!, q, 5e-3);
      near(criticalLoadPath(model, { pressure }, { cap: 2 * q }).givesWayAt!, q, 5e-3);
    },
  );
  it('shallow two-bar truss snaps at its limit load (von Mises truss, statics of the deformed shape)', () => {
    const [EA, h] = [1e5, 0.1];
    const rest = Math.hypot(1, h);
    let limit = 0;
    for (let y = 0; y < h; y += 1e-6) {
      const l = Math.hypot(1, y);
      limit = Math.max(limit, (2 * EA * (1 - l / rest) * y) / l);
    }
    const model: PlaneModel = {
      nodes: [
        { x: -1, y: 0 },
        { x: 0, y: h },
        { x: 1, y: 0 },
      ],
      elements: [
        { i: 0, j: 1, EA, EI: 0, truss: true },
        { i: 1, j: 2, EA, EI: 0, truss: true },
      ],
      supports: [0, 2].flatMap((node) => [
        { node, dof: 'x', kind: 'fixed' } as const,
        { node, dof: 'y', kind: 'fixed' } as const,
      ]),
    };
    near(
      criticalLoadPath(model, { nodal: [{ node: 1, fx: 0, fy: -1 }] }, { cap: 100 }).givesWayAt!,
      limit,
      5e-3,
    );
    const over = solvePlaneFrame(model, { nodal: [{ node: 1, fx: 0, fy: -1.2 * limit }] });
    expect(over.status).toBe('unstable');
    near(over.loadFactor, 1 / 1.2, 0.01);
  });
  it.each([
    [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, false, 0.5],
    [Number.POSITIVE_INFINITY, 0, false, 0.6992],
    [0, 0, false, 1],
    [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, true, 1],
    [Number.POSITIVE_INFINITY, 0, true, 2],
  ])(
    'effective length with end restraints %s, %s, sway %s is %s (AISC 360 commentary table C-A-7.1, from memory)',
    (bottom, top, sway, K) => near(effectiveLengthFactor({ bottom, top, sway }), K, 1e-4),
  );
});

describe('ponding', () => {
  const [L, b] = [6, 1.2];
  const limit = criticalPondingStiffness(WATER, b, L);
  const elements = Array.from({ length: 12 }, (_, i) => i);
  it('beam, 12 elements: critical stiffness γbL⁴/pi⁴ to 0.01 % (AISC 360 appendix on ponding, from memory; first mode)', () => {
    near(pondingFactor(level(L, 12, limit), { elements, breadth: b })!, 1, 1e-4);
  });
  it('strip: critical tension γs²/pi² is the cable-stiffened beam at EI = 0 (eigenvalue of a prestressed line, 12 elements, 0.5 %)', () => {
    const s = 1.5;
    const T = criticalPondingTension(WATER, s);
    const strip = level(s, 12, 1e-3 * T * s ** 2);
    const EA = 1e6;
    const taut: PlaneModel = {
      ...strip,
      elements: strip.elements.map((e) => ({
        ...e,
        EA,
        EI: 1e-5 * T * s ** 2,
        restLength: s / 12 / (1 + T / EA),
      })),
      supports: [...strip.supports, { node: 12, dof: 'x', kind: 'fixed' }],
    };
    const start = solvePlaneFrame(taut, {});
    expect(start.status).toBe('converged');
    near(pondingFactor(taut, { elements, breadth: 1 }, start.state)!, 1, 5e-3);
  });
  const line = { elements, breadth: b };
  it.each([1.05, 1.5, 3, 10])(
    'level beam under film that hangs as a parabola, EI %s times critical: water at rest (exact solution of EI·w⁗ = γb(w + hollow), derived)',
    (times) => {
      const sag = 1e-4;
      const { rest } = pondingPath(level(L, 12, times * limit), line, undefined, { sag });
      // sum of the odd modes of the parabola, each grown by 1/(1 - r/n⁴), r = EI_crit/EI
      const q = times ** -0.25;
      const grown =
        (12 / Math.PI ** 3 / q ** 3) * (Math.tan((Math.PI * q) / 2) - Math.tanh((Math.PI * q) / 2));
      near(rest!.volume / ((4 / 9) * sag * L * b), grown, 1e-3);
    },
  );
  it.each([2, 5])(
    'amplification 1/(1 - EI_crit/EI) of the depth in the first mode, EI %s times critical',
    (times) => {
      const sag = 1e-4;
      const { rest } = pondingPath(level(L, 12, times * limit), line, undefined, { sag });
      // two thirds of the parabola's depth are its mean from frame to frame, 32/pi³ of that its first mode along
      const grown = 1 + (2 / 3) * (32 / Math.PI ** 3) * (pondingAmplification(times, 1) - 1);
      near(rest!.depth / sag, grown, 3e-3);
    },
  );
  it('beam, 12 elements: at 0.5 % over γbL⁴/pi⁴ the pond comes to rest, at 0.5 % under it runs away (derived)', () => {
    const follow = (times: number) =>
      pondingPath(level(L, 12, times * limit), line, undefined, { sag: 1e-5, rise: L / 200 });
    expect(follow(1.005).reserve).toBeGreaterThan(1);
    expect(follow(1.005).verdict).toBe('comes to rest');
    expect(follow(0.995).reserve).toBeLessThan(1);
    expect(follow(0.995).verdict).toBe('runs away');
  });
  it.each([1.5, 2, 3])(
    'reserve of a beam with little film, EI %s times critical: T/(T - 1) with T = (tan z + tanh z)/2z, z = pi/2 (EI_crit/EI)^1/4 (exact solution under a level rise of the water, derived)',
    (times) => {
      const { reserve } = pondingPath(level(L, 12, times * limit), line, undefined, {
        sag: 1e-4,
        rise: L / 100,
      });
      const z = (Math.PI / 2) * times ** -0.25;
      const T = (Math.tan(z) + Math.tanh(z)) / (2 * z);
      near(reserve, T / (T - 1), 5e-3);
    },
  );
});

describe('cables and film', () => {
  it('parabola: H = wS²/8d, length S(1 + 8/3 (d/S)² - 32/5 (d/S)⁴) (Irvine, Cable Structures, from memory)', () => {
    const cable = parabolicCable(20, 1, 15);
    if (!cable.ok) throw new Error(cable.reason);
    near(cable.pull, (15 * 400) / 8, 1e-12);
    near(cable.length, parabolaLength(20, 1), 1e-6);
  });
  it('two own methods: flat catenary tends to the parabola', () => {
    const hung = catenary(20, parabolaLength(20, 0.5), 15);
    if (!hung.ok) throw new Error(hung.reason);
    near(hung.sag, 0.5, 2e-3);
    near(hung.pull, (15 * 400) / (8 * 0.5), 3e-3);
  });
  it('taut cable, midspan load: statics of the stretched triangle', () => {
    const [S, EA, T0, P] = [10, 1e5, 500, 100];
    const answer = tautCable({ span: S, EA, pretension: T0 }, { points: [{ at: S / 2, load: P }] });
    if (!answer.ok) throw new Error(answer.reason);
    // exact: 2 T sin a = P with T = T0 + EA·(stretch beyond the span, over the unstressed length)
    let sag = 0.1;
    for (let n = 0; n < 200; n++) {
      const half = Math.hypot(S / 2, sag);
      const tension = EA * ((half * (1 + T0 / EA)) / (S / 2) - 1);
      sag += 0.2 * ((P * half) / (2 * tension) - sag);
    }
    near(answer.midSag, sag, 2e-3);
    const harder = tautCable({ span: S, EA, pretension: T0 }, { points: [{ at: S / 2, load: P + 1 }] });
    if (!harder.ok) throw new Error(harder.reason);
    near(answer.midStiffness, 1 / (harder.midSag - answer.midSag), 5e-3);
  });
  it('a taut cable without load is as stiff at midspan as 4T/S', () => {
    const answer = tautCable({ span: 8, EA: 1e6, pretension: 900 }, {});
    if (!answer.ok) throw new Error(answer.reason);
    near(answer.midStiffness, (4 * 900) / 8, 1e-4);
  });
  it('film on a circle T = pR; strip T²(T - T0) = Et p² s²/24', () => {
    expect(hoopTension(300, 2.5)).toBe(750);
    const strip = stripUnderLoad({ span: 1.2, stiffness: 40000, pretension: 200, pressure: 300 });
    if (!strip.ok) throw new Error(strip.reason);
    near(strip.tension ** 2 * (strip.tension - 200), (40000 * (300 * 1.2) ** 2) / 24, 1e-9);
    near(strip.sag, (300 * 1.2 ** 2) / (8 * strip.tension), 1e-12);
  });
});
