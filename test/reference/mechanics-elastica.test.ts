/**
 * The pinned elastica against complete elliptic integrals computed independently (SciPy ellipk, ellipe:
 * S/L = 2E/K - 1, rise/L = k/K, end angle = 2 asin k, curvature x L = 4kK, thrust x L²/EI = 4K²; the closed
 * form is Timoshenko and Gere, Theory of Elastic Stability, 2.7, from memory) and against the plane frame.
 */
import { clampedBow, heldBow, type PlaneModel, pinnedBow, solvePlaneFrame } from '@tautline/mechanics';
import { describe, expect, it } from 'vitest';

/** S/L, rise/L, end angle in degrees, largest curvature x L, H L²/EI */
const table = [
  [0.95, 0.140111, 25.7586, 1.418409, 10.123493],
  [0.9, 0.194924, 36.6243, 2.025763, 10.392564],
  [0.85, 0.23472, 45.1019, 2.506409, 10.678278],
  [0.8, 0.266319, 52.3716, 2.924788, 10.982291],
  [0.75, 0.29239, 58.8892, 3.3059, 11.306489],
  [0.7, 0.314313, 64.8883, 3.662694, 11.65303],
  [0.65, 0.332909, 70.5078, 4.003029, 12.024396],
  [0.6, 0.348713, 75.8388, 4.332214, 12.423454],
  [0.55, 0.362091, 80.9447, 4.654145, 12.853534],
  [0.5, 0.373306, 85.8723, 4.971892, 13.318528],
  [0.45, 0.382552, 90.6574, 5.288027, 13.823014],
  [0.4, 0.389972, 95.3284, 5.604835, 14.372408],
] as const;

describe('pinned elastica against elliptic integrals by SciPy (1e-5)', () => {
  it.each(table)('span/length %s', (ratio, rise, degrees, bend, thrust) => {
    const length = 6.1;
    const bow = pinnedBow({ span: ratio * length, length });
    if (!bow.ok) throw new Error(bow.reason);
    expect(Math.abs(bow.rise / length / rise - 1)).toBeLessThan(1e-5);
    expect(Math.abs((bow.endAngle * 180) / Math.PI / degrees - 1)).toBeLessThan(1e-5);
    expect(Math.abs((bow.maxCurvature * length) / bend - 1)).toBeLessThan(1e-5);
    expect(Math.abs((bow.thrustOverEI * length ** 2) / thrust - 1)).toBeLessThan(1e-5);
    // the same bow from its other two pairs
    const fromRise = pinnedBow({ rise: bow.rise, length });
    const fromSpan = pinnedBow({ rise: bow.rise, span: bow.span });
    if (!fromRise.ok || !fromSpan.ok) throw new Error('no bow');
    expect(fromRise.span).toBeCloseTo(bow.span, 8);
    expect(fromSpan.length).toBeCloseTo(length, 8);
  });

  it('flat limit: thrust tends to pi² EI/L² (Euler)', () => {
    const bow = pinnedBow({ span: 0.999999, length: 1 });
    if (!bow.ok) throw new Error(bow.reason);
    expect(bow.thrustOverEI).toBeGreaterThan(Math.PI ** 2);
    expect(bow.thrustOverEI / Math.PI ** 2 - 1).toBeLessThan(2e-6);
  });
});

describe('the flagpole of Timoshenko and Gere, Theory of Elastic Stability, table 2-4 (from memory; three digits), two of which make a bow', () => {
  it.each([
    // turn of the tip in degrees; load over Euler's; height of the tip and its way sideways over the length
    [20, 1.015, 0.97, 0.22],
    [40, 1.063, 0.881, 0.422],
    [60, 1.152, 0.741, 0.593],
    [80, 1.293, 0.56, 0.719],
    [100, 1.518, 0.349, 0.792],
  ])('%s°', (degrees, load, height, sideways) => {
    const bow = pinnedBow({ span: height * 2, length: 2 });
    if (!bow.ok) throw new Error(bow.reason);
    // The table's height has three digits, so the rest has no more.
    expect(Math.abs((bow.endAngle * 180) / Math.PI - degrees)).toBeLessThan(0.25);
    expect(Math.abs((bow.thrustOverEI * 4) / Math.PI ** 2 - load)).toBeLessThan(0.003);
    expect(Math.abs(bow.rise - sideways)).toBeLessThan(0.003);
  });
});

