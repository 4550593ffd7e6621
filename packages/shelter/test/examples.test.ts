import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { resolveShelter, type SpecDefinition, shelterNames } from '../src/index.ts';
import { readSpec } from './reading.ts';

const root = new URL('../../../', import.meta.url);
const read = (folder: string): readonly SpecDefinition[] =>
  readdirSync(new URL(folder, root))
    // One place with all its houses is no pair of a kind; it is written with `let`, which the language works out.
    .filter((name) => name.endsWith('.shelter') && name !== 'lower-terrace.shelter')
    .flatMap((name) => readSpec(readFileSync(new URL(`${folder}/${name}`, root), 'utf8'), name));

const definitions = [...read('packages/language/catalogue'), ...read('examples')];
const world = { definitions: new Map(definitions.map((definition) => [definition.name, definition])) };

describe('the examples', () => {
  test.each(shelterNames(world))('%s resolves without a problem', (name) => {
    const { shelter, problems } = resolveShelter(name, world);
    expect(problems).toEqual([]);
    // A cap is its own cover.
    if (shelter?.roof.type !== 'cap') expect(shelter?.covers.length).toBeGreaterThan(0);
    expect(JSON.stringify(shelter)).not.toContain('null');
  });

  test('come in pairs, a sound and a flawed one', () => {
    const names = shelterNames(world);
    const flawed = names.filter((name) => name.endsWith('-flawed'));
    expect(flawed.map((name) => name.replace(/-flawed$/, '')).every((name) => names.includes(name))).toBe(
      true,
    );
    expect(flawed.length).toBeGreaterThanOrEqual(6);
    expect(flawed.length * 2).toBe(names.length);
  });
});
