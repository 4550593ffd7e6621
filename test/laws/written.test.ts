/** The laws over everything that is written: examples and the specs of the checks. */
import { describe, expect, it } from 'vitest';
import { laws } from './laws.ts';
import { checkSpecs, examples } from './subject.ts';
import { survey } from './survey.ts';

/** One law in so many is asked of a shelter, another of the next, so that all are asked of many: own choice. */
const turns = 5;

describe('the laws', () => {
  it('hold for every example and every spec of a check', { timeout: 240_000 }, async () => {
    const subjects = [...(await examples()), ...(await checkSpecs())];
    const { houses, cases, breaks } = survey(subjects, (subject, law) => (subject + law) % turns === 0);
    expect(breaks).toEqual([]);
    expect(houses).toBeGreaterThan(150);
    for (const { name } of laws) expect(cases.get(name), name).toBeGreaterThan(0);
  });
});
