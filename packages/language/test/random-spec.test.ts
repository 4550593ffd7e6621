/** Laying out never changes what is said, over specs nobody would write. */
import { resolveShelter, type SpecWorld, sameDefinition } from '@tautline/shelter';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { builtInCatalogue, formatText, loadWorkspace } from '../src/index.ts';
import { randomHouse, randomSpec } from './random-spec.ts';

/** Files read together, so that the catalogue is read once. */
async function read(texts: readonly string[]) {
  const files = texts.map((text, n) => ({ uri: `file:///random-${n}.shelter`, text }));
  const workspace = await loadWorkspace(files, () => undefined, { catalogue: builtInCatalogue });
  return files.map(({ uri }) => {
    const world = workspace.worldOf(uri);
    if (!world) throw new Error('not read');
    const own = [...world.definitions.values()].filter((one) => String(one.origin).includes(uri));
    return { world, own, problems: workspace.problems.filter((one) => one.uri === uri) };
  });
}

/** The model as it stands, without the places it was said at, and what was said of the spec. */
function resolved(world: SpecWorld): string {
  const { shelter, problems } = resolveShelter('house', world);
  return JSON.stringify(
    { shelter, problems: problems.map(({ id, message }) => `${id}: ${message}`) },
    (key, value) => (/origin$/i.test(key) || key === 'placesSaid' ? undefined : value),
    1,
  );
}

describe('random specs', () => {
  it('are read whole, laid out in one go, and say the same before and after', async () => {
    let models = 0;
    await fc.assert(
      fc.asyncProperty(fc.noShrink(fc.gen()), async (draw) => {
        const texts = Array.from({ length: 16 }, (_, n) =>
          n % 2 === 0 ? randomHouse(draw) : randomSpec(draw),
        );
        const laid = texts.map((text) => formatText(text));
        laid.forEach((text, n) => {
          expect(formatText(text), texts[n]).toBe(text);
        });
        const all = await read([...texts, ...laid]);
        texts.forEach((text, n) => {
          const [before, after] = [all[n]!, all[n + texts.length]!];
          expect(
            [...before.problems, ...after.problems].map(({ message }) => message),
            text,
          ).toEqual([]);
          expect(after.own.map(({ name }) => name)).toEqual(before.own.map(({ name }) => name));
          before.own.forEach((definition, k) => {
            expect(sameDefinition(definition, after.own[k]!), `${text}\n---\n${laid[n]}`).toBe(true);
          });
          const model = resolved(before.world);
          expect(resolved(after.world)).toBe(model);
          if (/^ "shelter"/m.test(model)) models += 1;
        });
      }),
      { numRuns: 4 },
    );
    // A property over specs that never make a house would say little.
    expect(models).toBeGreaterThan(3);
  }, 60_000);
});
