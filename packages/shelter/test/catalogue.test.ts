import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { newNotes, resolveItems } from '../src/index.ts';
import { readSpec } from './reading.ts';

/** The built-in catalogue belongs to the language package; its text is read here against this vocabulary. */
const folder = new URL('../../language/catalogue/', import.meta.url);
const files = readdirSync(folder).filter((name) => name.endsWith('.shelter'));
const definitions = files.flatMap((name) => readSpec(readFileSync(new URL(name, folder), 'utf8'), name));
const world = { definitions: new Map(definitions.map((definition) => [definition.name, definition])) };

describe('the built-in catalogue', () => {
  test('says nothing twice', () => {
    expect(world.definitions.size).toBe(definitions.length);
    expect(definitions.length).toBeGreaterThan(90);
  });

  test('resolves every item without a problem', () => {
    const notes = newNotes();
    const items = resolveItems(world, notes);
    expect(notes.problems).toEqual([]);
    const materials = definitions.filter((definition) => definition.word === 'material').length;
    expect(items.length).toBe(definitions.length - materials);
  });

  test('assumes nothing: every fact an item needs is written', () => {
    const notes = newNotes();
    resolveItems(world, notes);
    expect(notes.assumed.map((one) => `${one.part}: ${one.fact}`)).toEqual([]);
  });

  test.each(definitions.map((definition) => [definition.name, definition] as const))(
    '%s has a title and a source',
    (_, definition) => {
      expect(definition.doc).toMatch(/^\S.*\.\s+Source: \S/s);
    },
  );
});
