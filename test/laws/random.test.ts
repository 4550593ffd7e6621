/** The laws over random houses of every kind; `night.mjs` asks them of many more. */
import { describe, expect, it } from 'vitest';
import { randomHouse } from './random.ts';
import { examples } from './subject.ts';
import { survey } from './survey.ts';

const drawn = 320;
const seed = 15;

describe('the laws', () => {
  it('hold for random houses of every kind', { timeout: 300_000 }, async () => {
    const models = (await examples()).filter(({ from }) => !from.includes('flawed'));
    const subjects = Array.from({ length: drawn }, (_, number) => randomHouse(models, seed, number));
    const { houses, breaks } = survey(
      subjects,
      (subject, law) => (subject + law) % 9 === 0,
      (subject) => subject % 8 === 0,
    );
    expect(breaks).toEqual([]);
    expect(houses).toBeGreaterThanOrEqual(280);
  });

  it('are the same houses for the same seed', async () => {
    const models = await examples();
    const [once, again, other] = [
      randomHouse(models, 3, 5),
      randomHouse(models, 3, 5),
      randomHouse(models, 4, 5),
    ];
    expect(once).toEqual(again);
    expect(other).not.toEqual(once);
  });
});
