import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { builtInCatalogue } from '../src/index.ts';

describe('generated files', () => {
  it('embed the catalogue as it stands: else run `npm run generate` in packages/language', () => {
    const folder = new URL('../catalogue/', import.meta.url);
    const names = readdirSync(folder)
      .filter((name) => name.endsWith('.shelter'))
      .sort();
    expect(builtInCatalogue.map(({ uri }) => uri)).toEqual(
      names.map((name) => `tautline-catalogue:/${name}`),
    );
    for (const [index, name] of names.entries()) {
      expect(builtInCatalogue[index]?.text).toBe(readFileSync(new URL(name, folder), 'utf8'));
    }
  });
});
