import { describe, expect, it } from 'vitest';
import { type Basis, combinations, type Factors } from '../src/index.ts';

const bases: readonly Basis[] = ['asce7-asd', 'asce7-strength', 'eurocode'];
const variable = ['crop', 'snow', 'rain', 'wind', 'person'] as const;
const strength = (basis: Basis): readonly Factors[] =>
  combinations(basis, false)
    .filter(({ use }) => use !== 'service')
    .map(({ factors }) => factors);

describe.each(bases)('load combinations of %s', (basis) => {
  it('let no variable load relieve another: without any of its loads each is there as well, or one with more', () => {
    const all = strength(basis);
    for (const full of all) {
      const acting = variable.filter((nature) => full[nature] > 0);
      for (const away of acting) {
        if (acting.length === 1) continue;
        const left = { ...full, [away]: 0 };
        const found = all.some(
          (other) =>
            other.dead >= left.dead - 1e-12 &&
            variable.every((nature) =>
              left[nature] > 0 ? other[nature] >= left[nature] - 1e-12 : other[nature] === 0,
            ),
        );
        expect(found, `${JSON.stringify(full)} without ${away}`).toBe(true);
      }
    }
  });

  it('has snow, water, a person and own weight by themselves', () => {
    for (const alone of ['snow', 'rain', 'person'] as const)
      expect(
        strength(basis).some(
          (factors) =>
            factors[alone] > 0 && variable.every((nature) => nature === alone || factors[nature] === 0),
        ),
      ).toBe(true);
    expect(strength(basis).some((factors) => variable.every((nature) => factors[nature] === 0))).toBe(true);
  });

  it('has no two alike', () => {
    const said = combinations(basis, true).map(({ use, factors }) => JSON.stringify([use, factors]));
    expect(new Set(said).size).toBe(said.length);
    const ids = combinations(basis, true).map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });
});
