/** A frame that was worked out before is found again for the same words, and never for others. */
import type { Shelter } from '@tautline/shelter';
import { analyseFrame, knownFrames } from '@tautline/structure';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type EvaluateOptions, type Evaluation, evaluate } from '../src/index.ts';
import { origin, ridgedHouse, sprungHouse, withCover, withMember } from './houses.ts';

type Edit = (shelter: Shelter, size: number) => Shelter;

const member = ({ roof }: Shelter) => {
  if (roof.type !== 'bows') throw new Error('the houses have bows');
  return roof.member;
};

/** What leaves the frame as it is, each between 0 and 1 of its reach. */
const beside: readonly Edit[] = [
  (shelter, size) =>
    withMember(shelter, {
      ...member(shelter),
      prices: [{ amount: 10 * size, per: { unit: 'length', value: 1 }, origin }],
    }),
  (shelter, size) => withCover(shelter, { installed: `2026-0${1 + Math.floor(8 * size)}-01` }),
  (shelter, size) => ({ ...shelter, built: `202${Math.floor(5 * size)}-01-01` }),
  (shelter, size) => ({
    ...shelter,
    requirements: [{ id: 'asked', origin, subject: 'headroom', comparison: '>=', value: 1 + size, at: 1 }],
  }),
  (shelter) => ({ ...shelter, irrigation: 'drip' }),
];

/** What the frame depends on. */
const ofTheFrame: readonly Edit[] = [
  (shelter, size) => {
    const { roof } = shelter;
    return { ...shelter, roof: { ...roof, spacing: 0.8 + 0.4 * size } as typeof roof };
  },
  (shelter, size) => ({ ...shelter, site: { ...shelter.site, gust: 25 + 10 * size } }),
  (shelter, size) => withCover(shelter, { tension: 100 + 200 * size }),
  (shelter, size) => {
    const { material, ...rest } = member(shelter);
    return withMember(shelter, { ...rest, material: { ...material, modulus: (2 + size) * 1e9 } });
  },
];

/** A verdict, and the frame behind it without what its parts cost: that is no part of an analysis. */
const told = ({ analysis, ...verdict }: Evaluation) => ({
  verdict,
  analysis: JSON.stringify(analysis, (key, value) => (key === 'prices' ? undefined : value)),
});

const options: EvaluateOptions = { gusts: false, on: '2026-11-26' };

describe('frames that are known', () => {
  it('change no verdict, whatever was edited before', () => {
    const some = <T>(all: readonly T[]) => fc.constantFrom(...all);
    const edit = fc.tuple(
      fc.oneof(some(beside), some(ofTheFrame)),
      fc.double({ min: 0, max: 1, noNaN: true }),
    );
    fc.assert(
      fc.property(some([sprungHouse, ridgedHouse]), fc.array(edit, { maxLength: 6 }), (house, edits) => {
        const known = knownFrames(2);
        let shelter = house();
        expect(told(evaluate(shelter, { ...options, known }))).toEqual(told(evaluate(shelter, options)));
        for (const [change, size] of edits) {
          shelter = change(shelter, size);
          expect(told(evaluate(shelter, { ...options, known }))).toEqual(told(evaluate(shelter, options)));
        }
      }),
      { numRuns: 12 },
    );
  });

  it('are found again after an edit beside the frame, and not after one of the frame', () => {
    for (const change of beside) {
      const { analyse } = knownFrames();
      const first = analyse(sprungHouse());
      expect(analyse(change(sprungHouse(), 0.4))).toBe(first);
    }
    for (const change of ofTheFrame) {
      const { analyse } = knownFrames();
      const first = analyse(sprungHouse());
      const changed = change(sprungHouse(), 0.4);
      expect(analyse(changed)).not.toBe(first);
      expect(analyse(changed)).toEqual(analyseFrame(changed));
    }
  });

  it('are not kept where the work was called off', () => {
    const { analyse } = knownFrames();
    expect(() => analyse(sprungHouse(), { cancelled: () => true })).toThrow();
    expect(analyse(sprungHouse())).toEqual(analyseFrame(sprungHouse()));
  });
});
