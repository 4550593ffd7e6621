/** A frame that is found again after an edit beside it is the frame that would be worked out anew. */
import { evaluate } from '@tautline/checks';
import { knownFrames } from '@tautline/structure';
import { expect, it } from 'vitest';
import { day, names } from './fixture.ts';
import { example } from './loaded.ts';

const houses = names
  .map((name) => name.replace('.shelter', ''))
  .filter((name) => name !== 'site' && name !== 'yard');

it.each(houses)('%s: has no number that words cannot carry', async (name) => {
  const { shelter } = await example(name);
  const lost: string[] = [];
  JSON.stringify(shelter, (key, value: unknown) => {
    if (typeof value === 'number' && !Number.isFinite(value)) lost.push(key);
    return value;
  });
  expect(lost).toEqual([]);
});

it.each(houses.filter((name) => !name.endsWith('-flawed')))('%s: the same findings', async (name) => {
  const { shelter } = await example(name);
  const known = knownFrames();
  const options = { on: day, gusts: false, known };
  const first = evaluate(shelter, options).findings;
  expect(first).toEqual(evaluate(shelter, { on: day, gusts: false }).findings);
  expect(evaluate({ ...shelter, built: '2026-01-01' }, options).findings).toEqual(
    evaluate({ ...shelter, built: '2026-01-01' }, { on: day, gusts: false }).findings,
  );
});
