/** Thrust with bending: the share used is the inverse of what the loads may grow by. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { thrustAndBending } from '../src/index.ts';

const share = fc.double({ min: 0, max: 6, noNaN: true });
const families = fc.constantFrom('steel', 'aluminium', 'timber', 'green-wood', 'bamboo', 'pvc');
const bases = fc.constantFrom('asce7-asd', 'asce7-strength', 'eurocode');

describe('the share used', () => {
  it('brings the clause to 1 when both demands are divided by it', () => {
    fc.assert(
      fc.property(share, share, families, bases, fc.boolean(), (axial, bending, family, basis, stocky) => {
        fc.pre(axial + bending > 1e-3);
        const rule = { family, basis, stocky } as const;
        const { utilisation } = thrustAndBending({ ...rule, axial, bending });
        const at = thrustAndBending({ ...rule, axial: axial / utilisation, bending: bending / utilisation });
        expect(at.clause).toBeCloseTo(1, 9);
      }),
    );
  });

  it('grows with thrust and with bending, and in proportion to both', () => {
    fc.assert(
      fc.property(share, share, families, bases, fc.boolean(), (axial, bending, family, basis, stocky) => {
        const use = (a: number, b: number): number =>
          thrustAndBending({ family, basis, stocky, axial: a, bending: b }).utilisation;
        expect(use(axial + 0.1, bending)).toBeGreaterThanOrEqual(use(axial, bending));
        expect(use(axial, bending + 0.1)).toBeGreaterThanOrEqual(use(axial, bending));
        expect(use(3 * axial, 3 * bending)).toBeCloseTo(3 * use(axial, bending), 9);
      }),
    );
  });

  it('is the thrust alone or the bending alone where the other is nothing', () => {
    for (const family of ['steel', 'timber', 'bamboo', 'pvc'] as const)
      for (const basis of ['asce7-asd', 'eurocode'] as const) {
        expect(thrustAndBending({ family, basis, axial: 3.97, bending: 0 }).utilisation).toBeCloseTo(
          3.97,
          12,
        );
        expect(thrustAndBending({ family, basis, axial: 0, bending: 0.26 }).utilisation).toBeCloseTo(
          0.26,
          12,
        );
      }
  });

  it('is straight for a slender post by EN 1995-1-1 6.23 and 6.24, squared for a stocky one by 6.19', () => {
    const post = { family: 'timber', basis: 'eurocode', axial: 0.5, bending: 0.7 } as const;
    expect(thrustAndBending(post).utilisation).toBeCloseTo(1.2, 12);
    expect(thrustAndBending({ ...post, stocky: true }).clause).toBeCloseTo(0.95, 12);
  });
});
