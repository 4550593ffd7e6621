/** The order of work and the inspection list of every example: each speaks of the roof that there is. */
import { resolveShelter } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
import { inspections } from '../../packages/book/src/work/inspection.ts';
import { workSteps } from '../../packages/book/src/work/steps.ts';
import { load, shelterFiles } from '../../packages/cli/src/files.ts';

const { shelters } = await load(await shelterFiles([new URL('../../examples', import.meta.url).pathname]));
const houses = shelters.flatMap(({ kind, name, world }) => {
  const shelter = kind === 'range' ? undefined : resolveShelter(name, world).shelter;
  return shelter ? [{ name, shelter }] : [];
});

/** What a step that puts the roof up is called, by the kind of roof. */
const putUp = { bows: /bows/, rafters: /rafters/, cap: /caps/, inflated: /fan|film|roof/i } as const;

describe.each(houses)('the work on $name', ({ shelter }) => {
  it('has a step that puts its roof up', () => {
    const titles = workSteps(shelter, 'metric').map(({ title }) => title);
    expect(titles.filter((title) => putUp[shelter.roof.type].test(title))).not.toEqual([]);
  });
  it('is inspected by points under every heading', () => {
    for (const { when, points } of inspections(shelter)) expect(points, when).not.toEqual([]);
  });
});
