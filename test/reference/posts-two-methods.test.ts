/** Posts and stakes pushed sideways: published results of both methods that `embeddedSideways` takes the larger of. */
import {
  embeddedSideways,
  lateralCapacity,
  passiveCoefficient,
  postEmbedmentLateral,
  SOILS,
} from '@tautline/loads';
import { describe, expect, it } from 'vitest';

const FOOT = 0.3048;
const LBF = 4.4482216;

/**
 * Ten cases that a public test suite gives for Broms after Viggiani, Fondazioni, eq. 13.23 to 13.47: D = 1 m, and
 * c_u = 50 kPa or phi = 30 degrees and gamma = 18 kN/m3, e = 0. The loads go with c_u D2 and with gamma K_p D3, so our
 * soils are set against them by that ratio. A head held by a stake that yields there alone is not modelled. A stub
 * thicker than a third of its depth with its head held counts here with the width that gives most: 4 % more than Broms.
 */
describe('Broms (1964), cases after Viggiani (public test suite, opened)', () => {
  const clay = SOILS.clay.shear / 50_000;
  const sand = (passiveCoefficient(SOILS.sand.friction) * SOILS.sand.unitWeight) / (3 * 18_000);
  it.each([
    ['clay', 'free', 'short', 2.5 + Math.sqrt(8), 10_000, 450],
    ['clay', 'free', 'long', 10, 900, 450],
    ['clay', 'fixed', 'short', 2.5, 10_000, 450],
    ['clay', 'fixed', 'long', 10, 450, 450],
    ['sand', 'free', 'short', 2, 1000, 108],
    ['sand', 'free', 'long', 10, 432, 324],
    ['sand', 'fixed', 'short', 2, 1000, 324],
    ['sand', 'fixed', 'long', 10, 216, 324],
  ] as const)(
    '%s, head %s, %s: L = %f m, M_y = %f kN.m, H_u = %f kN',
    (soil, head, kind, depth, yields, load) => {
      const ratio = soil === 'clay' ? clay : sand;
      const own = lateralCapacity({
        soil,
        diameter: 1,
        depth,
        height: 0,
        head,
        momentCapacity: 1000 * yields * ratio,
      });
      const thick = head === 'fixed' && kind === 'short' && soil === 'clay' ? 2.5 ** 2 / 6 : 1;
      // The sand formula rounds its factor to 0.54 (0.544).
      expect(Math.abs(own.capacity / (1000 * load * ratio * thick) - 1)).toBeLessThan(
        soil === 'sand' && kind === 'long' ? 0.002 : 1e-6,
      );
    },
  );
});

/**
 * Footings of freestanding signs in sand, calculations in a town's archive (opened): 150 psf/ft doubled by 1806.3.4,
 * S_1 at a third of the depth that is dug, the depth asked for by 1807.3.2.1.
 */
describe('IBC 1807.3.2.1, three signs in a public archive (opened)', () => {
  it.each([
    ['round, 3 ft across, 4 ft deep', 3, 4, 24.7 * 36, 3.4, 3.54],
    ['5.5 ft wide, 4 ft deep', 5.5, 4, 1740, 4.17, 3.97],
    ['round, 1.5 ft across, 2.67 ft deep', 1.5, 2.67, 24.7 * 3.2, 3.2, 1.53],
  ])('%s: d = %f ft asked for', (_, width, dug, push, height, asked) => {
    const hold = postEmbedmentLateral({
      soil: 'sand',
      width: width * FOOT,
      depth: asked * FOOT,
      height: height * FOOT,
      constrained: false,
    });
    // They take the pressure at a third of the depth that is dug; ours is that at a third of the depth asked for.
    const allowed = (2 * hold.allowable * dug) / asked / LBF;
    expect(Math.abs(allowed / push - 1)).toBeLessThan(0.012);
  });
});

describe('one post by two methods: the round sign footing, 3 ft across and 4 ft deep in sand, 889 lbf at 3.4 ft', () => {
  const hold = embeddedSideways({
    soil: 'sand',
    setting: 'concrete',
    width: 3 * FOOT,
    depth: 4 * FOOT,
    height: 3.4 * FOOT,
    stay: 'gust',
    basis: 'asce7-asd',
  });
  const value = (symbol: string): number => hold.steps.find((step) => step.symbol === symbol)!.value / LBF;

  it('by the code: S_1 = 400 psf, P = S_1 b d2 / (2.34 (d + 1.09 h)) = 1065 lbf, as its 3.54 ft of 4 ft say', () => {
    expect(Math.abs(value('P_a') / 1065 - 1)).toBeLessThan(0.005);
    expect(value('P_a')).toBeGreaterThan(889);
  });

  it('by Broms: H_u = gamma K_p d L3 / (2 (e + L)) = 4569 lbf, over 2.5 1828 lbf', () => {
    expect(Math.abs(value('H_u') / 4569 - 1)).toBeLessThan(0.005);
    expect(Math.abs(value('H_B') / 1828 - 1)).toBeLessThan(0.005);
  });

  it('takes the larger, and expects no less than Broms with no safety in it', () => {
    expect(hold.allowable / LBF).toBeCloseTo(Math.max(value('P_a'), value('H_B')), 6);
    expect(hold.expected.median / LBF).toBeCloseTo(value('H_u'), 6);
  });
});