/** A straight pipe of EI = 100 N·m2 sprung into a bow's line, practically inextensible. */
function sprung(
  line: readonly { x: number; y: number; angle: number }[],
  length: number,
  dofs: readonly ('x' | 'y' | 'r')[],
): PlaneModel {
  const n = line.length - 1;
  return {
    nodes: line.map(({ x, y, angle }) => ({ x, y, angle })),
    elements: Array.from({ length: n }, (_, i) => ({
      i,
      j: i + 1,
      EA: 1e7,
      EI: 100,
      restLength: length / n,
      restCurvature: 0,
    })),
    supports: [0, n].flatMap((node) => dofs.map((dof) => ({ node, dof, kind: 'fixed' as const }))),
  };
}

describe('two own methods, the plane frame against the elastica', () => {
  it.each([0.9, 0.7, 0.5])(
    'pinned, 16 elements, span/length %s: thrust and crown to a ten-thousandth',
    (ratio) => {
      const bow = pinnedBow({ span: ratio * 6, length: 6, points: 17 });
      if (!bow.ok) throw new Error(bow.reason);
      const answer = solvePlaneFrame(sprung(bow.line, 6, ['x', 'y']), {});
      expect(answer.status).toBe('converged');
      expect(Math.abs(answer.reactions[0]! / (100 * bow.thrustOverEI) - 1)).toBeLessThan(1e-4);
      expect(Math.abs(answer.displacements[8]!.dy / bow.rise)).toBeLessThan(1e-4);
      expect(Math.abs(-answer.elementForces[8]!.momentI / (100 * bow.maxCurvature) - 1)).toBeLessThan(1e-4);
    },
  );

  it.each([60, 85, 95])(
    'stubs leaning %s degrees: foot moment and thrust to a ten-thousandth of the crown moment per metre',
    (degrees) => {
      const bow = clampedBow({ span: 4, length: 6, points: 33 }, (degrees * Math.PI) / 180);
      if (!bow.ok) throw new Error(bow.reason);
      const answer = solvePlaneFrame(sprung(bow.line, 6, ['x', 'y', 'r']), {});
      expect(answer.status).toBe('converged');
      expect(Math.abs(answer.reactions[0]! / 100 - bow.thrustOverEI)).toBeLessThan(1e-4 * bow.maxCurvature);
      expect(Math.abs(Math.abs(answer.reactions[2]! / 100) - Math.abs(bow.endMomentOverEI))).toBeLessThan(
        1e-4 * bow.maxCurvature,
      );
    },
  );

  it.each([-0.1, 0.05])('crown held %s m off its natural height: contact force to a thousandth', (off) => {
    const free = pinnedBow({ span: 4, length: 6 });
    if (!free.ok) throw new Error(free.reason);
    const bow = heldBow({ span: 4, length: 6, points: 33 }, free.rise + off);
    if (!bow.ok) throw new Error(bow.reason);
    const model = sprung(bow.line, 6, ['x', 'y']);
    // the crown stays on its middle line: the symmetric branch, which is the one `heldBow` gives
    const held = {
      ...model,
      supports: [...model.supports, { node: 16, dof: 'y' as const, kind: 'fixed' as const }],
    };
    const answer = solvePlaneFrame(held, {});
    expect(answer.status, answer.reason).toBe('converged');
    expect(Math.abs(answer.reactions[4]! / (100 * bow.contactForceOverEI) - 1)).toBeLessThan(1e-3);
  });

  it('a perfectly straight start on the bow finds itself unstable instead of passing as a straight pipe', () => {
    const n = 16;
    const straight = Array.from({ length: n + 1 }, (_, k) => ({ x: (k * 5) / n, y: 0, angle: 0 }));
    expect(solvePlaneFrame(sprung(straight, 6, ['x', 'y']), {}).status).toBe('unstable');
  });
});
