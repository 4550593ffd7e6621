/**
 * Every calculation shows formulas, and each is worked out here from its inputs and from what stands above it. What is
 * no formula (looked up, counted, found by solving a frame) is marked as prose where it is written.
 */
import { writeFileSync } from 'node:fs';
import type { Step } from '@tautline/loads';
import { describe, expect, it } from 'vitest';
import { missedBy } from './read.ts';
import { corpora, walk } from './walk.ts';

/** How far a value may be from what its formula gives, relative. */
const closeness = 1e-6;
/** The largest share of steps in words, in hundredths; it may only fall. */
const mostProse: Readonly<Record<string, number>> = {
  examples: 27,
  'specs beside the checks': 24,
  templates: 26,
};

const shown = (formula: string, value: number, symbol = 'x'): Step => ({
  symbol,
  meaning: '',
  formula,
  inputs: [
    { symbol: 'a', meaning: '', value: 3, kind: 'ratio' },
    { symbol: 'a_2,k', meaning: '', value: 5, kind: 'ratio' },
    { symbol: "F'", meaning: '', value: 7, kind: 'ratio' },
  ],
  value,
  kind: 'ratio',
  source: 'derived',
});

describe('the reader', () => {
  it.each([
    ["x = F' / 2.1 · a", 10],
    ['x = 2 a² (a_2,k - 1)', 72],
    ['x = min(a, a_2,k) + 1/2 a', 4.5],
    ['x = √(a² + b²), b = 4', 5],
    ['F = -a^(1/2) + ½ a', 1.5 - Math.sqrt(3)],
    ['x (x + 1) = 4 a', 3],
  ])('works out %s', (formula, value) => {
    expect(missedBy(shown(formula, value), [])).toBeLessThan(1e-12);
    expect(missedBy(shown(formula, value * 1.001), [])).toBeGreaterThan(1e-4);
  });

  it.each([
    ['x = a / 2 a_2,k', /brackets/],
    ['x = a b', /what 'b' is/],
    ['x = 0.9 m', /what 'm' is/],
    ['x = a, not below 0', /nothing of a symbol/],
    ['a = 3 a', /not about x/],
    ['from the table', /cannot be|what 'from' is/],
  ])('refuses %s', (formula, why) => {
    expect(() => missedBy(shown(formula, 1), [])).toThrow(why);
  });
});

describe('the steps of every calculation', () => {
  it.each(corpora)(
    'in $name give what their formulas say',
    async ({ name, files, tried }) => {
      const faults = new Map<string, string>();
      const prose = new Set<string>();
      let steps = 0;
      let inWords = 0;
      for await (const { where, finding } of walk(files(), tried, { gusts: false })) {
        finding.steps.forEach((step, at) => {
          steps += 1;
          if (step.prose === true) {
            inWords += 1;
            prose.add(`${finding.id}: ${step.symbol}: ${step.formula}`);
            return;
          }
          const why = faultOf(() => missedBy(step, finding.steps.slice(0, at)));
          const inputs = step.inputs.map(({ symbol, value }) => `${symbol} = ${value}`).join('; ');
          if (why !== undefined)
            faults.set(
              `${finding.id}: ${step.symbol} | ${step.formula}`,
              `${why} (${step.value} of ${inputs}; ${where})`,
            );
        });
      }
      if (process.env['SHOW_STEPS'])
        writeFileSync(
          process.env['SHOW_STEPS'] + name.split(' ')[0],
          `${steps} ${inWords}\n${[...prose].sort().join('\n')}\n`,
        );
      expect([...faults].map(([step, why]) => `${step}: ${why}`)).toEqual([]);
      expect((100 * inWords) / steps, 'steps in words, of a hundred').toBeLessThanOrEqual(mostProse[name]!);
      expect(steps).toBeGreaterThan(5000);
    },
    300_000,
  );
});

function faultOf(missed: () => number): string | undefined {
  try {
    const by = missed();
    return by > closeness ? `off by ${by.toPrecision(3)}` : undefined;
  } catch (error) {
    return (error as Error).message;
  }
}
