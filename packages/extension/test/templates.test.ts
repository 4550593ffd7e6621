import { loadWorkspace } from '@tautline/language';
import { resolveShelter } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
// @ts-expect-error a build script without types
import { snippets, templateOf, templates } from '../templates.mjs';

interface Template {
  readonly id: string;
  readonly title: string;
  readonly description: string;
  readonly snippet: string;
}

/** What is in the file when every stop is left as it was. */
const filled = (snippet: string): string =>
  snippet.replaceAll(/\$\{\d+:([^}]*)\}/g, '$1').replaceAll(/\\([\\$])/g, '$1');

const made: readonly Template[] = await templates();

describe('templates', () => {
  it('are made from the sound examples only', () => {
    expect(made.length).toBeGreaterThan(4);
    expect(made.filter(({ id }) => id.includes('flawed') || id === 'site' || id === 'yard')).toEqual([]);
  });

  it.each(made.map((one) => [one.id, one] as const))(
    '%s can be read and built as it stands',
    async (_id, one) => {
      const uri = 'untitled:new.shelter';
      const workspace = await loadWorkspace([{ uri, text: filled(one.snippet) }]);
      expect(workspace.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
      const [loaded] = workspace.shelters;
      expect(loaded).toBeDefined();
      if (loaded !== undefined) {
        expect(resolveShelter(loaded.name, loaded.world).shelter).toBeDefined();
      }
      expect(one.title).toMatch(/^\S.+[^:.]$/);
      expect(one.snippet).toContain('${1:');
    },
  );

  it('are offered as snippets too', () => {
    expect(Object.keys(snippets(made))).toHaveLength(made.length);
  });

  it('keep signs of the text that mean something in a snippet', () => {
    const site = { name: 'plot', text: 'site plot {\n  gust 30 m/s\n}' };
    const text = '/** Costs $5: cheap. */\nshelter a on plot {\n  footprint 3 m by 9 m\n}\n';
    expect(filled(templateOf('a', text, site).snippet)).toContain('Costs $5');
  });
});
